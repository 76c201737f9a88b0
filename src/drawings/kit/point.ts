/** A place on the sheet of a drawing, or a direction; y runs down, so angles grow clockwise. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export const point = (x: number, y: number): Point => ({ x, y });

export const plus = (a: Point, b: Point): Point => point(a.x + b.x, a.y + b.y);

export const minus = (a: Point, b: Point): Point => point(a.x - b.x, a.y - b.y);

export const times = (a: Point, factor: number): Point => point(a.x * factor, a.y * factor);

export const lengthOf = (a: Point): number => Math.hypot(a.x, a.y);

/** The same direction with length 1. */
export const unit = (a: Point): Point => times(a, 1 / lengthOf(a));

/** A quarter turn clockwise, as seen on the sheet. */
export const quarterTurn = (a: Point): Point => point(-a.y, a.x);

export const angleOf = (a: Point): number => Math.atan2(a.y, a.x);

/** Direction with length 1 at an angle in radians, clockwise from the right. */
export const direction = (angle: number): Point => point(Math.cos(angle), Math.sin(angle));

export const onCircle = (centre: Point, radius: number, angle: number): Point =>
  plus(centre, times(direction(angle), radius));
