import type { GaugeId } from './gauges/gauge.ts';
import { requireInterval } from '../../quantity/errors.ts';
import { FIRST_POLYESTER_YEAR, isYoungerThanNitrate, nitrateReasons } from './nitrate-suspicion.ts';
import { formatQuantity } from '../../quantity/format.ts';
import { pointsNotLookedAt, type LookedAt, type ReelFindings } from './reel-findings.ts';
import { withSmallInitial } from '../../quantity/sentence.ts';
import {
  CLAW_LIMIT_SHRINKAGE_PERCENT,
  LEAST_MEANINGFUL_SHRINKAGE_PERCENT,
  shrinkageClass,
  trustInReading,
} from './shrinkage-class.ts';
import {
  FINDING_RULES,
  TRIAGE_ORDER,
  type TriageRule,
  type TriageVerdict,
} from './triage-rules.ts';
import { TRIAGE_STEPS, type TriageStep, type TriageStepId } from './triage-steps.ts';

/** Why a verdict is at least what it is. */
export interface TriageReason {
  readonly verdict: TriageVerdict;
  readonly reason: string;
  readonly sources: readonly string[];
}

export interface Triage {
  readonly verdict: TriageVerdict;
  /** True when nitrate is suspected; then nothing else matters. */
  readonly isNitrateSuspected: boolean;
  /** All reasons, gravest first. */
  readonly reasons: readonly TriageReason[];
  /** What to do before anything else, in order; empty where the reel stays closed. */
  readonly steps: readonly TriageStep[];
  /** Points that nobody looked at, whether they matter here or not. */
  readonly notLookedAt: readonly LookedAt[];
}

const PRACTICE: readonly string[] = ['common-practice'];

/** First year of each small gauge; a film with an older date is in another gauge. */
const FIRST_YEARS: Partial<Readonly<Record<GaugeId, { year: number; source: string }>>> = {
  '9.5mm': { year: 1922, source: 'mace-identify-films' },
  '16mm': { year: 1923, source: 'encyclopaedia-16mm' },
  '8mm-type-r': { year: 1932, source: 'mace-identify-films' },
  'super-8': { year: 1965, source: 'mace-identify-films' },
};

function gaugeRules({ gauge, year }: ReelFindings): readonly (TriageRule | undefined)[] {
  const first = gauge === 'other' || gauge === 'not-noted' ? undefined : FIRST_YEARS[gauge];
  const isTooOld = first !== undefined && year !== undefined && year < first.year;
  return [
    FINDING_RULES.gauge[gauge],
    isTooOld
      ? {
          verdict: 'not-yet',
          reason: `The year ${year} is before this gauge existed; look at the gauge again`,
          sources: [first.source],
          step: 'gauge',
        }
      : undefined,
  ];
}

function shrinkageRule({ shrinkagePercent, base }: ReelFindings): TriageRule | undefined {
  if (shrinkagePercent === undefined) {
    if (base === 'polyester') return undefined;
    const reason = 'Shrinkage not measured';
    return { verdict: 'not-yet', reason, sources: PRACTICE, step: 'shrinkage' };
  }
  requireInterval('shrinkagePercent', shrinkagePercent, { minimum: -100, maximum: 100, unit: '%' });
  const shown = formatQuantity(shrinkagePercent, 'percent', 2);
  const trust = trustInReading(shrinkagePercent);
  if (trust === 'misreading') {
    const why = shrinkagePercent < 0 ? 'no film grows longer than new' : 'no film shrinks so far';
    return {
      verdict: 'not-yet',
      reason: `A shrinkage of ${shown} is a misreading, since ${why}; measure again`,
      sources: ['vinegar-syndrome-encyclopaedia', ...PRACTICE],
      step: 'shrinkage-again',
    };
  }
  // The limits are those of acetate; what polyester cannot do is a contradiction of its own.
  if (base === 'polyester' || shrinkagePercent < LEAST_MEANINGFUL_SHRINKAGE_PERCENT) {
    return undefined;
  }
  const { id, meaning, sources } = shrinkageClass(shrinkagePercent);
  const again = trust === 'doubtful' ? '; such a reading is rare, so measure again as well' : '';
  const reason = `Shrinkage of ${shown}; ${withSmallInitial(meaning)}${again}`;
  if (shrinkagePercent < CLAW_LIMIT_SHRINKAGE_PERCENT) {
    return { verdict: 'run-slowly', reason, sources };
  }
  const verdict = id === 'beyond' ? 'do-not-open' : 'not-here';
  return { verdict, reason, sources };
}

/** The strip is for acetate; only proved polyester does without it. */
function acidRules({ base, acidLevel, stripe }: ReelFindings): readonly (TriageRule | undefined)[] {
  if (acidLevel === 'not-tested') {
    return [base === 'polyester' ? undefined : FINDING_RULES.acidLevel['not-tested']];
  }
  const isStripedAndSour =
    (stripe === 'striped' || stripe === 'lifting') &&
    base !== 'polyester' &&
    acidLevel !== 'level-0';
  return [
    FINDING_RULES.acidLevel[acidLevel],
    isStripedAndSour
      ? {
          verdict: 'run-slowly',
          reason: 'Striped acetate that sours goes fast; copy it now',
          sources: PRACTICE,
        }
      : undefined,
  ];
}

