import {
  angleOf,
  direction,
  lengthOf,
  minus,
  onCircle,
  plus,
  point,
  quarterTurn,
  times,
  unit,
  type Point,
} from './point.ts';

export type Turn = 'clockwise' | 'anticlockwise';

/** What film runs round. */
export interface Wheel {
  readonly kind: 'reel' | 'sprocket' | 'roller' | 'drum';
  readonly centre: Point;
  /** Radius at which the film lies: of a reel, the outside of what is wound on it. */
  readonly radius: number;
  readonly turn: Turn;
}

interface Line {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
}

interface Arc {
  readonly kind: 'arc';
  readonly wheel: Wheel;
  readonly fromAngle: number;
  /** Radians, negative against the clock. */
  readonly sweep: number;
}

/** A cubic curve: film that hangs free in a loop. */
interface Loop {
  readonly kind: 'loop';
  readonly from: Point;
  readonly control: readonly [Point, Point];
  readonly to: Point;
}

export type Segment = Line | Arc | Loop;

/** Film from one end to the other, in the way it runs. */
export interface FilmPath {
  readonly segments: readonly Segment[];
}

const signOf = (turn: Turn): number => (turn === 'clockwise' ? 1 : -1);

/** Where film runs to at an angle of a wheel. */
const runAt = (wheel: Wheel, angle: number): Point =>
  times(quarterTurn(direction(angle)), signOf(wheel.turn));

/** Film on a wheel, and how far round it has come. */
interface OnWheel {
  readonly wheel: Wheel;
  readonly angle: number;
}

interface Free {
  readonly place: Point;
  readonly run: Point;
}

const isOnWheel = (end: OnWheel | Free): end is OnWheel => 'wheel' in end;

/**
 * The straight line that leaves one wheel and meets the next on their tangents, for the way both turn.
 *
 * Model: with m the direction of the line turned back by a quarter, the touching points are
 * c + s·r·m, and (c₂ − c₁)·m = s₁r₁ − s₂r₂. Exact.
 *
 * @throws {RangeError} where the wheels overlap, so that no such line is there
 */
export function tangentAngles(from: Wheel, to: Wheel): readonly [number, number] {
  const between = minus(to.centre, from.centre);
  const distance = lengthOf(between);
  const along =
    (signOf(from.turn) * from.radius - signOf(to.turn) * to.radius) / Math.max(distance, 1e-9);
  if (Math.abs(along) >= 1) {
    throw new RangeError(
      `wheels ${distance.toFixed(0)} apart are too near for a line between them`,
    );
  }
  const ahead = unit(between);
  const side = plus(times(ahead, along), times(quarterTurn(ahead), -Math.sqrt(1 - along ** 2)));
  return [angleOf(times(side, signOf(from.turn))), angleOf(times(side, signOf(to.turn)))];
}

/** Lays film from wheel to wheel; each step starts where the one before ended, on its tangent. */
export class FilmRun {
  private readonly done: readonly Segment[];
  private readonly end: OnWheel | Free;

  private constructor(done: readonly Segment[], end: OnWheel | Free) {
    this.done = done;
    this.end = end;
  }

  /** From a reel: `wrap` radians of film are shown on it before it leaves. */
  static offReel(wheel: Wheel, next: Wheel, wrap = 0.5): FilmRun {
    const [leave] = tangentAngles(wheel, next);
    return new FilmRun([], { wheel, angle: leave - signOf(wheel.turn) * wrap }).onto(next);
  }

  /** From a reel, which it leaves at an angle: film that hangs or is pulled off. */
  static offReelAt(wheel: Wheel, leave: number, length: number, wrap = 0.5): FilmRun {
    const angle = leave - signOf(wheel.turn) * wrap;
    return new FilmRun([], { wheel, angle }).ahead(length, leave);
  }

  /** From a free end that points in a direction. */
  static fromPoint(place: Point, run: Point): FilmRun {
    return new FilmRun([], { place, run: unit(run) });
  }

