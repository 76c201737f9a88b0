import type { Chance } from './chance.ts';

/** An opening of the shutter, in film frames from the middle of the pulldown blade. */
export interface Opening {
  readonly from: number;
  readonly to: number;
}

/** A projector as it really runs. */
export interface Projector {
  readonly filmFps: number;
  readonly openings: readonly Opening[];
  /** Width of a soft edge, film frames. */
  readonly edge: number;
  /** Swings of the speed: share, swings a second, phase; and a steady trend, share a second. */
  readonly swings: readonly {
    readonly share: number;
    readonly hertz: number;
    readonly turn: number;
  }[];
  readonly trend: number;
  /** Film frames gone by at time 0. */
  readonly start: number;
}

/** Openings of n blades: the pulldown blade around 0, the others alike between. */
export function openingsOf(flashes: number, open: number, pulldown: number): readonly Opening[] {
  const inner = flashes === 1 ? 0 : (1 - open - pulldown) / (flashes - 1);
  const lit = open / flashes;
  let at = pulldown / 2;
  return Array.from({ length: flashes }, () => {
    const opening = { from: at, to: at + lit };
    at += lit + inner;
    return opening;
  });
}

/** Film frames gone by at a time. */
export function filmAt({ filmFps, swings, trend, start }: Projector, seconds: number): number {
  let gone = seconds + (trend * seconds * seconds) / 2;
  for (const { share, hertz, turn } of swings) {
    const rate = 2 * Math.PI * hertz;
    gone += (share * (Math.cos(turn) - Math.cos(rate * seconds + turn))) / rate;
  }
  return start + filmFps * gone;
}

/** Light in the gate at a film position, 0 to 1. */
function lightAt({ openings, edge }: Projector, position: number): number {
  const phase = position - Math.floor(position);
  let light = 0;
  for (const { from, to } of openings) {
    if (edge === 0) light = Math.max(light, phase >= from && phase < to ? 1 : 0);
    else {
      const rise = Math.min(1, Math.max(0, (phase - from) / edge + 0.5));
      const fall = Math.min(1, Math.max(0, (to - phase) / edge + 0.5));
      light = Math.max(light, Math.min(rise, fall));
    }
  }
  return light;
}

/** Seconds of one step in which the light is added up. */
const STEP = 1 / 20_000;

/** The light of a run, added up in fine steps, so that any exposure can be read off. */
export interface GateRun {
  readonly projector: Projector;
  /** Light of each film frame that falls into a stretch of time: film frame and light × s. */
  readonly between: (from: number, to: number) => readonly { film: number; light: number }[];
}

export function runProjector(projector: Projector, seconds: number): GateRun {
  const count = Math.ceil(seconds / STEP) + 2;
  const sum = new Float64Array(count + 1);
  const changes: number[] = [];
  const firstFilm = Math.floor(filmAt(projector, 0));
  let film = firstFilm;
  for (let at = 0; at < count; at += 1) {
    const position = filmAt(projector, (at + 0.5) * STEP);
    sum[at + 1] = sum[at]! + lightAt(projector, position) * STEP;
    while (Math.floor(position) > film) {
      film += 1;
      changes.push((at + 0.5) * STEP);
    }
  }
  const until = (time: number): number => {
    const exact = Math.max(0, time / STEP);
    const at = Math.min(count - 1, Math.floor(exact));
    return sum[at]! + (sum[at + 1]! - sum[at]!) * (exact - at);
  };
  const filmFrom = (time: number): number => {
    let low = 0;
    let high = changes.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (changes[middle]! <= time) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  return {
    projector,
    between(from, to) {
      const shares: { film: number; light: number }[] = [];
      let start = from;
      for (let index = filmFrom(from); start < to; index += 1) {
        const end = Math.min(to, changes[index] ?? Infinity);
        shares.push({ film: firstFilm + index, light: until(end) - until(start) });
        start = end;
      }
      return shares;
    },
  };
}

/** A motor's wander up to so large a share of its speed. */
export function drawSwings(chance: Chance, most: number): Projector['swings'] {
  return Array.from({ length: 3 }, () => ({
    share: (chance.between(0.3, 1) * most) / 2.2,
    hertz: chance.between(0.03, 0.25),
    turn: chance.between(0, 2 * Math.PI),
  }));
}
