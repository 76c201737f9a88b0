import { OutOfRangeError } from '../../quantity/errors.ts';
import type { SourceStatus } from './gauges/gauge.ts';

/** One level of acid-detector strips, in our own words. */
export interface AcidLevel {
  readonly level: number;
  readonly condition: string;
  readonly action: string;
  readonly status: SourceStatus;
  readonly note?: string;
}

/**
 * The published levels, nothing between them. Level 1.5 is the point where decay starts to feed
 * itself: a free acidity of 0.5.
 *
 * @source ipi-acid-user-guide-2001, ipi-filmcare
 */
export const ACID_LEVELS: readonly AcidLevel[] = [
  {
    level: 0,
    condition: 'Good, no decay found',
    action: 'Keep it cool or cold, and test again in a few years',
    status: 'seen',
  },
  {
    level: 1,
    condition: 'Fair to good, decay is starting',
    action: 'Keep it cold and test again',
    status: 'seen',
  },
  {
    level: 1.5,
    condition: 'Fast decay begins, and from here it feeds itself',
    action: 'Copy it soon, ask a specialist, keep it cold or freeze it, packed as below',
    status: 'seen',
    note: 'Free acidity 0.5; the advice to copy soon is common practice',
  },
  {
    level: 2,
    condition: 'Poor, decaying now',
    action: 'Ask a specialist to copy it; freeze it, packed as below',
    status: 'seen',
  },
  {
    level: 3,
    condition: 'Critical, shrunk, close to warping and unsafe to handle',
    action: 'Leave it closed, ask a specialist to copy it; freeze it at once, packed as below',
    status: 'memory',
    note: 'Only the words critical and shrinkage were read; the rest is from memory',
  },
];

/** Free acidity at level 1.5, mL of 0.1 N alkali per gram of film. */
export const AUTOCATALYTIC_ACIDITY = 0.5;

/** Smell of acetic acid is noticed from about here to here, ppm. */
export const ACETIC_ODOUR_THRESHOLD_PPM = { least: 0.21, most: 1 } as const;

/**
 * The published entry for a level of the acid strips.
 *
 * Model: a table; only its own levels have an answer, nothing is interpolated.
 *
 * @param acidLevel  level on the strip's colour chart; 0, 1, 1.5, 2 or 3
 * @returns condition, action and how the entry was read
 * @throws {OutOfRangeError} for any other number
 * @source ipi-acid-user-guide-2001
 */
export function acidLevelEntry(acidLevel: number): AcidLevel {
  const entry = ACID_LEVELS.find(({ level }) => level === acidLevel);
  if (entry === undefined) {
    throw new OutOfRangeError(
      'acidLevel',
      acidLevel,
      'one of the published levels 0, 1, 1.5, 2 and 3; for a colour in between take the higher one',
    );
  }
  return entry;
}

/**
 * Published level that a shade between two levels counts as: the higher one, to be on the safe side.
 *
 * Model: the smallest published level that is not below the shade; common practice.
 *
 * @param shade  estimate on the scale of the strips; 0–3
 * @returns level; 0, 1, 1.5, 2 or 3
 * @throws {OutOfRangeError} for a shade outside 0–3
 * @source common practice, no source
 * @example cautiousAcidLevel(1.2) // 1.5
 */
export function cautiousAcidLevel(shade: number): number {
  const entry = shade >= 0 ? ACID_LEVELS.find(({ level }) => level >= shade) : undefined;
  if (entry === undefined) throw new OutOfRangeError('acidLevel', shade, 'a level from 0 to 3');
  return entry.level;
}
