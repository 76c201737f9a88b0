import { parse, type HTMLElement } from 'node-html-parser';
import type { LineDrawing } from '../../src/drawings/kit/drawing.ts';
import type { FilmPath, Wheel } from '../../src/drawings/kit/film-path.ts';
import { filmSamples, type Sample } from './film-samples.ts';
import { holds, overlap, textBox, type Box } from './text-boxes.ts';

/** Sizes of letters as the style of the drawings gives them. */
const SIZES: readonly (readonly [string, number])[] = [
  ['big', 44],
  ['sign', 30],
  ['key', 30],
  ['note', 16],
];
const USUAL_SIZE = 18;

interface Named extends Box {
  readonly text: string;
}

const numberIn = (element: HTMLElement, name: string): number => Number(element.getAttribute(name));

function textIn(element: HTMLElement): Named {
  const style = (element.getAttribute('class') ?? '').split(' ');
  const size = SIZES.find(([name]) => style.includes(name))?.[1] ?? USUAL_SIZE;
  const text = element.text;
  const anchor = element.getAttribute('text-anchor') ?? 'start';
  const isHeavy = size >= 30;
  return {
    text,
    ...textBox(text, numberIn(element, 'x'), numberIn(element, 'y'), anchor, size, isHeavy),
  };
}

function ringIn(element: HTMLElement): Box {
  const [x, y, r] = ['cx', 'cy', 'r'].map((name) => numberIn(element, name));
  return { left: x! - r!, top: y! - r!, right: x! + r!, bottom: y! + r! };
}

/** What each size of the drawing shows of its names. */
export function namesShown(svg: string, size: 'wide' | 'narrow'): readonly Named[] {
  const root = parse(svg);
  const texts = root.querySelectorAll(`g.${size} > text`);
  if (size === 'wide') return texts.map(textIn);
  return root
    .querySelectorAll('g.narrow > circle')
    .map((ring, index) => ({ text: texts[index]?.text ?? '', ...ringIn(ring) }));
}

const signsIn = (svg: string): readonly Named[] =>
  parse(svg)
    .querySelectorAll('g.marks text')
    .filter((text) => text.getAttribute('transform') === undefined)
    .map(textIn);

interface Leader {
  readonly to: readonly [number, number];
  readonly from: readonly [number, number];
}

function leadersIn(svg: string): readonly Leader[] {
  return parse(svg)
    .querySelectorAll('g.leaders > path')
    .map((path) => {
      const [x, y, fromX, fromY] = (path.getAttribute('d') ?? '').slice(1).split(' ').map(Number);
      return { to: [x!, y!], from: [fromX!, fromY!] } as const;
    });
}

/** Places along a leader, its dot and its end left out. */
const alongLeader = ({ to, from }: Leader): readonly (readonly [number, number])[] =>
  Array.from({ length: 120 }, (_, index) => {
    const share = (index + 1) / 121;
    return [to[0] + (from[0] - to[0]) * share, to[1] + (from[1] - to[1]) * share] as const;
  });

const boxOf = ({ x, y, width, height }: LineDrawing['areas'][number]): Box => ({
  left: x,
  top: y,
  right: x + width,
  bottom: y + height,
});

const ROOM = 2;
/** Half the film line, and a little air. */
const FILM_ROOM = 4;

/** Names that lie over each other, the frame, the film or what is written in the drawing. */
export function nameFaults(drawing: LineDrawing, svg: string, size: 'wide' | 'narrow'): string[] {
  const { left, width, height, paths, areas } = drawing;
  const names = namesShown(svg, size);
  const others = signsIn(svg);
  const film = paths.flatMap(filmSamples);
  const inside: Box = {
    left: left + ROOM,
    top: ROOM,
    right: left + width - ROOM,
    bottom: height - ROOM,
  };
  return names.flatMap((name, index) => {
    const faults: string[] = [];
    const say = (what: string): void => {
      faults.push(`${drawing.id}, ${size}: “${name.text}” ${what}`);
    };
    if (
      name.left < inside.left ||
      name.top < inside.top ||
      name.right > inside.right ||
      name.bottom > inside.bottom
    ) {
      say(
        `leaves the sheet (${[name.left, name.top, name.right, name.bottom].map(Math.round).join(' ')})`,
      );
    }
    for (const other of [...names.slice(index + 1), ...others]) {
      if (overlap(name, other, 0)) say(`overlaps “${other.text}”`);
    }
    const around: Box = {
      left: name.left - FILM_ROOM,
      top: name.top - FILM_ROOM,
      right: name.right + FILM_ROOM,
      bottom: name.bottom + FILM_ROOM,
    };
    if (film.some(({ x, y }) => holds(around, x, y))) say('lies on the film');
    if (areas.some((area) => overlap(name, boxOf(area)))) say('lies on a strip of film');
    return faults;
  });
}