/** Nitrate explains a sharp smell and brown powder where nitrate is possible at all. */
function strangeSmellRule({ smell, gauge }: ReelFindings): TriageRule | undefined {
  if (smell !== 'acrid-or-sweet' || !isYoungerThanNitrate(gauge)) return undefined;
  return {
    verdict: 'not-yet',
    reason:
      'A sharp or sweet smell that nitrate cannot explain in this gauge; find its cause first',
    sources: PRACTICE,
    step: 'strange-smell',
  };
}

/** What does not go with polyester: then the base was misjudged, or the finding is another reel's. */
function polyesterContradiction(findings: ReelFindings): TriageRule | undefined {
  const { base, year, shrinkagePercent, acidLevel, smell, brittleness } = findings;
  if (base !== 'polyester') return undefined;
  const signs: readonly (readonly [boolean, string])[] = [
    [smell === 'vinegar', 'it smells of vinegar'],
    [acidLevel !== 'not-tested' && acidLevel !== 'level-0', 'the strip shows acid'],
    [brittleness === 'cracks', 'it cracks'],
    [
      shrinkagePercent !== undefined && shrinkagePercent >= CLAW_LIMIT_SHRINKAGE_PERCENT,
      'it reads as strongly shrunk',
    ],
    [year !== undefined && year < FIRST_POLYESTER_YEAR, 'there was no polyester film in that year'],
  ];
  const said = signs.flatMap(([isSo, words]) => (isSo ? [words] : []));
  if (said.length === 0) return undefined;
  return {
    verdict: 'not-yet',
    reason: `Said to be polyester, yet ${said.join(', and ')}; look at the base again`,
    sources: [...PRACTICE, 'from-memory'],
    step: 'base-again',
  };
}

/** Mending is left to whoever will run the film. */
const MENDING: ReadonlySet<TriageStepId> = new Set(['mend-perforations', 'remake-splices']);

/** Steps of the rules, each once, in the order of the bench; the stripe is looked for on the way. */
function stepsOf(
  rules: readonly TriageRule[],
  { stripe }: ReelFindings,
  verdict: TriageVerdict,
): readonly TriageStep[] {
  const wanted = new Set<TriageStepId>(
    rules.flatMap(({ step }) => (step === undefined ? [] : [step])),
  );
  if (wanted.size > 0 && stripe === 'not-noted') wanted.add('stripe');
  return TRIAGE_STEPS.filter(
    ({ id }) => wanted.has(id) && (verdict !== 'not-here' || !MENDING.has(id)),
  );
}

/**
 * What may be done with a reel: run it, run it slowly with care, not yet (with the steps that come
 * first), not on this bench, or leave it closed and refer it to a specialist. Every reason and its
 * sources come with the verdict.
 *
 * Model: each finding has its own verdict, and the most cautious one holds. Suspected nitrate always
 * wins. A point that was not looked at gives "not yet", for every base; polyester is let off the
 * limits of shrinkage and the acid test, nothing else. Whether there is a stripe decides about
 * cleaning, not about the run. A verdict is never milder for one more bad finding or one point less
 * looked at.
 *
 * @param findings  what the worker found
 * @returns verdict, reasons (gravest first), steps in order, points not looked at
 * @throws {OutOfRangeError} for a year or a shrinkage that cannot be typed in earnest
 * @source hse-indg469, h-182-nitrate-2003, ipi-acid-user-guide-2001, national-archives-mould
 * @source common practice, no source (all limits of a claw projector)
 */
export function triageReel(findings: ReelFindings): Triage {
  const nitrate = nitrateReasons(findings);
  const rules = [
    ...gaugeRules(findings),
    FINDING_RULES.smell[findings.smell],
    strangeSmellRule(findings),
    FINDING_RULES.deposit[findings.deposit],
    FINDING_RULES.mould[findings.mould],
    FINDING_RULES.warp[findings.warp],
    FINDING_RULES.base[findings.base],
    polyesterContradiction(findings),
    FINDING_RULES.brittleness[findings.brittleness],
    ...acidRules(findings),
    shrinkageRule(findings),
    FINDING_RULES.perforations[findings.perforations],
    FINDING_RULES.splices[findings.splices],
    FINDING_RULES.stripe[findings.stripe],
  ].filter((each) => each !== undefined);
  const rank = ({ verdict }: TriageReason): number => TRIAGE_ORDER.indexOf(verdict);
  const reasons: readonly TriageReason[] = [
    ...nitrate.map(({ reason, sources }) => ({ verdict: 'do-not-open' as const, reason, sources })),
    ...rules
      .map(({ verdict, reason, sources }) => ({ verdict, reason, sources }))
      .sort((a, b) => rank(b) - rank(a)),
  ];
  const verdict = reasons[0]?.verdict ?? 'run';
  return {
    verdict,
    isNitrateSuspected: nitrate.length > 0,
    reasons,
    steps: verdict === 'do-not-open' ? [] : stepsOf(rules, findings, verdict),
    notLookedAt: pointsNotLookedAt(findings),
  };
}
