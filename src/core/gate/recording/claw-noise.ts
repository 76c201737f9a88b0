import { requireInterval } from '../../../quantity/errors.ts';
import { isHeardIn, rhythmLine, rhythmShifts, standsOut, type RhythmLine } from './rhythm-lines.ts';
import { rhythmPath } from './rhythm-path.ts';
import { rhythmRate } from './rhythm-rate.ts';
import { soundBursts } from './sound-bursts.ts';

/** Film rate as the noise of the projector tells it. */
export interface ClawNoiseReading {
  readonly kind: 'read';
  /** Mean film rate over the sound, frames/s. */
  readonly filmFps: number;
  /** How far it may be from the truth, frames/s, two spreads; true to the clock of the sound. */
  readonly errorFps: number;
  /**
   * A noise comes once a film frame at `filmFps`, or unlike noises do. Otherwise like noises come several times: wind
   * of the blades, a claw of several teeth, or the motor, which knows nothing of film frames.
   */
  readonly isClawHeard: boolean;
  /** Other film rates that the same rhythm fits, with more or fewer noises a film frame, frames/s. */
  readonly alternatives: readonly number[];
}

/** Why a sound gives no reading. */
export type ClawNoiseReason = 'silent' | 'no-rhythm' | 'too-short' | 'clipped';

/** A sound that gives no reading, and why. */
export interface NoClawNoise {
  readonly kind: 'none';
  readonly reason: ClawNoiseReason;
}

/** Film rates between which the answer is looked for, frames/s. */
export interface FilmFpsRange {
  readonly least: number;
  readonly most: number;
}

/** Film rates that amateur projectors are run at. */
const USUAL_RANGE: FilmFpsRange = { least: 12, most: 30 };
const SHORTEST_SECONDS = 4;
/** Below this nothing was recorded but the last digit. */
const SILENT_LEVEL = 1e-4;
/** Share of the samples at the limit from which a sound is called clipped. */
const CLIPPED_SHARE = 0.005;
/** The row must be as much like itself as this, and as this many spreads of chance. */
const LEAST_LIKENESS = 0.012;
const CHANCE_SPREADS = 5;
/** Pieces by which the rhythm is followed once it is found, s. */
const PIECE_SECONDS = 1;
/** Multiples of the rhythm that are listened to, up to a highest frequency, Hz. */
const MULTIPLES = 6;
const HIGHEST_HERTZ = 120;
/** Witnesses agree where they lie this near to each other, turns of the rhythm's finest line. */
const AGREEMENT = 0.15;
const LEAST_AGREEING = 0.75;
/** So many pieces in a row without agreement may hide a turn. */
const DOUBTFUL_PIECES = 2;
/** What the steps of the row leave unknown of a moment, turns. */
const FINEST_TURNS = 0.004;
/** Noises of a film frame that look alike: claws of two and three teeth, blades of the shutter. */
const MOST_NOISES = 4;
const NOMINAL_RATES = [16, 50 / 3, 18, 24, 25];

function divisor(a: number, b: number): number {
  return b === 0 ? a : divisor(b, a % b);
}

const middleOf = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

const none = (reason: ClawNoiseReason): NoClawNoise => ({ kind: 'none', reason });

/** Highest level, and share of the samples that stand at it. */
function levelOf(samples: Float32Array): { readonly peak: number; readonly share: number } {
  let peak = 0;
  for (const sample of samples) peak = Math.max(peak, Math.abs(sample));
  let count = 0;
  for (const sample of samples) if (Math.abs(sample) >= 0.998 * peak) count += 1;
  return { peak, share: count / Math.max(1, samples.length) };
}

/** The rhythm, followed by two witnesses. */
interface FollowedRhythm {
  readonly hertz: number;
  readonly errorHertz: number;
  /** Multiples at which something is heard. */
  readonly multiples: readonly number[];
}

function followed(
  bursts: ReturnType<typeof soundBursts>,
  coarseHertz: number,
): FollowedRhythm | undefined {
  const { all, valuesPerSecond, witnesses } = bursts;
  const { turns } = rhythmPath(all, valuesPerSecond, coarseHertz);
  const seconds = all.length / valuesPerSecond;
  const pieces = Math.floor(seconds / PIECE_SECONDS);
  const most = Math.min(MULTIPLES, Math.floor(HIGHEST_HERTZ / coarseHertz));
  const linesOf = (values: Float64Array): readonly RhythmLine[] =>
    Array.from({ length: most }, (_, at) => rhythmLine(values, turns, pieces, at + 1));
  const multiples = linesOf(all)
    .filter(standsOut)
    .map(({ multiple }) => multiple);
  if (multiples.length === 0) return undefined;
  const step = multiples.reduce(divisor, 0);
  const heard = witnesses.map((values) =>
    multiples.map((multiple) => rhythmLine(values, turns, pieces, multiple)),
  );
  const shifts = heard.map((lines) =>
    lines.some(standsOut) ? rhythmShifts(lines, 1 / step) : undefined,
  );
  const [even, odd] = shifts;
  if (even === undefined || odd === undefined) return undefined;
  // Noises pass the bands with delays of their own.
  const apart = Array.from(even, (shift, piece) => shift - (odd[piece] ?? 0));
  const usual = middleOf(apart);
  const rests = apart.map((each) => each - usual);
  const tells = rests.map(
    (rest, piece) =>
      Math.abs(rest) < AGREEMENT / step && heard.every((lines) => isHeardIn(lines, piece)),
  );
  if (tells.filter(Boolean).length < LEAST_AGREEING * pieces) return undefined;

  const gone = Float64Array.from(even, (shift, piece) => {
    const middle = ((piece + 0.5) * all.length) / pieces - 0.5;
    return turnsAt(turns, middle) + (shift + (odd[piece] ?? 0)) / 2;
  });
  const spread = Math.max(
    FINEST_TURNS,
    rootMeanSquare(rests) / 2,
    rootMeanSquare(thirdDifferences(gone)) / Math.sqrt(20),
  );
  // Between pieces that tell nothing a turn may be missed or counted twice.
  const slips = placesInDoubt(tells) / step;
  return {
    hertz: (beyond([...gone].reverse()) - beyond(gone)) / seconds,
    errorHertz: (2 * Math.hypot(Math.SQRT2 * END_SPREADS * spread, slips)) / seconds,
    multiples,
  };
}

