import type { FilmPath, Segment } from '../../src/drawings/kit/film-path.ts';

/** A place of the film and the way it runs there, by arithmetic of the test's own. */
export interface Sample {
  readonly x: number;
  readonly y: number;
  readonly runX: number;
  readonly runY: number;
  readonly segment: number;
}

/** De Casteljau's construction, down to the last chord. */
function onCurve(points: readonly (readonly [number, number])[], share: number): readonly number[] {
  const [first, second] = points;
  if (points.length === 2 && first !== undefined && second !== undefined) {
    const place = [0, 1].map((axis) => first[axis]! + (second[axis]! - first[axis]!) * share);
    const chord = [second[0] - first[0], second[1] - first[1]];
    return [...place, ...chord];
  }
  const between = points.slice(1).map(([x, y], index) => {
    const [lastX, lastY] = points[index]!;
    return [lastX + (x - lastX) * share, lastY + (y - lastY) * share] as const;
  });
  return onCurve(between, share);
}

function sample(segment: Segment, share: number, index: number): Sample {
  const made = (x: number, y: number, runX: number, runY: number): Sample => {
    const length = Math.sqrt(runX * runX + runY * runY);
    return { x, y, runX: runX / length, runY: runY / length, segment: index };
  };
  if (segment.kind === 'arc') {
    const { centre, radius } = segment.wheel;
    const angle = segment.fromAngle + share * segment.sweep;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    // With y downwards a growing angle goes with the clock.
    const sense = segment.sweep > 0 ? 1 : -1;
    return made(centre.x + radius * cos, centre.y + radius * sin, -sin * sense, cos * sense);
  }
  const knots =
    segment.kind === 'line'
      ? [segment.from, segment.to]
      : [segment.from, ...segment.control, segment.to];
  const [x, y, runX, runY] = onCurve(
    knots.map((knot) => [knot.x, knot.y] as const),
    share,
  );
  return made(x!, y!, runX!, runY!);
}

const STEPS = 40;

/** The film as a close row of places. */
export const filmSamples = ({ segments }: FilmPath): readonly Sample[] =>
  segments.flatMap((segment, index) =>
    Array.from({ length: STEPS + 1 }, (_, step) => sample(segment, step / STEPS, index)),
  );
