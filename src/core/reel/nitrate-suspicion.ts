import { requireInterval } from '../../quantity/errors.ts';
import type { ReelFindings, TriageGauge } from './reel-findings.ts';

/** Why a film may be nitrate. */
export interface NitrateReason {
  readonly reason: string;
  readonly sources: readonly string[];
}

/**
 * Last year in which 35 mm and unknown gauges may still be nitrate, with European stock in mind. The
 * largest maker stopped in 1951; an archivists' guide knows rare European cases up to the early
 * 1960s, and this book takes the careful end.
 */
export const LAST_NITRATE_YEAR = 1963;

/** Before this year no film was on polyester; from memory. */
export const FIRST_POLYESTER_YEAR = 1955;

/**
 * Whether a gauge was made only after nitrate had ended, so that nitrate explains nothing on it.
 *
 * Model: Super 8 (from 1965) and Super 16 (later still).
 *
 * @param gauge  gauge as found
 * @returns true for the two
 * @source mace-identify-films (1965), from-memory (Super 16)
 * @example isYoungerThanNitrate('super-8') // true
 */
export function isYoungerThanNitrate(gauge: TriageGauge): boolean {
  return gauge === 'super-8' || gauge === 'super-16';
}

/** Years that a cine film can have. */
const FIRST_YEAR = 1889;
const LAST_YEAR = 2100;

/**
 * Reasons to suspect that a film is nitrate; empty when there is none. One reason is enough: the film
 * stays closed, cool and apart, and a specialist is called.
 *
 * Model: any of: the worker suspects it; brown powder or an acrid or sweet smell on a gauge as old as
 * nitrate; a base not proved to be polyester on 35 mm or an unknown gauge up to 1963 or of unknown
 * year. Acetate stated for such a film does not clear it: no safe test tells acetate from nitrate, and
 * edge words print through. Polyester of a year before there was any clears nothing either. Small
 * gauges of the amateur were sold on safety base and are not suspected by age alone.
 *
 * @param findings  base, gauge, year, smell and deposit of a reel
 * @returns reasons, possibly none
 * @throws {OutOfRangeError} for a year outside 1889–2100
 * @source h-182-nitrate-2003
 * @source amia-nitrate-2008
 * @source heritage-science-2020
 * @source hse-indg469
 */
export function nitrateReasons(
  findings: Pick<ReelFindings, 'base' | 'gauge' | 'year' | 'smell' | 'deposit'>,
): readonly NitrateReason[] {
  const { base, gauge, year, smell, deposit } = findings;
  if (year !== undefined) {
    requireInterval('year', year, { minimum: FIRST_YEAR, maximum: LAST_YEAR });
  }
  const reasons: NitrateReason[] = [];
  if (base === 'nitrate-suspected') {
    reasons.push({ reason: 'Nitrate is suspected', sources: ['hse-indg469'] });
  }
  const isOldGauge = gauge === '35mm' || gauge === 'other';
  const isPolyester = base === 'polyester' && (year === undefined || year >= FIRST_POLYESTER_YEAR);
  if (isOldGauge && !isPolyester && (year === undefined || year <= LAST_NITRATE_YEAR)) {
    const when = year === undefined ? 'of unknown year' : `of ${year}`;
    const what = gauge === '35mm' ? '35 mm film' : 'a film of unknown gauge';
    const stated =
      base === 'acetate'
        ? '; that it is acetate cannot be proved without harm, and edge words print through'
        : '';
    reasons.push({
      reason: `It is ${what} ${when}, not proved to be polyester${stated}`,
      sources: ['h-182-nitrate-2003', 'amia-nitrate-2008', 'heritage-science-2020'],
    });
  }
  const canBeNitrate = !isYoungerThanNitrate(gauge);
  if (deposit === 'brown-powder' && canBeNitrate) {
    reasons.push({
      reason: 'Brown powder is the last stage of decaying nitrate',
      sources: ['h-182-nitrate-2003', 'from-memory'],
    });
  }
  if (smell === 'acrid-or-sweet' && canBeNitrate) {
    reasons.push({
      reason: 'A sharp or sweet smell that is not vinegar is a sign of decaying nitrate',
      sources: ['h-182-nitrate-2003', 'from-memory'],
    });
  }
  return reasons;
}

/**
 * Weight of a length of 35 mm nitrate film, lb. A finder who calls for help is asked how much it is.
 *
 * Model: 5 lb to 1,000 ft, from a cabinet limit of 750 lb that is given as 150 rolls of 1,000 ft.
 * Approximate: film alone, without cans and reels.
 *
 * @param feet  length, ft; 0 to 1e6
 * @returns weight, lb
 * @throws {OutOfRangeError} for a length outside the range
 * @source h-182-nitrate-2003
 * @example nitratePounds(1000) // 5
 */
export function nitratePounds(feet: number): number {
  requireInterval('feet', feet, { minimum: 0, maximum: 1e6, unit: 'ft' });
  return (feet * 750) / (150 * 1000);
}
