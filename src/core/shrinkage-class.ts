import { OutOfRangeError, requireInterval } from './errors.ts';

/** No film was found to stretch more, or to shrink more and still be measured, %; common practice. */
const MOST_STRETCH_PERCENT = 1.5;
const MOST_SHRINKAGE_PERCENT = 5;

/**
 * Whether a shrinkage is so far from what film does that the count or the gauge must be wrong.
 *
 * Model: more than 5 % shrunk or 1.5 % stretched. One pitch missed in fewer than 20 does that.
 *
 * @param percent  shrinkage, %
 * @returns true when the measurement should be repeated
 * @source common practice, no source
 * @example isLikelyMiscount(10) // true
 */
export function isLikelyMiscount(percent: number): boolean {
  return percent > MOST_SHRINKAGE_PERCENT || percent < -MOST_STRETCH_PERCENT;
}

/** A class of shrinkage and what it means for a claw projector. */
export interface ShrinkageClass {
  readonly id: 'within-error' | 'slight' | 'at-limit' | 'one' | 'one-and-a-half' | 'two' | 'beyond';
  readonly meaning: string;
  readonly sources: readonly string[];
}

/** Readings below this mean little, %: pitch difference plus tolerance. */
export const LEAST_MEANINGFUL_SHRINKAGE_PERCENT = 0.3;
/** From here on no sprocket or claw machine, %; common practice, and an archive guide from memory. */
export const CLAW_LIMIT_SHRINKAGE_PERCENT = 0.8;

const ARCHIVE = ['fiaf-cataloguing-manual', 'common-practice'] as const;

/** Classes in rising order, each up to but not including its limit, %. */
const CLASSES: readonly (ShrinkageClass & { readonly below: number })[] = [
  {
    below: LEAST_MEANINGFUL_SHRINKAGE_PERCENT,
    id: 'within-error',
    meaning: 'No more than the two pitches and the tolerance of new film can explain',
    sources: ['smpte-149-2004', 'arithmetic'],
  },
  {
    below: CLAW_LIMIT_SHRINKAGE_PERCENT,
    id: 'slight',
    meaning: 'Slightly shrunk; run it slowly, watch the loops, stop at any chatter',
    sources: ['common-practice'],
  },
  {
    below: 1,
    id: 'at-limit',
    meaning: 'At the limit of claws and sprockets; do not run it on them',
    sources: [
      'common-practice',
      'nfpf-film-preservation-guide',
      'international-projectionist-1963',
    ],
  },
  {
    below: 1.5,
    id: 'one',
    meaning: 'Archive class 1–1.5 %; only for a machine without claw and sprockets',
    sources: ARCHIVE,
  },
  {
    below: 2,
    id: 'one-and-a-half',
    meaning: 'Archive class 1.5–2 %; only for a machine without claw and sprockets',
    sources: ARCHIVE,
  },
  {
    below: 2.5,
    id: 'two',
    meaning: 'Archive class 2–2.5 %; only for a machine without claw and sprockets',
    sources: ARCHIVE,
  },
  {
    below: Number.POSITIVE_INFINITY,
    id: 'beyond',
    meaning: 'Beyond the highest archive class; ask a specialist before you wind it',
    sources: ARCHIVE,
  },
];

/**
 * Class of a shrinkage and what it means at the bench.
 *
 * Model: below 0.3 % within the error of the method; from 0.8 % no claw or sprocket machine (common
 * practice; 35 mm theatre sprockets are published at 0.75 % and 0.96 %); from 1 % the cataloguing
 * classes of the film archives, in steps of half a percent.
 *
 * @param percent  shrinkage, %; −200 to 100
 * @returns class with meaning and sources
 * @throws {OutOfRangeError} for a value outside the range
 * @source fiaf-cataloguing-manual
 * @source international-projectionist-1963
 * @source common practice, no source
 */
export function shrinkageClass(percent: number): ShrinkageClass {
  requireInterval('shrinkagePercent', percent, { minimum: -200, maximum: 100, unit: '%' });
  const found = CLASSES.find(({ below }) => percent < below);
  if (found === undefined) throw new OutOfRangeError('shrinkagePercent', percent, 'a percentage');
  const { id, meaning, sources } = found;
  return { id, meaning, sources };
}
