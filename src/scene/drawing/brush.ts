import type { Pen } from './sheet.ts';

/** Anything that fills a shape. */
export type Paint = Pen['fillStyle'];
/** Red, green and blue, 0–255. */
export type Rgb = readonly [number, number, number];

function trace(pen: Pen, points: readonly number[]): void {
  pen.beginPath();
  for (let at = 0; at + 1 < points.length; at += 2)
    pen.lineTo(points[at] ?? 0, points[at + 1] ?? 0);
}

/** A filled polygon; points as x, y, x, y … */
export function area(pen: Pen, paint: Paint, ...points: readonly number[]): void {
  pen.fillStyle = paint;
  trace(pen, points);
  pen.fill();
}

/** A filled ellipse. */
export function oval(
  pen: Pen,
  paint: Paint,
  x: number,
  y: number,
  radiusX: number,
  radiusY = radiusX,
  turn = 0,
): void {
  pen.fillStyle = paint;
  pen.beginPath();
  pen.ellipse(x, y, radiusX, radiusY, turn, 0, 7);
  pen.fill();
}

/** A round-ended line through points. */
export function line(pen: Pen, paint: Paint, width: number, ...points: readonly number[]): void {
  pen.strokeStyle = paint;
  pen.lineWidth = width;
  pen.lineCap = 'round';
  pen.lineJoin = 'round';
  trace(pen, points);
  pen.stroke();
}

/**
 * A path of curves: the first pair is where it starts; every four numbers after it are the handle and
 * the end of a curve.
 */
export function curves(pen: Pen, ...points: readonly number[]): void {
  const [x = 0, y = 0, ...rest] = points;
  pen.beginPath();
  pen.moveTo(x, y);
  for (let at = 0; at + 3 < rest.length; at += 4) {
    pen.quadraticCurveTo(rest[at] ?? 0, rest[at + 1] ?? 0, rest[at + 2] ?? 0, rest[at + 3] ?? 0);
  }
}

/** A filled path of curves. */
export function blob(pen: Pen, paint: Paint, ...points: readonly number[]): void {
  curves(pen, ...points);
  pen.fillStyle = paint;
  pen.fill();
}

function withStops(gradient: CanvasGradient, stops: readonly string[]): CanvasGradient {
  stops.forEach((stop, at) => {
    gradient.addColorStop(at / (stops.length - 1), stop);
  });
  return gradient;
}

/** Colours from one point to another, evenly spaced. */
export function shade(
  pen: Pen,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  ...stops: readonly string[]
): CanvasGradient {
  return withStops(pen.createLinearGradient(x0, y0, x1, y1), stops);
}

/** A round glow, from the middle to the rim. */
export function glow(
  pen: Pen,
  x: number,
  y: number,
  radius: number,
  ...stops: readonly string[]
): void {
  pen.fillStyle = withStops(pen.createRadialGradient(x, y, 0, x, y, radius), stops);
  pen.fillRect(x - radius, y - radius, 2 * radius, 2 * radius);
}

/** Colour between two. */
export function between(dark: Rgb, light: Rgb, part: number): string {
  const channel = (at: 0 | 1 | 2): number => Math.floor(dark[at] + (light[at] - dark[at]) * part);
  return `rgb(${channel(0)},${channel(1)},${channel(2)})`;
}
