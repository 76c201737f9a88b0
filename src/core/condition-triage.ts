import { requireInterval } from './errors.ts';
import { nitrateReasons } from './nitrate-suspicion.ts';
import { formatQuantity } from './quantity/format.ts';
import type {
  AcidFinding,
  Brittleness,
  Deposit,
  Mould,
  PerforationDamage,
  ReelFindings,
  Smell,
  SpliceState,
  Warp,
} from './reel-findings.ts';
import { withSmallInitial } from './sentence.ts';
import {
  CLAW_LIMIT_SHRINKAGE_PERCENT,
  LEAST_MEANINGFUL_SHRINKAGE_PERCENT,
  shrinkageClass,
} from './shrinkage-class.ts';

/** What may be done with a reel, from free to forbidden. */
export type TriageVerdict = 'run' | 'run-slowly' | 'no-claw' | 'do-not-open';

/** Verdicts in rising order of caution. */
export const TRIAGE_ORDER: readonly TriageVerdict[] = [
  'run',
  'run-slowly',
  'no-claw',
  'do-not-open',
];

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
}

type Rule = readonly [TriageVerdict, string, ...string[]];

const PRACTICE = 'common-practice';

const ACID: Readonly<Partial<Record<AcidFinding, Rule>>> = {
  '1': ['run-slowly', 'Acid level 1; decay is starting', 'ipi-acid-user-guide-2001'],
  '1.5': [
    'run-slowly',
    'Acid level 1.5; decay feeds itself from here, so copy it now and keep it apart',
    'ipi-acid-user-guide-2001',
    'ipi-filmcare',
  ],
  '2': [
    'no-claw',
    'Acid level 2; the film is decaying; shrinkage and brittleness go with it',
    'ipi-acid-user-guide-2001',
    PRACTICE,
  ],
  '3': [
    'do-not-open',
    'Acid level 3; critical, shrunk and close to unsafe handling',
    'ipi-acid-user-guide-2001',
    'from-memory',
  ],
};

const SMELL: Readonly<Partial<Record<Smell, Rule>>> = {
  vinegar: [
    'run-slowly',
    'Smell of vinegar; acetate is decaying; test the acid level and air the room',
    'nishimura-1993',
    'acetic-acid-guideline',
  ],
};

const BRITTLENESS: Readonly<Partial<Record<Brittleness, Rule>>> = {
  stiff: ['run-slowly', 'The film is stiff', PRACTICE],
  cracks: ['no-claw', 'The film cracks when it is bent', PRACTICE],
  'not-tested': ['run-slowly', 'Not tested whether it bends', PRACTICE],
};

const MOULD: Readonly<Partial<Record<Mould, Rule>>> = {
  'dry-traces': [
    'run-slowly',
    'Dry traces of mould; have them cleaned off outdoors or under extraction first, with gloves and mask',
    'national-archives-mould',
    PRACTICE,
  ],
  active: [
    'do-not-open',
    'Mould that is furry or damp is a danger to health and spreads to other reels',
    'national-archives-mould',
  ],
  'not-noted': ['run-slowly', 'Not looked at for mould', PRACTICE],
};

const PERFORATIONS: Readonly<Partial<Record<PerforationDamage, Rule>>> = {
  few: ['run-slowly', 'A few torn perforations; mend them first', PRACTICE],
  many: ['no-claw', 'Many torn perforations; the claw would tear on', PRACTICE],
  'not-noted': ['run-slowly', 'Perforations not looked at', PRACTICE],
};

const SPLICES: Readonly<Partial<Record<SpliceState, Rule>>> = {
  doubtful: ['run-slowly', 'Doubtful splices; remake them first', PRACTICE],
  open: ['no-claw', 'Splices are coming apart; not before they are remade', PRACTICE],
  'not-noted': ['run-slowly', 'Splices not looked at', PRACTICE],
};

const WARP: Readonly<Partial<Record<Warp, Rule>>> = {
  slight: ['run-slowly', 'Slightly warped; focus will breathe', PRACTICE],
  strong: ['no-claw', 'Strongly warped or curled; it will not lie in a gate', PRACTICE],
  'not-noted': ['run-slowly', 'Not looked at for warp', PRACTICE],
};

