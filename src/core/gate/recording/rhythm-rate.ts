/** A rhythm that comes again and again in a row of values. */
export interface RhythmRate {
  readonly hertz: number;
  /** How much the row is like itself some periods later, 0 to 1. */
  readonly likeness: number;
}

/** Periods later at which the row is compared with itself. */
const PERIODS = 5;
/** Steps of the rate that are tried, share. */
const RATE_STEP = 0.002;

/** How much a row is like itself so many values later (autocorrelation), 1 for no delay. */
function likenessAt(values: Float64Array, most: number): Float64Array {
  const likeness = new Float64Array(most + 2);
  for (let lag = 0; lag < likeness.length; lag += 1) {
    let sum = 0;
    for (let at = lag; at < values.length; at += 1)
      sum += (values[at] ?? 0) * (values[at - lag] ?? 0);
    likeness[lag] = sum;
  }
  const whole = likeness[0] ?? 0;
  return whole === 0 ? likeness : likeness.map((sum) => sum / whole);
}

/**
 * The rate at which a row of values comes again, by autocorrelation: the rate whose first five periods
 * all find the row most like itself.
 *
 * @param values           the row; mean about 0
 * @param valuesPerSecond  values/s
 * @param least            slowest rate looked for, Hz
 * @param most             fastest rate looked for, Hz
 * @returns the rate and the mean likeness one to five periods later
 * @source arithmetic
 */
export function rhythmRate(
  values: Float64Array,
  valuesPerSecond: number,
  least: number,
  most: number,
): RhythmRate {
  const likeness = likenessAt(values, Math.ceil((PERIODS * valuesPerSecond) / least));
  const at = (lag: number): number => {
    const whole = Math.floor(lag);
    const rest = lag - whole;
    return (likeness[whole] ?? 0) * (1 - rest) + (likeness[whole + 1] ?? 0) * rest;
  };
  let best: RhythmRate = { hertz: least, likeness: -Infinity };
  const steps = Math.max(1, Math.ceil(Math.log(most / least) / RATE_STEP));
  for (let step = 0; step <= steps; step += 1) {
    const hertz = least * (most / least) ** (step / steps);
    let sum = 0;
    for (let period = 1; period <= PERIODS; period += 1)
      sum += at((period * valuesPerSecond) / hertz);
    if (sum / PERIODS > best.likeness) best = { hertz, likeness: sum / PERIODS };
  }
  return best;
}