  /** Straight to the next wheel. */
  onto(next: Wheel): FilmRun {
    const start: Wheel = isOnWheel(this.end)
      ? this.end.wheel
      : { kind: 'roller', centre: this.end.place, radius: 0, turn: 'clockwise' };
    const [leave, arrive] = tangentAngles(start, next);
    const left = this.leaving(leave);
    return new FilmRun(
      [
        ...left.done,
        { kind: 'line', from: left.place, to: onCircle(next.centre, next.radius, arrive) },
      ],
      { wheel: next, angle: arrive },
    );
  }

  /** Off the wheel at an angle, and in a free loop to a place where it runs in a direction. */
  loopTo(place: Point, run: Point, reaches: readonly [number, number], leave = 0): FilmRun {
    const left = this.leaving(leave);
    const ahead = unit(run);
    return new FilmRun(
      [
        ...left.done,
        {
          kind: 'loop',
          from: left.place,
          control: [
            plus(left.place, times(left.run, reaches[0])),
            minus(place, times(ahead, reaches[1])),
          ],
          to: place,
        },
      ],
      { place, run: ahead },
    );
  }

  /** In a free loop onto a wheel, which it meets at an angle. */
  loopOnto(wheel: Wheel, arrive: number, reaches: readonly [number, number], leave = 0): FilmRun {
    const met = onCircle(wheel.centre, wheel.radius, arrive);
    const { done } = this.loopTo(met, runAt(wheel, arrive), reaches, leave);
    return new FilmRun(done, { wheel, angle: arrive });
  }

  /** Straight on for a length. */
  ahead(length: number, leave = 0): FilmRun {
    const { done, place, run } = this.leaving(leave);
    const to = plus(place, times(run, length));
    return new FilmRun([...done, { kind: 'line', from: place, to }], { place: to, run });
  }

  /** The path; on a last wheel, `wrap` radians of film are shown. */
  path(wrap = 0.5): FilmPath {
    if (!isOnWheel(this.end)) return { segments: this.done };
    const { wheel, angle } = this.end;
    return {
      segments: [
        ...this.done,
        { kind: 'arc', wheel, fromAngle: angle, sweep: signOf(wheel.turn) * wrap },
      ],
    };
  }

  /** The film up to where it leaves a wheel at an angle; free film is left as it is. */
  private leaving(angle: number): Free & { readonly done: readonly Segment[] } {
    if (!isOnWheel(this.end)) return { ...this.end, done: this.done };
    const { wheel, angle: fromAngle } = this.end;
    const full = 2 * Math.PI;
    const turned = signOf(wheel.turn) * (angle - fromAngle);
    const sweep = signOf(wheel.turn) * (((turned % full) + full) % full);
    return {
      done: [...this.done, { kind: 'arc', wheel, fromAngle, sweep }],
      place: onCircle(wheel.centre, wheel.radius, angle),
      run: runAt(wheel, angle),
    };
  }
}

/** Where a share of a segment lies, 0…1, and where it runs to. */
export function alongSegment(segment: Segment, share: number): { place: Point; run: Point } {
  if (segment.kind === 'line') {
    const whole = minus(segment.to, segment.from);
    return { place: plus(segment.from, times(whole, share)), run: unit(whole) };
  }
  if (segment.kind === 'arc') {
    const { wheel, fromAngle, sweep } = segment;
    const angle = fromAngle + sweep * share;
    return { place: onCircle(wheel.centre, wheel.radius, angle), run: runAt(wheel, angle) };
  }
  const rest = 1 - share;
  const knots = [segment.from, ...segment.control, segment.to];
  const weigh = (weights: readonly number[], points: readonly Point[]): Point =>
    points.reduce((sum, each, index) => plus(sum, times(each, weights[index] ?? 0)), point(0, 0));
  const steps = knots.slice(1).map((each, index) => minus(each, knots[index] ?? each));
  return {
    place: weigh([rest ** 3, 3 * rest ** 2 * share, 3 * rest * share ** 2, share ** 3], knots),
    run: unit(weigh([rest ** 2, 2 * rest * share, share ** 2], steps)),
  };
}