const DEPOSIT: Readonly<Partial<Record<Deposit, Rule>>> = {
  'white-powder': [
    'no-claw',
    'White powder on the edges; softener leaves the base, a late stage of decay',
    PRACTICE,
    'from-memory',
  ],
  sticky: [
    'do-not-open',
    'Layers stick together; unwinding would tear the picture off',
    'h-182-nitrate-2003',
    PRACTICE,
  ],
  'not-noted': ['run-slowly', 'Not looked at for powder and sticking', PRACTICE],
};

function shrinkageRule(findings: ReelFindings): Rule | undefined {
  const { shrinkagePercent, base } = findings;
  if (shrinkagePercent === undefined) {
    return base === 'polyester'
      ? undefined
      : ['run-slowly', 'Shrinkage not measured; measure over 100 pitches first', PRACTICE];
  }
  requireInterval('shrinkagePercent', shrinkagePercent, { minimum: -5, maximum: 15, unit: '%' });
  if (shrinkagePercent < LEAST_MEANINGFUL_SHRINKAGE_PERCENT) return undefined;
  const { id, meaning, sources } = shrinkageClass(shrinkagePercent);
  const reason = `Shrinkage of ${formatQuantity(shrinkagePercent, 'percent', 2)}; ${withSmallInitial(meaning)}`;
  if (shrinkagePercent < CLAW_LIMIT_SHRINKAGE_PERCENT) return ['run-slowly', reason, ...sources];
  return [id === 'beyond' ? 'do-not-open' : 'no-claw', reason, ...sources];
}

/** An untested film on acetate or an unknown base that nobody has smelt may be decaying. */
function decayUnknownRule({ base, acidLevel, smell }: ReelFindings): Rule | undefined {
  if (base === 'polyester' || acidLevel !== 'not-tested') return undefined;
  if (smell === 'vinegar' || smell === 'none') return undefined;
  return ['run-slowly', 'Neither smelt nor tested for acid', PRACTICE];
}

function baseRule({ base }: ReelFindings): Rule | undefined {
  return base === 'unknown'
    ? ['run-slowly', 'The base is unknown; it is treated as old acetate', PRACTICE]
    : undefined;
}

function gaugeRule({ gauge }: ReelFindings): Rule | undefined {
  return gauge === 'other'
    ? ['do-not-open', 'An unknown gauge fits no gate here, and some are nitrate', PRACTICE]
    : undefined;
}

/**
 * What may be done with a reel: run it, run it slowly with care, keep it off claws and sprockets, or
 * leave it closed and refer it to a specialist. Every reason and its sources come with the verdict.
 *
 * Model: each finding has its own verdict, and the most cautious one holds. Suspected nitrate always
 * wins. What was not looked at counts against the reel. A verdict is never milder for one more bad
 * finding.
 *
 * @param findings  what the worker found
 * @returns verdict and reasons, gravest first
 * @throws {OutOfRangeError} for a year or a shrinkage that cannot be
 * @source hse-indg469, h-182-nitrate-2003, ipi-acid-user-guide-2001, national-archives-mould
 * @source common practice, no source (all limits of a claw projector)
 */
export function triageReel(findings: ReelFindings): Triage {
  const nitrate = nitrateReasons(findings);
  const rules: readonly (Rule | undefined)[] = [
    gaugeRule(findings),
    baseRule(findings),
    shrinkageRule(findings),
    decayUnknownRule(findings),
    ACID[findings.acidLevel],
    SMELL[findings.smell],
    BRITTLENESS[findings.brittleness],
    MOULD[findings.mould],
    PERFORATIONS[findings.perforations],
    SPLICES[findings.splices],
    WARP[findings.warp],
    DEPOSIT[findings.deposit],
  ];
  const others = rules.flatMap((rule): readonly TriageReason[] => {
    if (rule === undefined) return [];
    const [verdict, reason, ...sources] = rule;
    return [{ verdict, reason, sources }];
  });
  const rank = ({ verdict }: TriageReason): number => TRIAGE_ORDER.indexOf(verdict);
  const reasons = [
    ...nitrate.map(({ reason, sources }) => ({ verdict: 'do-not-open' as const, reason, sources })),
    ...[...others].sort((a, b) => rank(b) - rank(a)),
  ];
  return {
    verdict: reasons[0]?.verdict ?? 'run',
    isNitrateSuspected: nitrate.length > 0,
    reasons,
  };
}
