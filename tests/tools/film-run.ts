/**
 * A film that really runs past a shutter, and a camera that reads its rows one after another. Written
 * without the core: blades are intervals of the turn, soft edges are strips of the picture that each
 * edge reaches a little sooner or later, the speed changes from one short step of time to the next,
 * and every row is looked at by itself.
 */

/** A blade, as shares of the film-frame cycle; the film moves behind the one around 0. */
export interface Blade {
  readonly from: number;
  readonly to: number;
}

export interface Bench {
  readonly blades: readonly Blade[];
  /** Share of the cycle that an edge takes to cross the gate. */
  readonly wipe: number;
  readonly exposureSeconds: number;
  readonly readoutSeconds: number;
  readonly cameraFps: number;
}

/** Film frames gone by at a time, and the time at which so many have gone by. */
export interface Run {
  at(seconds: number): number;
  when(filmFrames: number): number;
}

/** A film at one speed. */
export function steadyRun(filmFps: number, phase = 0): Run {
  return {
    at: (seconds) => seconds * filmFps + phase,
    when: (filmFrames) => (filmFrames - phase) / filmFps,
  };
}

/** A film whose speed is given for short steps of time; the last one goes on. */
export function wanderingRun(stepSeconds: number, speeds: readonly number[], phase = 0): Run {
  const gone = [phase];
  for (const speed of speeds) gone.push((gone.at(-1) ?? 0) + speed * stepSeconds);
  const last = speeds.length - 1;
  return {
    at(seconds) {
      const step = Math.min(last, Math.max(0, Math.floor(seconds / stepSeconds)));
      return (gone[step] ?? 0) + (seconds - step * stepSeconds) * (speeds[step] ?? 0);
    },
    when(filmFrames) {
      let [low, high] = [0, last];
      while (low < high) {
        const middle = Math.ceil((low + high) / 2);
        if ((gone[middle] ?? Infinity) <= filmFrames) low = middle;
        else high = middle - 1;
      }
      return low * stepSeconds + (filmFrames - (gone[low] ?? 0)) / (speeds[low] ?? 1);
    },
  };
}

/** Blades alike in width and spacing. */
export function equalBlades(count: number, openFraction: number): readonly Blade[] {
  const half = (1 - openFraction) / count / 2;
  return Array.from({ length: count }, (_, index) => ({
    from: index / count - half,
    to: index / count + half,
  }));
}

/** A pulldown blade of its own width; the openings are alike and so are the other blades. */
export function unequalBlades(
  count: number,
  openFraction: number,
  pulldown: number,
): readonly Blade[] {
  const open = openFraction / count;
  const other = count > 1 ? (1 - openFraction - pulldown) / (count - 1) : 0;
  const blades = [{ from: -pulldown / 2, to: pulldown / 2 }];
  let at = pulldown / 2;
  for (let index = 1; index < count; index += 1) {
    at += open;
    blades.push({ from: at, to: at + other });
    at += other;
  }
  return blades;
}

/** Where the strips of the gate lie, as shares of a wipe: a hard edge reaches all of it at once. */
const HARD_STRIPS = [0];
const SOFT_STRIPS = [-0.5, -0.25, 0, 0.25, 0.5];

/** Light of every film frame in one row, by film frame; the strips of the gate share it. */
function rowLight(bench: Bench, run: Run, startSeconds: number): ReadonlyMap<number, number> {
  const light = new Map<number, number>();
  const from = run.at(startSeconds);
  const to = run.at(startSeconds + bench.exposureSeconds);
  const { blades, wipe } = bench;
  const strips = wipe === 0 ? HARD_STRIPS : SOFT_STRIPS;
  for (let frame = Math.floor(from - 1); frame <= to + 1; frame += 1) {
    let sum = 0;
    for (const strip of strips) {
      // This strip of the picture sees every edge so much later.
      const delay = strip * wipe;
      for (let index = 0; index < blades.length; index += 1) {
        const next = blades[index + 1]?.from ?? 1 + (blades[0]?.from ?? 0);
        const opens = frame + (blades[index]?.to ?? 0) + delay;
        const closes = frame + next + delay;
        const lit = Math.min(to, closes) - Math.max(from, opens);
        if (lit > 1e-9) sum += lit / strips.length;
      }
    }
    if (sum > 0) light.set(frame, sum);
  }
  return light;
}