/** Leaders that cross film, another leader or a name. */
export function leaderFaults(drawing: LineDrawing, svg: string): string[] {
  const film = drawing.paths.flatMap(filmSamples);
  const leaders = leadersIn(svg);
  const areas = drawing.areas.map(boxOf);
  const sizes = (['wide', 'narrow'] as const).map((size) => ({
    size,
    names: namesShown(svg, size),
  }));
  const faults: string[] = [];
  leaders.forEach((leader, index) => {
    const [toX, toY] = leader.to;
    const say = (what: string): void => {
      faults.push(`${drawing.id}: the leader to ${Math.round(toX)} ${Math.round(toY)} ${what}`);
    };
    const way = alongLeader(leader);
    const isOver = way.some(
      ([x, y]) =>
        Math.hypot(x - toX, y - toY) > 9 &&
        film.some((each) => Math.hypot(x - each.x, y - each.y) < 2.6),
    );
    if (isOver) say('crosses the film');
    for (const box of areas) {
      if (!holds(box, toX, toY) && way.some(([x, y]) => holds(box, x, y))) say('crosses a strip');
    }
    for (const { size, names } of sizes) {
      for (const name of names) {
        const isIn = way.some(
          ([x, y]) => holds(name, x, y) && Math.hypot(x - leader.from[0], y - leader.from[1]) > 3,
        );
        if (isIn) say(`runs through “${name.text}” (${size})`);
      }
    }
    for (const other of leaders.slice(index + 1)) {
      if (cross(leader, other)) say(`crosses the leader to ${other.to.map(Math.round).join(' ')}`);
    }
  });
  return faults;
}

function cross(a: Leader, b: Leader): boolean {
  const side = (line: Leader, [x, y]: readonly [number, number]): number =>
    (line.from[0] - line.to[0]) * (y - line.to[1]) - (line.from[1] - line.to[1]) * (x - line.to[0]);
  return side(a, b.to) * side(a, b.from) < 0 && side(b, a.to) * side(b, a.from) < 0;
}

const distance = (a: { x: number; y: number }, b: { x: number; y: number }): number =>
  Math.hypot(a.x - b.x, a.y - b.y);

/** Kinks and gaps: where two segments meet, film goes on from the same place the same way. */
function kinks(id: string, samples: readonly Sample[]): string[] {
  return samples.slice(1).flatMap((here, index) => {
    const before = samples[index]!;
    if (here.segment === before.segment) return [];
    const where = `${id}: at ${Math.round(here.x)} ${Math.round(here.y)} the film`;
    const turned = Math.abs(here.runX * before.runY - here.runY * before.runX);
    const isAhead = here.runX * before.runX + here.runY * before.runY > 0;
    return [
      ...(distance(here, before) > 0.1 ? [`${where} has a gap`] : []),
      ...(turned > 0.002 || !isAhead ? [`${where} leaves or meets without a tangent`] : []),
    ];
  });
}

/** Film that goes into a wheel, or round one against its turning. */
function wheelFaults(id: string, samples: readonly Sample[], wheels: readonly Wheel[]): string[] {
  return wheels.flatMap((wheel) => {
    const { centre, radius, kind, turn } = wheel;
    const name = `${id}: the ${kind} at ${Math.round(centre.x)} ${Math.round(centre.y)}`;
    const isIn = samples.some((each) => distance(each, centre) < radius - 0.05);
    const touching = samples.filter((each) => Math.abs(distance(each, centre) - radius) < 0.02);
    const wrong = touching.filter(({ x, y, runX, runY }) => {
      // The wheel's rim moves with the film: radius × run is positive with the clock, as y runs down.
      const product = (x - centre.x) * runY - (y - centre.y) * runX;
      return product > 0 !== (turn === 'clockwise');
    });
    return [
      ...(isIn ? [`${name} is cut by the film`] : []),
      ...(wrong.length > 0 ? [`${name} turns against the film`] : []),
    ];
  });
}

