/** A rhythm followed through time: turns gone by at every value of a row. */
export interface RhythmPath {
  readonly turns: Float64Array;
}

/** Lengths of the windows in which the rate is looked for, s, and their distance. */
const WINDOW_SECONDS = 2;
const HOP_SECONDS = 1;
/** The rate may lie so far from the mean, share, in such steps. */
const REACH = 0.04;
const STEP = 0.001;
/** Usual change of the rate from window to window, share. */
const USUAL_CHANGE = 0.006;
/** Multiples of the rate that are heard. */
const MULTIPLES = 5;
/** Multiples above this are not heard, Hz. */
const HIGHEST_HERTZ = 110;

/** Power of a windowed piece at one frequency. */
function powerAt(values: Float64Array, from: number, shape: Float64Array, turn: number): number {
  const cosine = Math.cos(turn);
  const sine = Math.sin(turn);
  let c = 1;
  let s = 0;
  let real = 0;
  let imaginary = 0;
  for (let at = 0; at < shape.length; at += 1) {
    const value = (values[from + at] ?? 0) * (shape[at] ?? 0);
    real += value * c;
    imaginary += value * s;
    const next = c * cosine - s * sine;
    s = c * sine + s * cosine;
    c = next;
  }
  return real * real + imaginary * imaginary;
}

/** Best way through rates, window by window; changes cost. */
function bestWay(scores: readonly Float64Array[]): Int32Array {
  const states = scores[0]?.length ?? 0;
  const origins: Int32Array[] = [];
  let best = Float64Array.from(scores[0] ?? []);
  for (const own of scores.slice(1)) {
    const next = new Float64Array(states);
    const origin = new Int32Array(states);
    for (let state = 0; state < states; state += 1) {
      let most = -Infinity;
      for (let from = 0; from < states; from += 1) {
        const score = (best[from] ?? 0) - 0.5 * (((state - from) * STEP) / USUAL_CHANGE) ** 2;
        if (score > most) {
          most = score;
          origin[state] = from;
        }
      }
      next[state] = most + (own[state] ?? 0);
    }
    origins.push(origin);
    best = next;
  }
  const way = new Int32Array(scores.length);
  let state = best.indexOf(Math.max(...best));
  for (let at = scores.length - 1; at >= 0; at -= 1) {
    way[at] = state;
    state = origins[at - 1]?.[state] ?? state;
  }
  return way;
}

/**
 * Follows a rhythm whose rate wanders: its rate in overlapping windows of two seconds, and the turns
 * gone by from their sum.
 *
 * Model: power at the first five multiples of each rate within 4 % of the mean, against what is usual
 * at that multiple; best way through the rates with changes of 0.6 % from second to second as usual.
 *
 * @param values           the row
 * @param valuesPerSecond  values/s
 * @param hertz            mean rate, Hz
 * @returns turns gone by at each value
 * @source arithmetic
 */
export function rhythmPath(
  values: Float64Array,
  valuesPerSecond: number,
  hertz: number,
): RhythmPath {
  const length = Math.min(values.length, Math.round(WINDOW_SECONDS * valuesPerSecond));
  const hop = Math.round(HOP_SECONDS * valuesPerSecond);
  const windows = Math.max(1, Math.floor((values.length - length) / hop) + 1);
  const shape = Float64Array.from(
    { length },
    (_, at) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (at + 0.5)) / length),
  );
  const reach = Math.round(REACH / STEP);
  const scores = Array.from({ length: windows }, () => new Float64Array(2 * reach + 1));
  for (let multiple = 1; multiple <= MULTIPLES; multiple += 1) {
    if (multiple * hertz > HIGHEST_HERTZ) break;
    const powers = scores.map((own, window) =>
      own.map((_, state) => {
        const rate = hertz * (1 + (state - reach) * STEP);
        const turn = (2 * Math.PI * multiple * rate) / valuesPerSecond;
        return powerAt(values, window * hop, shape, turn);
      }),
    );
    const sorted = Float64Array.from(powers.flatMap((each) => [...each])).sort();
    // The middle of squares of noise lies at ln 2 of their mean.
    const usual = (sorted[Math.floor(sorted.length / 2)] ?? 0) / Math.LN2 || 1;
    for (const [window, own] of scores.entries())
      for (let state = 0; state < own.length; state += 1)
        own[state] = (own[state] ?? 0) + (powers[window]?.[state] ?? 0) / usual;
  }
  const way = bestWay(scores);
  const rateAt = (at: number): number => {
    const place = Math.min(windows - 1, Math.max(0, (at - length / 2) / hop));
    const before = Math.floor(place);
    const after = Math.min(windows - 1, before + 1);
    const state = (way[before] ?? 0) + ((way[after] ?? 0) - (way[before] ?? 0)) * (place - before);
    return hertz * (1 + (state - reach) * STEP);
  };
  const turns = new Float64Array(values.length);
  for (let at = 1; at < values.length; at += 1)
    turns[at] = (turns[at - 1] ?? 0) + rateAt(at - 0.5) / valuesPerSecond;
  return { turns };
}