/** What one camera frame holds, its rows one by one. */
export function lookAt(
  bench: Bench,
  run: Run,
  startSeconds: number,
  rows = 17,
): { readonly film: readonly number[]; readonly darkRows: number; readonly ghost: number } {
  const film = new Set<number>();
  let darkRows = 0;
  let ghost = 0;
  const count = bench.readoutSeconds === 0 ? 1 : rows;
  for (let row = 0; row < count; row += 1) {
    const late = count === 1 ? 0 : (row / (count - 1)) * bench.readoutSeconds;
    const light = rowLight(bench, run, startSeconds + late);
    if (light.size === 0) darkRows += 1;
    const shares = [...light.values()];
    const all = shares.reduce((sum, share) => sum + share, 0);
    if (all > 0) ghost = Math.max(ghost, 1 - Math.max(...shares) / all);
    for (const frame of light.keys()) film.add(frame);
  }
  return { film: [...film].sort((a, b) => a - b), darkRows, ghost };
}

/** The film frame that a camera frame holds whole, every row lit by it and by no other. */
export function wholeFilmFrame(
  bench: Bench,
  run: Run,
  startSeconds: number,
  rows = 17,
): number | undefined {
  let whole: number | undefined;
  const count = bench.readoutSeconds === 0 ? 1 : rows;
  for (let row = 0; row < count; row += 1) {
    const late = count === 1 ? 0 : (row / (count - 1)) * bench.readoutSeconds;
    const [filmFrame, another] = rowLight(bench, run, startSeconds + late).keys();
    // One row that is dark or blended settles it.
    if (filmFrame === undefined || another !== undefined) return undefined;
    if (whole !== undefined && whole !== filmFrame) return undefined;
    whole = filmFrame;
  }
  return whole;
}

/**
 * Middle of the camera frames that show a film frame clean to the eye, which overlooks a ghost of some
 * share of the light in a row; undefined when there is none.
 */
export function tieByEye(
  bench: Bench,
  run: Run,
  filmFrame: number,
  overlooked: number,
): number | undefined {
  const around = Math.round(run.when(filmFrame + 0.5) * bench.cameraFps);
  const reach =
    Math.ceil(2 * bench.cameraFps * (run.when(filmFrame + 1) - run.when(filmFrame))) + 1;
  let first: number | undefined;
  let last: number | undefined;
  for (let frame = Math.max(0, around - reach); frame <= around + reach; frame += 1) {
    if (mainFilmFrame(bench, run, frame / bench.cameraFps) !== filmFrame) continue;
    if (lookAt(bench, run, frame / bench.cameraFps).ghost > overlooked) continue;
    first ??= frame;
    last = frame;
  }
  return first === undefined || last === undefined ? undefined : (first + last) / 2;
}

function mainFilmFrame(bench: Bench, run: Run, startSeconds: number): number | undefined {
  const light = rowLight(bench, run, startSeconds + bench.readoutSeconds / 2);
  return [...light].sort((a, b) => b[1] - a[1])[0]?.[0];
}

/** Numbers between 0 and 1 that are the same at every run of the tests. */
export function dice(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Kinds of wander that stay within ±1. */
export const WANDERS = ['sine', 'steps', 'walk', 'ramp', 'there-and-back'] as const;

/** Deviation of the speed for each short step of time, within ±1. */
export function wander(
  kind: (typeof WANDERS)[number],
  steps: number,
  roll: () => number,
): readonly number[] {
  const period = 2 + roll() * steps;
  const phase = roll();
  const sign = roll() < 0.5 ? -1 : 1;
  let value = roll() * 2 - 1;
  const shareAt = (step: number): number => {
    const turn = step / period + phase;
    switch (kind) {
      case 'sine':
        return Math.sin(2 * Math.PI * turn);
      case 'steps':
        return Math.floor(2 * turn) % 2 === 0 ? 1 : -1;
      case 'walk':
        value = Math.max(-1, Math.min(1, value + (roll() - 0.5) * 0.4));
        return value;
      case 'ramp':
        return sign * (2 * (step / steps) - 1);
      case 'there-and-back':
        return step < steps / 2 ? sign : -sign;
    }
  };
  return Array.from({ length: steps }, (_, step) => shareAt(step));
}