/** Every wheel of a drawing is touched by some film. */
function idleWheels(id: string, paths: readonly FilmPath[], wheels: readonly Wheel[]): string[] {
  const samples = paths.flatMap(filmSamples);
  return wheels
    .filter(
      ({ centre, radius }) =>
        samples.filter((each) => Math.abs(distance(each, centre) - radius) < 0.02).length < 5,
    )
    .map(({ kind, centre }) => `${id}: no film lies on the ${kind} at ${centre.x} ${centre.y}`);
}

/** Film that crosses itself, which no path on a machine does when seen from its side. */
function crossings(id: string, samples: readonly Sample[]): string[] {
  const found: string[] = [];
  for (let first = 1; first < samples.length; first += 1) {
    for (let second = first + 3; second < samples.length; second += 1) {
      const a = { to: pair(samples[first - 1]!), from: pair(samples[first]!) };
      const b = { to: pair(samples[second - 1]!), from: pair(samples[second]!) };
      if (cross(a, b))
        found.push(`${id}: the film crosses itself at ${a.to.map(Math.round).join(' ')}`);
    }
  }
  return found;
}

const pair = ({ x, y }: Sample): readonly [number, number] => [x, y];

export function filmFaults(drawing: LineDrawing): string[] {
  const { id, paths, wheels } = drawing;
  return [
    ...paths.flatMap((path) => {
      const samples = filmSamples(path);
      return [
        ...kinks(id, samples),
        ...wheelFaults(id, samples, wheels),
        ...crossings(id, samples),
      ];
    }),
    ...idleWheels(id, paths, wheels),
  ];
}

/** Arrows that disagree with the film, or with the wheel that they stand beside. */
export function arrowFaults(drawing: LineDrawing): string[] {
  const { id, paths, wheels, runArrows, turnArrows } = drawing;
  const film = paths.flatMap(filmSamples);
  const wrongRuns = runArrows.filter(({ place, run }) => {
    const nearest = film.toSorted((a, b) => distance(a, place) - distance(b, place))[0];
    return (
      nearest === undefined ||
      distance(nearest, place) > 8 ||
      run.x * nearest.runX + run.y * nearest.runY < 0.9
    );
  });
  const wrongTurns = turnArrows.filter(({ centre, sweep }) => {
    const wheel = wheels.find((each) => distance(each.centre, centre) < 0.1);
    return wheel === undefined || sweep > 0 !== (wheel.turn === 'clockwise');
  });
  return [
    ...wrongRuns.map(
      ({ place }) =>
        `${id}: the arrow at ${Math.round(place.x)} ${Math.round(place.y)} does not run with the film`,
    ),
    ...wrongTurns.map(
      ({ centre }) =>
        `${id}: the arrow round ${Math.round(centre.x)} ${Math.round(centre.y)} turns against its wheel`,
    ),
  ];
}

/** Mirrors that turn a ray by another angle than they meet it. */
export function mirrorFaults({ id, reflections }: LineDrawing): string[] {
  return reflections
    .filter(({ from, at, to, mirror }) => {
      const angleTo = (end: { x: number; y: number }): number => {
        const [x, y] = [end.x - at.x, end.y - at.y];
        return Math.abs(Math.atan2(x * mirror.y - y * mirror.x, x * mirror.x + y * mirror.y));
      };
      // Grazing angles to the two ends of the mirror: in and out they make up a straight line.
      return Math.abs(angleTo(from) + angleTo(to) - Math.PI) > 1e-6;
    })
    .map(
      ({ at }) =>
        `${id}: the mirror at ${Math.round(at.x)} ${Math.round(at.y)} turns a ray wrongly`,
    );
}
