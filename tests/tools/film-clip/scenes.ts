import type { Chance } from './chance.ts';

export const COLUMNS = 48;
export const ROWS = 36;
const TILE_COLUMNS = 128;
const TILE_ROWS = 96;

/** What a stretch of film shows. */
export type SceneKind =
  'moving' | 'still-with-grain' | 'still-without-grain' | 'black' | 'fade-out' | 'fade-in';

export interface ScenePlan {
  readonly kind: SceneKind;
  readonly filmFrames: number;
}

/** How the film itself looks. */
export interface FilmStock {
  /** Spread of the grain in the small picture, share of white. */
  readonly grain: number;
  /** Spread of the picture's place in the gate, picture heights. */
  readonly weave: number;
  /** Specks of dust a film frame. */
  readonly dust: number;
  readonly isScratched: boolean;
}

export type DrawFilmFrame = (film: number) => Float64Array;

/** Soft patches of several sizes, which repeat at the edges. */
function drawTile(chance: Chance): Float64Array {
  const tile = new Float64Array(TILE_COLUMNS * TILE_ROWS);
  for (const size of [32, 16, 8, 4]) {
    const columns = TILE_COLUMNS / size;
    const rows = TILE_ROWS / size;
    const levels = Float64Array.from({ length: columns * rows }, () => chance.normal());
    for (let y = 0; y < TILE_ROWS; y += 1) {
      for (let x = 0; x < TILE_COLUMNS; x += 1) {
        const column = Math.floor(x / size);
        const row = Math.floor(y / size);
        const across = (x % size) / size;
        const down = (y % size) / size;
        const at = (c: number, r: number): number => levels[(r % rows) * columns + (c % columns)]!;
        const upper = at(column, row) * (1 - across) + at(column + 1, row) * across;
        const lower = at(column, row + 1) * (1 - across) + at(column + 1, row + 1) * across;
        tile[y * TILE_COLUMNS + x]! +=
          (upper * (1 - down) + lower * down) * 0.09 * Math.sqrt(size / 8);
      }
    }
  }
  return tile;
}

function tileAt(tile: Float64Array, x: number, y: number): number {
  const wrap = (value: number, size: number): number => ((value % size) + size) % size;
  const left = wrap(x, TILE_COLUMNS);
  const top = wrap(y, TILE_ROWS);
  const column = Math.floor(left);
  const row = Math.floor(top);
  const across = left - column;
  const down = top - row;
  const at = (c: number, r: number): number =>
    tile[(r % TILE_ROWS) * TILE_COLUMNS + (c % TILE_COLUMNS)]!;
  return (
    (at(column, row) * (1 - across) + at(column + 1, row) * across) * (1 - down) +
    (at(column, row + 1) * (1 - across) + at(column + 1, row + 1) * across) * down
  );
}

/** A shot: a background that may pan, and things that move before it. */
function drawShot(chance: Chance, moves: boolean): (film: number, x: number, y: number) => number {
  const tile = drawTile(chance);
  const level = chance.between(0.15, 0.5);
  const pans = moves && chance.happens(0.5);
  const pan = { x: pans ? chance.between(-0.8, 0.8) : 0, y: pans ? chance.between(-0.2, 0.2) : 0 };
  const things = Array.from({ length: moves ? 4 : 0 }, () => ({
    x: chance.between(0, COLUMNS),
    y: chance.between(4, ROWS - 4),
    radius: chance.between(2, 7),
    level: chance.between(0.02, 0.9),
    swing: chance.between(2, 14),
    pace: chance.between(0.05, 0.5),
    drift: chance.between(-0.5, 0.5),
    turn: chance.between(0, 6),
  }));
  return (film, x, y) => {
    let value = level + tileAt(tile, x + pan.x * film, y + pan.y * film);
    for (const thing of things) {
      const middle =
        thing.x + thing.drift * film + thing.swing * Math.sin(thing.pace * film + thing.turn);
      const across = ((((x - middle) % 64) + 96) % 64) - 32;
      const down = y - thing.y - 2 * Math.sin(thing.pace * 1.7 * film);
      const cover = Math.min(1, Math.max(0, thing.radius - Math.hypot(across, down) + 0.5));
      value += cover * (thing.level - value);
    }
    return Math.min(1, Math.max(0.004, value));
  };
}

/** The film as a row of scenes with splices between them; film frames before and after show the ends. */
export function drawFilm(
  chance: Chance,
  plans: readonly ScenePlan[],
  stock: FilmStock,
): DrawFilmFrame {
  const scenes: {
    readonly from: number;
    readonly plan: ScenePlan;
    readonly shot: ReturnType<typeof drawShot>;
  }[] = [];
  let from = 0;
  for (const plan of plans) {
    const before = scenes.at(-1);
    const goesOn = before !== undefined && plan.kind.startsWith('fade');
    const shot = goesOn ? before.shot : drawShot(chance, !plan.kind.startsWith('still'));
    scenes.push({ from, plan, shot });
    from += plan.filmFrames;
  }
  const normals = Float64Array.from({ length: 16_384 }, () => chance.normal());
  const seeds = Float64Array.from({ length: 4096 }, () => chance.between(0, 1));
  const seedOf = (film: number, use: number): number =>
    seeds[(((film * 31 + use * 977) % 4096) + 4096) % 4096]!;
  const cache = new Map<number, Float64Array>();

  const draw = (film: number): Float64Array => {
    const scene = scenes.findLast((each) => each.from <= film) ?? scenes[0]!;
    const { plan, shot } = scene;
    const into = film - scene.from;
    const picture = new Float64Array(COLUMNS * ROWS);
    const fades =
      plan.kind === 'fade-out'
        ? 1 - into / plan.filmFrames
        : plan.kind === 'fade-in'
          ? into / plan.filmFrames
          : 1;
    const isBare = plan.kind === 'still-without-grain' || plan.kind === 'black';
    const weave = isBare ? 0 : stock.weave * ROWS;
    const [weaveX, weaveY] = [
      normals[Math.floor(seedOf(film, 1) * 16_000)]! * weave * 0.5,
      normals[Math.floor(seedOf(film, 2) * 16_000)]! * weave,
    ];
    const grainFrom = Math.floor(seedOf(film, 3) * 14_000);
    for (let y = 0; y < ROWS; y += 1) {
      for (let x = 0; x < COLUMNS; x += 1) {
        const at = y * COLUMNS + x;
        const base = plan.kind === 'black' ? 0.003 : fades * shot(film, x + weaveX, y + weaveY);
        const grain = isBare
          ? 0
          : stock.grain * normals[grainFrom + at]! * Math.sqrt(Math.max(base, 0.02));
        picture[at] = Math.max(0.001, base + grain);
      }
    }
    if (!isBare) {
      for (let speck = 0; speck < stock.dust; speck += 1)
        picture[Math.floor(seedOf(film, 4 + speck) * picture.length)]! *=
          speck % 2 === 0 ? 0.5 : 1.4;
      if (stock.isScratched) {
        const column = 20 + Math.round(4 * Math.sin(film / 40));
        for (let y = 0; y < ROWS; y += 1) picture[y * COLUMNS + column]! *= 0.85;
      }
    }
    return picture;
  };
  return (film) => {
    const known = cache.get(film);
    if (known !== undefined) return known;
    const drawn = draw(film);
    cache.set(film, drawn);
    if (cache.size > 12) cache.delete(cache.keys().next().value!);
    return drawn;
  };
}
