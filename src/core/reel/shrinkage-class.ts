import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';

/** How far a reading may lie on the wrong side of nought, or new film explain one, %. */
export const LEAST_MEANINGFUL_SHRINKAGE_PERCENT = 0.3;
/** From here on no sprocket or claw machine, %; common practice, and an archive guide from memory. */
export const CLAW_LIMIT_SHRINKAGE_PERCENT = 0.8;
/** End of the highest class of the cataloguing manual, %. */
export const HIGHEST_ARCHIVE_CLASS_PERCENT = 2.5;
/** Beyond this a reading is doubtful: one pitch missed in fewer than 20 does that; practice. */
export const DOUBTFUL_SHRINKAGE_PERCENT = 5;
/** What badly decayed acetate is said to reach, %; nothing reads more. */
export const MOST_POSSIBLE_SHRINKAGE_PERCENT = 10;

/** Whether a reading can be believed. */
export type ReadingTrust = 'plausible' | 'doubtful' | 'misreading';

/**
 * Whether a shrinkage can be believed, by its upper bound. One pitch too many hides a shrinkage of
 * the same size, so a film that reads longer than new is measured again, not run.
 *
 * Model: a misreading below −0.3 % (no film grows; 0.3 % is what pitch and tolerance explain) and from
 * 10 % on (a film of Standard 8 measured as Super 8 reads just that); doubtful above 5 %.
 *
 * @param mostPercent  upper bound of the shrinkage, %
 * @returns plausible, doubtful or misreading
 * @source vinegar-syndrome-encyclopaedia (10 %), common practice, no source (the rest)
 * @example trustInReading(10) // 'misreading'
 * @example trustInReading(-1.2) // 'misreading'
 * @example trustInReading(0.8) // 'plausible'
 */
export function trustInReading(mostPercent: number): ReadingTrust {
  if (
    mostPercent < -LEAST_MEANINGFUL_SHRINKAGE_PERCENT ||
    mostPercent >= MOST_POSSIBLE_SHRINKAGE_PERCENT
  ) {
    return 'misreading';
  }
  return mostPercent > DOUBTFUL_SHRINKAGE_PERCENT ? 'doubtful' : 'plausible';
}

/** A class of shrinkage and what it means for a claw projector. */
export interface ShrinkageClass {
  readonly id: 'within-error' | 'slight' | 'at-limit' | 'one' | 'one-and-a-half' | 'two' | 'beyond';
  readonly meaning: string;
  readonly sources: readonly string[];
}

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
    below: HIGHEST_ARCHIVE_CLASS_PERCENT,
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
