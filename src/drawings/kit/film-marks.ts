import type { FilmArea, RunArrow, TurnArrow } from './drawing.ts';
import { alongSegment, type FilmPath, type Segment, type Turn, type Wheel } from './film-path.ts';
import { arc, at, head, path } from './marks.ts';
import { direction, onCircle, quarterTurn, times, type Point } from './point.ts';

function step(segment: Segment): string {
  const { x, y } = alongSegment(segment, 1).place;
  const to = `${at(x)} ${at(y)}`;
  if (segment.kind === 'line') return `L${to}`;
  if (segment.kind === 'arc') {
    const { sweep, wheel } = segment;
    const large = Math.abs(sweep) > Math.PI ? 1 : 0;
    return `A${at(wheel.radius)} ${at(wheel.radius)} 0 ${large} ${sweep > 0 ? 1 : 0} ${to}`;
  }
  const controls = segment.control.map((each) => `${at(each.x)} ${at(each.y)}`).join(' ');
  return `C${controls} ${to}`;
}

/** Film from its edge; `style` for film at another moment. */
export function filmLine({ segments }: FilmPath, style = 'f'): string {
  const [first] = segments;
  if (first === undefined) throw new RangeError('a film path has no segment');
  const { x, y } = alongSegment(first, 0).place;
  return path(style, `M${at(x)} ${at(y)}${segments.map(step).join('')}`);
}

/** An arrow head on the film at a share of one of its segments. */
export function runArrow(film: FilmPath, segment: number, share = 0.55): RunArrow {
  const chosen = film.segments[segment];
  if (chosen === undefined) throw new RangeError(`the film has no segment ${segment}`);
  return alongSegment(chosen, share);
}

/** The numbers of the straight pieces of a path that are long enough for an arrow. */
export function arrowsOnStraights(film: FilmPath, least = 40): readonly RunArrow[] {
  return film.segments.flatMap((segment, index) =>
    segment.kind === 'line' &&
    Math.hypot(segment.to.x - segment.from.x, segment.to.y - segment.from.y) >= least
      ? [runArrow(film, index)]
      : [],
  );
}

export const runHead = ({ place, run }: RunArrow): string =>
  head('a', { x: place.x + run.x * 6, y: place.y + run.y * 6 }, run, 14);

/** An arrow round a wheel, outside `radius`, that turns with it. */
export function turnArrow(
  wheel: Wheel,
  radius: number,
  middleAngle: number,
  span = 0.6,
): TurnArrow {
  const sense = wheel.turn === 'clockwise' ? 1 : -1;
  return {
    centre: wheel.centre,
    radius,
    fromAngle: middleAngle - (sense * span) / 2,
    sweep: sense * span,
    turn: wheel.turn,
  };
}

export function turnMark({ centre, radius, fromAngle, sweep }: TurnArrow): string {
  const end = fromAngle + sweep;
  const run = times(quarterTurn(direction(end)), Math.sign(sweep));
  const tip: Point = onCircle(centre, radius, end);
  return arc('t', centre, radius, fromAngle, sweep) + head('d', tip, run, 12);
}

/** The other way round. */
export const against = (turn: Turn): Turn => (turn === 'clockwise' ? 'anticlockwise' : 'clockwise');

export const area = (x: number, y: number, width: number, height: number): FilmArea => ({
  x,
  y,
  width,
  height,
});
