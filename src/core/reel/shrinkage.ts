import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';
import { GAUGES } from './gauges.ts';
import type { GaugeId } from './gauges/gauge.ts';

/**
 * Shrinkage in percent against a new length; negative when the film is stretched or swollen.
 *
 * Model: S = (new − measured)/new × 100, exact.
 *
 * @param newMillimetres       length of the same number of pitches of new film, mm; > 0, at most 1e6
 * @param measuredMillimetres  measured length, mm; > 0, at most 1e6
 * @returns shrinkage, %; positive shrunk, negative stretched
 * @throws {OutOfRangeError} for a length outside its range
 * @source tib-condition-schema (sign)
 * @example shrinkagePercent(762, 755.9) // ≈ 0.80
 */
export function shrinkagePercent(newMillimetres: number, measuredMillimetres: number): number {
  requireInterval('newMillimetres', newMillimetres, { above: 0, maximum: 1e6, unit: 'mm' });
  requireInterval('measuredMillimetres', measuredMillimetres, {
    above: 0,
    maximum: 1e6,
    unit: 'mm',
  });
  return (1 - measuredMillimetres / newMillimetres) * 100;
}

/**
 * Length to which film has come down at a given shrinkage: a mark to hold a film against.
 *
 * Model: new × (1 − S/100), exact.
 *
 * @param newMillimetres  length of the same number of pitches of new film, mm; > 0, at most 1e6
 * @param percent         shrinkage, %; −100 to 100, negative for a stretched film
 * @returns length, mm; ≥ 0
 * @throws {OutOfRangeError} for a value outside its range
 * @source arithmetic
 * @example shrunkLengthMillimetres(762, 0.8) // ≈ 755.904
 */
export function shrunkLengthMillimetres(newMillimetres: number, percent: number): number {
  requireInterval('newMillimetres', newMillimetres, { above: 0, maximum: 1e6, unit: 'mm' });
  requireInterval('shrinkagePercent', percent, { minimum: -100, maximum: 100, unit: '%' });
  return newMillimetres * (1 - percent / 100);
}

/**
 * Shrinkage from laying the film beside new leader and counting: so many pitches of the film end
 * level with so many pitches of the leader.
 *
 * Model: S = (1 − leader pitches/film pitches) × 100, exact. The trap: 100 film pitches on 99 of the
 * leader are 1.000 %, but 101 film pitches on 100 of the leader are 0.990 %.
 *
 * @param filmPitches    pitches counted on the old film; whole, 1–10000
 * @param leaderPitches  pitches counted on the new leader; whole, 1–10000
 * @returns shrinkage, %; negative when the film is the longer one
 * @throws {OutOfRangeError} for a count outside its range
 * @source transfer-guide
 * @example shrinkageByCounting(100, 99) // ≈ 1.000
 */
export function shrinkageByCounting(filmPitches: number, leaderPitches: number): number {
  const pitches = { minimum: 1, maximum: 10_000, whole: true };
  requireInterval('filmPitches', filmPitches, pitches);
  requireInterval('leaderPitches', leaderPitches, pitches);
  return (1 - leaderPitches / filmPitches) * 100;
}

/** Tolerances of Super 8 as shares of its pitch and 100-pitch length; taken for gauges without a print. */
const SINGLE_SHARE = 0.01 / 4.234;
const HUNDRED_SHARE = 0.43 / 423.42;

/**
 * Furthest that a number of pitches of new film may be off by manufacture, mm.
 *
 * Model: the standard allows ± s on one pitch and ± h on any 100. A stretch of N ≤ 100 pitches can
 * be off by N·s, but no more than h + (100 − N)·s, because the rest of the hundred must make up for
 * it; whole hundreds add h each. For gauges whose tolerances were not read, the shares of Super 8.
 *
 * @param gauge       id of a gauge
 * @param pitchCount  pitches measured; whole, 1–1000
 * @returns tolerance, ± mm; > 0
 * @throws {OutOfRangeError} for a count outside its range
 * @source smpte-149-2004 Table 1
 * @source asa-z22-5-1947
 * @example pitchToleranceMillimetres('super-8', 100) // 0.43
 */
export function pitchToleranceMillimetres(gauge: GaugeId, pitchCount: number): number {
  requireInterval('pitchCount', pitchCount, { minimum: 1, maximum: 1000, whole: true });
  const { long } = GAUGES[gauge].pitch;
  const single = long.toleranceMillimetres ?? SINGLE_SHARE * long.millimetres;
  const hundred =
    long.hundredPitches.toleranceMillimetres ?? HUNDRED_SHARE * long.hundredPitches.millimetres;
  const rest = pitchCount % 100;
  const whole = (pitchCount - rest) / 100;
  return (
    whole * hundred + Math.min(rest * single, rest === 0 ? 0 : hundred + (100 - rest) * single)
  );
}