/** Turns gone by between two values of the row. */
function turnsAt(turns: Float64Array, at: number): number {
  const before = Math.max(0, Math.min(turns.length - 2, Math.floor(at)));
  const [from, to] = [turns[before] ?? 0, turns[before + 1] ?? 0];
  return from + (to - from) * (at - before);
}

/** Value half a step before the first, by the parabola through the first three. */
function beyond(values: ArrayLike<number>): number {
  return (15 * (values[0] ?? 0) - 10 * (values[1] ?? 0) + 3 * (values[2] ?? 0)) / 8;
}

/** Spread of {@link beyond} in spreads of one value: √(15² + 10² + 3²) ÷ 8. */
const END_SPREADS = Math.sqrt(334) / 8;

function rootMeanSquare(values: readonly number[]): number {
  const sum = values.reduce((all, value) => all + value * value, 0);
  return values.length === 0 ? 0 : Math.sqrt(sum / values.length);
}

function thirdDifferences(values: Float64Array): readonly number[] {
  const at = (index: number): number => values[index] ?? 0;
  return Array.from(
    { length: Math.max(0, values.length - 3) },
    (_, index) => at(index + 3) - 3 * at(index + 2) + 3 * at(index + 1) - at(index),
  );
}

/** Runs of pieces that tell so little that a turn may be missed in them. */
function placesInDoubt(tells: readonly boolean[]): number {
  let row = 0;
  let places = 0;
  for (const tell of tells) {
    row = tell ? 0 : row + 1;
    if (row === DOUBTFUL_PIECES) places += 1;
  }
  return places;
}

/** Film rates that a rhythm fits, the most likely first, as shares of its rate. */
function fittingShares(baseHertz: number, range: FilmFpsRange): readonly number[] {
  const isUsual = (fps: number): boolean =>
    NOMINAL_RATES.some((nominal) => Math.abs(fps / nominal - 1) < 0.03);
  return Array.from({ length: MOST_NOISES }, (_, at) => at + 1)
    .filter((noises) => {
      const fps = baseHertz / noises;
      return fps >= range.least * 0.995 && fps <= range.most * 1.005;
    })
    .sort((a, b) => Number(isUsual(baseHertz / b)) - Number(isUsual(baseHertz / a)) || a - b)
    .map((noises) => 1 / noises);
}

/**
 * Film rate from the noise that the projector makes film frame by film frame: a second reading beside
 * that of the pictures.
 *
 * Model: how the loudness of bands of pitch comes and goes ({@link soundBursts}); the rate at which it
 * is most like itself one to five periods later (autocorrelation); the rhythm followed through the sound
 * by its lines, by the even and by the odd bands as two witnesses, which must agree. A rhythm of several
 * equal noises a film frame cannot be told from a faster film: all film rates that fit are named.
 *
 * @param samples          sound of one channel, −1 to 1
 * @param sampleRate       samples/s; 8000–384,000
 * @param expectedFilmFps  film rates between which the answer lies, frames/s; 12 to 30 where not given
 * @returns the film rate and its error; or why the sound does not tell it
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example readClawNoise(new Float32Array(480_000), 48_000) // { kind: 'none', reason: 'silent' }
 */
export function readClawNoise(
  samples: Float32Array,
  sampleRate: number,
  expectedFilmFps: FilmFpsRange = USUAL_RANGE,
): ClawNoiseReading | NoClawNoise {
  requireInterval('sampleRate', sampleRate, { minimum: 8000, maximum: 384_000, unit: 'samples/s' });
  const { least, most } = expectedFilmFps;
  requireInterval('least', least, { minimum: 2, maximum: 60, unit: 'frames/s' });
  requireInterval('most', most, { minimum: least, maximum: 60, unit: 'frames/s' });
  if (samples.length < SHORTEST_SECONDS * sampleRate) return none('too-short');
  const { peak, share } = levelOf(samples);
  if (peak < SILENT_LEVEL) return none('silent');
  const unheard = none(share > CLIPPED_SHARE ? 'clipped' : 'no-rhythm');

  const bursts = soundBursts(samples, sampleRate);
  const { hertz, likeness } = rhythmRate(bursts.all, bursts.valuesPerSecond, least, most);
  const chance = CHANCE_SPREADS / Math.sqrt(bursts.all.length);
  if (likeness < Math.max(LEAST_LIKENESS, chance)) return unheard;
  const rhythm = followed(bursts, hertz);
  if (rhythm === undefined) return unheard;
  const step = rhythm.multiples.reduce(divisor, 0);
  const [likely = 1 / step, ...others] = fittingShares(rhythm.hertz * step, expectedFilmFps);
  const rateOf = (each: number): number => rhythm.hertz * step * each;
  return {
    kind: 'read',
    filmFps: rateOf(likely),
    errorFps: rhythm.errorHertz * step * likely,
    // The rhythm of several noises a film frame says nothing of the claw, which makes one.
    isClawHeard: step === 1 && likely === 1,
    alternatives: others.map(rateOf),
  };
}
