// What each finding alone decides. Sheet, bench card and chapter say the same; tests hold them together.

import type { ReelFindings } from './reel-findings.ts';
import type { TriageStepId } from './triage-steps.ts';

/** What may be done with a reel, from free to forbidden. */
export type TriageVerdict = 'run' | 'run-slowly' | 'not-yet' | 'not-here' | 'do-not-open';

/** Verdicts in rising order of caution. */
export const TRIAGE_ORDER: readonly TriageVerdict[] = [
  'run',
  'run-slowly',
  'not-yet',
  'not-here',
  'do-not-open',
];

/** What one finding decides, and why. */
export interface TriageRule {
  readonly verdict: TriageVerdict;
  readonly reason: string;
  readonly sources: readonly string[];
  /** What would settle or mend it. */
  readonly step?: TriageStepId;
}

const PRACTICE: readonly string[] = ['common-practice'];

function rule(
  verdict: TriageVerdict,
  reason: string,
  sources: readonly string[] = PRACTICE,
  step?: TriageStepId,
): TriageRule {
  return { verdict, reason, sources, ...(step === undefined ? {} : { step }) };
}

const notYet = (reason: string, step: TriageStepId): TriageRule =>
  rule('not-yet', reason, PRACTICE, step);

type Rules<Key extends keyof ReelFindings> = Readonly<
  Partial<Record<ReelFindings[Key] & string, TriageRule>>
>;

const LEVEL_ONE = rule('run-slowly', 'Acid level 1; decay is starting', [
  'ipi-acid-user-guide-2001',
]);

/**
 * Rules that need one finding only. A value without a rule speaks for no caution. An acid level that
 * was not tested is judged with the base, a smell with the gauge: see condition-triage.ts.
 *
 * @source ipi-acid-user-guide-2001, ipi-filmcare, nishimura-1993, acetic-acid-guideline
 * @source national-archives-mould, h-182-nitrate-2003, movies-tech-faq
 * @source common practice, no source (all limits of a claw projector)
 */
export const FINDING_RULES: {
  readonly gauge: Rules<'gauge'>;
  readonly base: Rules<'base'>;
  readonly acidLevel: Rules<'acidLevel'>;
  readonly smell: Rules<'smell'>;
  readonly brittleness: Rules<'brittleness'>;
  readonly mould: Rules<'mould'>;
  readonly perforations: Rules<'perforations'>;
  readonly splices: Rules<'splices'>;
  readonly warp: Rules<'warp'>;
  readonly deposit: Rules<'deposit'>;
  readonly stripe: Rules<'stripe'>;
} = {
  gauge: {
    'not-noted': notYet('Gauge not looked at', 'gauge'),
    'super-16': rule(
      'not-here',
      'Super 16; no gate for it here, and gate and rollers of a 16 mm machine touch the picture',
      ['movies-tech-faq', 'common-practice'],
    ),
    '35mm': rule('not-here', '35 mm; no machine here has a gate for it'),
    other: rule(
      'do-not-open',
      'A gauge that fits nothing here; no machine has its gate, and some such film is nitrate',
    ),
  },
  base: {
    'not-noted': notYet('Base not looked at', 'base'),
    unknown: rule('run-slowly', 'The base stays unknown; it is treated as old acetate'),
  },
  acidLevel: {
    'not-tested': notYet('Acid not tested', 'acid'),
    'between-0-and-1': LEVEL_ONE,
    'level-1': LEVEL_ONE,
    'level-1.5': rule(
      'run-slowly',
      'Acid level 1.5; decay feeds itself from here, so copy it now and keep it apart',
      ['ipi-acid-user-guide-2001', 'ipi-filmcare'],
    ),
    'level-2': rule(
      'not-here',
      'Acid level 2; the film is decaying; shrinkage and brittleness go with it',
      ['ipi-acid-user-guide-2001', 'common-practice'],
    ),
    'level-3': rule('do-not-open', 'Acid level 3; critical, shrunk and close to unsafe handling', [
      'ipi-acid-user-guide-2001',
      'from-memory',
    ]),
  },
  smell: {
    'not-noted': notYet('Smell not noticed', 'smell'),
    vinegar: rule(
      'run-slowly',
      'Smell of vinegar; acetate is decaying, here or in the reel beside it; air the room',
      ['nishimura-1993', 'acetic-acid-guideline'],
    ),
  },
  brittleness: {
    'not-tested': notYet('Not tried whether it bends', 'brittleness'),
    stiff: rule('run-slowly', 'The film is stiff'),
    cracks: rule('not-here', 'The film cracks when it is bent'),
  },
  mould: {
    'not-noted': notYet('Not looked at for mould', 'mould'),
    'dry-traces': rule(
      'run-slowly',
      'Dry traces of mould; have them cleaned off first',
      ['national-archives-mould', 'common-practice'],
      'clean-mould',
    ),
    active: rule(
      'do-not-open',
      'Mould that is furry or damp is a danger to health and spreads to other reels',
      ['national-archives-mould'],
    ),
  },
  perforations: {
    'not-noted': notYet('Perforations not looked at', 'perforations'),
    few: rule(
      'run-slowly',
      'A few torn perforations; mend them first',
      PRACTICE,
      'mend-perforations',
    ),
    many: rule('not-here', 'Many torn perforations; the claw would tear on', PRACTICE),
  },
  splices: {
    'not-noted': notYet('Splices not looked at', 'splices'),
    doubtful: rule('run-slowly', 'Doubtful splices; remake them first', PRACTICE, 'remake-splices'),
    open: rule(
      'not-yet',
      'Splices are coming apart; not before they are remade',
      PRACTICE,
      'remake-splices',
    ),
  },
  warp: {
    'not-noted': notYet('Not looked at for warp', 'warp'),
    slight: rule('run-slowly', 'Slightly warped; focus will breathe'),
    strong: rule('not-here', 'Strongly warped or curled; it will not lie in a gate'),
  },
  deposit: {
    'not-noted': notYet('Not looked at for powder and sticking', 'deposit'),
    'white-powder': rule(
      'not-here',
      'White powder on the edges; softener leaves the base, a late stage of decay',
      ['common-practice', 'from-memory'],
    ),
    sticky: rule('do-not-open', 'Layers stick together; unwinding would tear the picture off', [
      'h-182-nitrate-2003',
      'common-practice',
    ]),
    'brown-powder': rule(
      'do-not-open',
      'Brown powder, bubbles or drops; whatever the film is, it is past handling',
      ['h-182-nitrate-2003', 'common-practice'],
    ),
  },
  stripe: {
    lifting: rule('not-here', 'The stripe comes loose; it would jam in the gate and foul the head'),
  },
};