/** Shrinkage against one pitch, with the worst case of tolerance and reading error. */
export interface ShrinkageAgainst {
  readonly newMillimetres: number;
  readonly percent: number;
  readonly leastPercent: number;
  readonly mostPercent: number;
}

/** What a measured length says about shrinkage. */
export interface ShrinkageReading {
  readonly againstLong: ShrinkageAgainst;
  /** Absent where no short pitch is known. */
  readonly againstShort?: ShrinkageAgainst;
  /** Least and most over both pitches. */
  readonly leastPercent: number;
  readonly mostPercent: number;
  /** Manufacturing tolerance on this length, ± mm. */
  readonly toleranceMillimetres: number;
  /** Difference between the two pitches, %, which reads as shrinkage on new short-pitch film. */
  readonly pitchDifferencePercent: number;
}

function against(
  newMillimetres: number,
  measuredMillimetres: number,
  readingErrorMillimetres: number,
  toleranceMillimetres: number,
): ShrinkageAgainst {
  return {
    newMillimetres,
    percent: shrinkagePercent(newMillimetres, measuredMillimetres),
    leastPercent: shrinkagePercent(
      newMillimetres - toleranceMillimetres,
      measuredMillimetres + readingErrorMillimetres,
    ),
    mostPercent: shrinkagePercent(
      newMillimetres + toleranceMillimetres,
      measuredMillimetres - readingErrorMillimetres,
    ),
  };
}

/** Length of N pitches of new film, from the printed length of 100. */
function newLength(hundredMillimetres: number, pitchCount: number): number {
  return (hundredMillimetres * pitchCount) / 100;
}

/**
 * Shrinkage of a film from the length over N pitches, against both pitches of the standard, with
 * what stays unsure: which pitch it was made with, the tolerance of manufacture, and the ruler.
 *
 * Model: nominal length = N/100 of the printed length of 100 pitches. Bounds are a worst case: new
 * length off by its tolerance one way and the reading off by its error the other way.
 *
 * @param gauge                    id of a gauge
 * @param pitchCount               pitches measured (one less than the holes counted); whole, 1–1000
 * @param measuredMillimetres      measured length, mm; 0.4 to 2.5 times new
 * @param readingErrorMillimetres  how far the reading may be off, mm; 0–5
 * @returns shrinkage against both pitches, %, and the range
 * @throws {OutOfRangeError} for a value outside its range; see also {@link isLikelyMiscount}
 * @source smpte-149-2004, smpte-239-2004, asa-z22-5-1947
 */
export function readShrinkage(
  gauge: GaugeId,
  pitchCount: number,
  measuredMillimetres: number,
  readingErrorMillimetres: number,
): ShrinkageReading {
  const toleranceMillimetres = pitchToleranceMillimetres(gauge, pitchCount);
  const { long, short } = GAUGES[gauge].pitch;
  const longNew = newLength(long.hundredPitches.millimetres, pitchCount);
  requireInterval('readingErrorMillimetres', readingErrorMillimetres, {
    minimum: 0,
    maximum: 5,
    unit: 'mm',
  });
  if (!(measuredMillimetres >= 0.4 * longNew && measuredMillimetres <= 2.5 * longNew)) {
    throw new OutOfRangeError(
      'measuredMillimetres',
      measuredMillimetres,
      `${(0.4 * longNew).toFixed(1)} to ${(2.5 * longNew).toFixed(1)} mm for ${pitchCount} pitches; check the count of pitches and the gauge`,
    );
  }
  if (readingErrorMillimetres > measuredMillimetres / 10) {
    throw new OutOfRangeError(
      'readingErrorMillimetres',
      readingErrorMillimetres,
      'a reading error of at most a tenth of the length; measure over more pitches',
    );
  }
  const bounds = [measuredMillimetres, readingErrorMillimetres, toleranceMillimetres] as const;
  const againstLong = against(longNew, ...bounds);
  if (short === undefined) {
    return {
      againstLong,
      leastPercent: againstLong.leastPercent,
      mostPercent: againstLong.mostPercent,
      toleranceMillimetres,
      pitchDifferencePercent: 0,
    };
  }
  const shortNew = newLength(short.hundredPitches.millimetres, pitchCount);
  const againstShort = against(shortNew, ...bounds);
  return {
    againstLong,
    againstShort,
    leastPercent: againstShort.leastPercent,
    mostPercent: againstLong.mostPercent,
    toleranceMillimetres,
    pitchDifferencePercent: shrinkagePercent(longNew, shortNew),
  };
}
