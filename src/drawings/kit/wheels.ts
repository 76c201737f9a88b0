import type { Turn, Wheel } from './film-path.ts';
import { at, circle, line, path } from './marks.ts';
import { onCircle, point } from './point.ts';

/** Half the weight of the film line, so that it lies on a wheel, not in it. */
const HALF_FILM = 1.7;

const wheel = (kind: Wheel['kind'], x: number, y: number, radius: number, turn: Turn): Wheel => ({
  kind,
  centre: point(x, y),
  radius,
  turn,
});

/** A reel with film wound up to `radius`. */
export const reel = (x: number, y: number, radius: number, turn: Turn): Wheel =>
  wheel('reel', x, y, radius, turn);

export const sprocket = (x: number, y: number, turn: Turn, radius = 22): Wheel =>
  wheel('sprocket', x, y, radius, turn);

export const roller = (x: number, y: number, turn: Turn, radius = 12): Wheel =>
  wheel('roller', x, y, radius, turn);

export const drum = (x: number, y: number, turn: Turn, radius = 26): Wheel =>
  wheel('drum', x, y, radius, turn);

const RIM_WINDOWS = [0.4, 0.4 + (Math.PI * 2) / 3, 0.4 + (Math.PI * 4) / 3];

/** A window in the flange, between what is wound and the rim. */
function flangeWindow({ x, y }: { x: number; y: number }, inner: number, outer: number) {
  return (turn: number): string => {
    const corner = (radius: number, angle: number): string => {
      const place = onCircle(point(x, y), radius, turn + angle);
      return `${at(place.x)} ${at(place.y)}`;
    };
    const arcTo = (radius: number, sense: number, angle: number): string =>
      `A${at(radius)} ${at(radius)} 0 0 ${sense} ${corner(radius, angle)}`;
    return path(
      'e',
      `M${corner(inner, -0.3)}${arcTo(inner, 1, 0.3)}L${corner(outer, 0.2)}${arcTo(outer, 0, -0.2)}z`,
    );
  };
}

/** A reel from its side, with the turns of film on it. */
export function reelMark({ centre, radius }: Wheel, flange: number, hub = 24): string {
  const { x, y } = centre;
  const turns: string[] = [];
  for (let wound = hub + 5; wound < radius - 3; wound += 5) turns.push(circle('g', x, y, wound));
  const windows =
    flange - radius < 18 ? [] : RIM_WINDOWS.map(flangeWindow(centre, radius + 6, flange - 8));
  return [
    circle('s', x, y, flange),
    circle('t', x, y, flange - 4),
    ...windows,
    circle('p', x, y, radius),
    ...turns,
    circle('f', x, y, radius),
    circle('o', x, y, hub),
    circle('o', x, y, 6),
    line('t', x - 3, y, x + 3, y),
    line('t', x, y - 3, x, y + 3),
  ].join('');
}

const TEETH = 14;

/** A toothed wheel: the teeth stand out through the holes of the film that lies on it. */
export function sprocketMark({ centre, radius }: Wheel): string {
  const teeth = Array.from({ length: TEETH }, (_, index) => {
    const angle = (index * 2 * Math.PI) / TEETH;
    const [from, to] = [radius - HALF_FILM, radius + 5].map((each) =>
      onCircle(centre, each, angle),
    );
    return from === undefined || to === undefined
      ? ''
      : `M${at(from.x)} ${at(from.y)}L${at(to.x)} ${at(to.y)}`;
  });
  return [
    path('e', teeth.join('')),
    circle('o', centre.x, centre.y, radius - HALF_FILM),
    circle('t', centre.x, centre.y, radius - 7),
    circle('d', centre.x, centre.y, 3),
  ].join('');
}

/** A smooth wheel. */
export const rollerMark = ({ centre, radius }: Wheel): string =>
  circle('o', centre.x, centre.y, radius - HALF_FILM) + circle('d', centre.x, centre.y, 2.5);

/** The shoe that holds film on the teeth: a curved plate beside the wheel, `span` radians wide. */
export function shoeMark({ centre, radius }: Wheel, middleAngle: number, span = 1.1): string {
  const inner = radius + 6;
  const outer = radius + 13;
  const corner = (each: number, angle: number): string => {
    const place = onCircle(centre, each, angle);
    return `${at(place.x)} ${at(place.y)}`;
  };
  const [from, to] = [middleAngle - span / 2, middleAngle + span / 2];
  return path(
    'o',
    `M${corner(inner, from)}A${at(inner)} ${at(inner)} 0 0 1 ${corner(inner, to)}` +
      `L${corner(outer, to)}A${at(outer)} ${at(outer)} 0 0 0 ${corner(outer, from)}z`,
  );
}
