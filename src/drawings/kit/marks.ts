import { direction, onCircle, plus, times, type Point } from './point.ts';

/** A number as it stands in the file: to a tenth of a unit, without idle zeros. */
export const at = (value: number): string => String(Math.round(value * 10) / 10);

export const path = (style: string, d: string): string => `<path class="${style}" d="${d}"/>`;

export const circle = (style: string, x: number, y: number, radius: number): string =>
  `<circle class="${style}" cx="${at(x)}" cy="${at(y)}" r="${at(radius)}"/>`;

export const rect = (
  style: string,
  x: number,
  y: number,
  width: number,
  height: number,
  corner = 0,
): string =>
  `<rect class="${style}" x="${at(x)}" y="${at(y)}" width="${at(width)}" height="${at(height)}"` +
  `${corner > 0 ? ` rx="${at(corner)}"` : ''}/>`;

/** A broken line through points given as x, y, x, y … */
export function line(style: string, ...places: readonly number[]): string {
  return path(style, `M${places.map(at).join(' ')}`);
}

/** A closed shape through points given as x, y, x, y … */
export const shape = (style: string, ...places: readonly number[]): string =>
  path(style, `M${places.map(at).join(' ')}z`);

/** Large letters or figures that belong to the thing drawn, not a name for it. */
export const sign = (x: number, y: number, text: string, style = '', transform = ''): string =>
  `<text class="sign${style === '' ? '' : ` ${style}`}" x="${at(x)}" y="${at(y)}" text-anchor="middle"` +
  `${transform === '' ? '' : ` transform="${transform}"`}>${text}</text>`;

/** An arrow head with its tip at a place. */
export function head(style: string, tip: Point, run: Point, size = 11): string {
  const angle = Math.atan2(run.y, run.x);
  const back = (turn: number, length: number): Point =>
    plus(tip, times(direction(angle + turn), -length));
  const [a, b, c] = [back(-0.42, size), back(0, size * 0.62), back(0.42, size)];
  return shape(style, tip.x, tip.y, a.x, a.y, b.x, b.y, c.x, c.y);
}

/** A straight arrow in ink. */
export function arrow(fromX: number, fromY: number, toX: number, toY: number): string {
  const run = { x: toX - fromX, y: toY - fromY };
  const tip = { x: toX, y: toY };
  return line('t', fromX, fromY, toX, toY) + head('d', tip, run);
}

/** A dimension between two places on a horizontal or vertical line, with heads at both ends. */
export function dimension(fromX: number, fromY: number, toX: number, toY: number): string {
  const run = { x: toX - fromX, y: toY - fromY };
  return (
    line('t', fromX, fromY, toX, toY) +
    head('d', { x: toX, y: toY }, run) +
    head('d', { x: fromX, y: fromY }, times(run, -1))
  );
}

/** A piece of a circle, `sweep` radians, negative against the clock. */
export function arc(
  style: string,
  centre: Point,
  radius: number,
  fromAngle: number,
  sweep: number,
): string {
  const from = onCircle(centre, radius, fromAngle);
  const to = onCircle(centre, radius, fromAngle + sweep);
  const large = Math.abs(sweep) > Math.PI ? 1 : 0;
  return path(
    style,
    `M${at(from.x)} ${at(from.y)}A${at(radius)} ${at(radius)} 0 ${large} ${sweep > 0 ? 1 : 0} ${at(to.x)} ${at(to.y)}`,
  );
}

/** The letter F, whose turning and mirroring show; `turned` and `mirrored` say how it is seen. */
export function letterF(
  x: number,
  y: number,
  { upsideDown = false, mirrored = false }: { upsideDown?: boolean; mirrored?: boolean } = {},
  half = 22,
): string {
  const across = (each: number): string => at(x + (mirrored ? -each : each) * half);
  const down = (each: number): string => at(y + (upsideDown ? -each : each) * half);
  return path(
    'z',
    `M${across(-0.5)} ${down(1)}V${down(-1)}H${across(0.7)}M${across(-0.5)} ${down(0)}H${across(0.45)}`,
  );
}
