// What each finding alone decides. Sheet, bench card and chapter say the same; a test holds them together.

import { LAST_NITRATE_YEAR } from './nitrate-suspicion.ts';
import { formatQuantity } from './quantity/format.ts';
import type { ReelFindings } from './reel-findings.ts';
import {
  CLAW_LIMIT_SHRINKAGE_PERCENT,
  HIGHEST_ARCHIVE_CLASS_PERCENT,
  LEAST_MEANINGFUL_SHRINKAGE_PERCENT,
} from './shrinkage-class.ts';
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
  /** The finding in a few words, for a card. */
  readonly finding: string;
  readonly reason: string;
  readonly sources: readonly string[];
  /** What would settle or mend it. */
  readonly step?: TriageStepId;
}

const PRACTICE: readonly string[] = ['common-practice'];

function rule(
  verdict: TriageVerdict,
  finding: string,
  reason: string,
  sources: readonly string[] = PRACTICE,
  step?: TriageStepId,
): TriageRule {
  return { verdict, finding, reason, sources, ...(step === undefined ? {} : { step }) };
}

const notYet = (reason: string, step: TriageStepId): TriageRule =>
  rule('not-yet', reason.charAt(0).toLowerCase() + reason.slice(1), reason, PRACTICE, step);

type Rules<Key extends keyof ReelFindings> = Readonly<
  Partial<Record<ReelFindings[Key] & string, TriageRule>>
>;

const LEVEL_ONE = rule(
  'run-slowly',
  'acid level 1, or between 0 and 1',
  'Acid level 1; decay is starting',
  ['ipi-acid-user-guide-2001'],
);

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
      'Super 16',
      'Super 16: no gate for it here, and gate and rollers of a 16 mm machine touch the picture',
      ['movies-tech-faq', 'common-practice'],
    ),
    '35mm': rule('not-here', '35 mm', '35 mm: no machine here has a gate for it'),
    other: rule(
      'do-not-open',
      'a gauge that fits nothing',
      'A gauge that fits nothing here; no machine has its gate, and some such film is nitrate',
    ),
  },
  base: {
    'not-noted': notYet('Base not looked at', 'base'),
    unknown: rule(
      'run-slowly',
      'base unknown after the look',
      'The base stays unknown; it is treated as old acetate',
    ),
  },
  acidLevel: {
    'not-tested': notYet('Acid not tested', 'acid'),
    'between-0-and-1': LEVEL_ONE,
    'level-1': LEVEL_ONE,
    'level-1.5': rule(
      'run-slowly',
      'acid level 1.5: copy it now',
      'Acid level 1.5; decay feeds itself from here, so copy it now and keep it apart',
      ['ipi-acid-user-guide-2001', 'ipi-filmcare'],
    ),
    'level-2': rule(
      'not-here',
      'acid level 2',
      'Acid level 2; the film is decaying; shrinkage and brittleness go with it',
      ['ipi-acid-user-guide-2001', 'common-practice'],
    ),
    'level-3': rule(
      'do-not-open',
      'acid level 3',
      'Acid level 3; critical, shrunk and close to unsafe handling',
      ['ipi-acid-user-guide-2001', 'from-memory'],
    ),
  },
  smell: {
    'not-noted': notYet('Smell not noticed', 'smell'),
    vinegar: rule(
      'run-slowly',
      'vinegar, with the acid tested',
      'Smell of vinegar; acetate is decaying, here or in the reel beside it; air the room',
      ['nishimura-1993', 'acetic-acid-guideline'],
    ),
  },
  brittleness: {
    'not-tested': notYet('Not tried whether it bends', 'brittleness'),
    stiff: rule('run-slowly', 'stiff', 'The film is stiff'),
    cracks: rule('not-here', 'cracks when bent', 'The film cracks when it is bent'),
  },
  mould: {
    'not-noted': notYet('Not looked at for mould', 'mould'),
    'dry-traces': rule(
      'run-slowly',
      'dry traces of mould: cleaned off first',
      'Dry traces of mould; have them cleaned off outdoors or under extraction first, with gloves and mask',
      ['national-archives-mould', 'common-practice'],
      'clean-mould',
    ),
    active: rule(
      'do-not-open',
      'furry or damp mould',
      'Mould that is furry or damp is a danger to health and spreads to other reels',
      ['national-archives-mould'],
    ),
  },
  perforations: {
    'not-noted': notYet('Perforations not looked at', 'perforations'),
    few: rule(
      'run-slowly',
      'a few torn holes: mended first',
      'A few torn perforations; mend them first',
      PRACTICE,
      'mend-perforations',
    ),
    many: rule(
      'not-here',
      'many torn holes',
      'Many torn perforations; the claw would tear on',
      PRACTICE,
    ),
  },
  splices: {
    'not-noted': notYet('Splices not looked at', 'splices'),
    doubtful: rule(
      'run-slowly',
      'doubtful splices: remade first',
      'Doubtful splices; remake them first',
      PRACTICE,
      'remake-splices',
    ),
    open: rule(
      'not-yet',
      'splices coming apart',
      'Splices are coming apart; not before they are remade',
      PRACTICE,
      'remake-splices',
    ),
  },
  warp: {
    'not-noted': notYet('Not looked at for warp', 'warp'),
    slight: rule('run-slowly', 'slightly warped', 'Slightly warped; focus will breathe'),
    strong: rule(
      'not-here',
      'strongly warped or curled',
      'Strongly warped or curled; it will not lie in a gate',
    ),
  },
  deposit: {
    'not-noted': notYet('Not looked at for powder and sticking', 'deposit'),
    'white-powder': rule(
      'not-here',
      'white powder or crystals',
      'White powder on the edges; softener leaves the base, a late stage of decay',
      ['common-practice', 'from-memory'],
    ),
    sticky: rule(
      'do-not-open',
      'turns that stick',
      'Layers stick together; unwinding would tear the picture off',
      ['h-182-nitrate-2003', 'common-practice'],
    ),
    'brown-powder': rule(
      'do-not-open',
      'brown powder, bubbles or drops',
      'Brown powder, bubbles or drops: whatever the film is, it is past handling',
      ['h-182-nitrate-2003', 'common-practice'],
    ),
  },
  stripe: {
    lifting: rule(
      'not-here',
      'a stripe that lifts',
      'The stripe comes loose; it would jam in the gate and foul the head',
    ),
  },
};

const percent = (value: number): string => formatQuantity(value, 'percent', 2);

/** Shrinkage in words of a card, with the verdict of each span; upper bounds, for acetate. */
export const SHRINKAGE_SPANS: readonly {
  readonly verdict: TriageVerdict;
  readonly finding: string;
}[] = [
  {
    verdict: 'run-slowly',
    finding: `shrinkage from ${percent(LEAST_MEANINGFUL_SHRINKAGE_PERCENT)} to below ${percent(CLAW_LIMIT_SHRINKAGE_PERCENT)}`,
  },
  {
    verdict: 'not-here',
    finding: `shrinkage of ${percent(CLAW_LIMIT_SHRINKAGE_PERCENT)} or more`,
  },
  {
    verdict: 'do-not-open',
    finding: `shrinkage of ${percent(HIGHEST_ARCHIVE_CLASS_PERCENT)} or more`,
  },
];

/** Findings that do not go with polyester, in the words of a card. */
export const CONTRADICTIONS_FINDING =
  'said to be polyester, yet sour, cracking, short, or of a year before polyester';

/** One line of the rule: a verdict and the findings that lead to it. */
export interface TriageRuleLine {
  readonly verdict: TriageVerdict;
  readonly findings: readonly string[];
}

/**
 * The whole rule of the triage as a card shows it: for each verdict, gravest first, the findings that
 * lead to it. Everything that was not looked at is one line.
 *
 * Model: the tables of this file, turned round. Exact.
 *
 * @returns lines, gravest verdict first; the last one is to run
 * @source common practice, no source
 */
export function triageRuleLines(): readonly TriageRuleLine[] {
  const single = Object.values(FINDING_RULES).flatMap((rules) =>
    Object.entries(rules as Readonly<Record<string, TriageRule>>).flatMap(([value, each]) =>
      value === 'not-noted' || value === 'not-tested' ? [] : [each],
    ),
  );
  const others: readonly { readonly verdict: TriageVerdict; readonly finding: string }[] = [
    {
      verdict: 'do-not-open',
      finding: `nitrate possible: somebody says so; a sharp or sweet smell (on Super 8 and Super 16: not yet); 35 mm or an unknown gauge, up to ${LAST_NITRATE_YEAR} or undated, not proved polyester`,
    },
    {
      verdict: 'not-yet',
      finding: 'anything but the stripe not looked at, tried, tested or measured',
    },
    { verdict: 'not-yet', finding: 'a shrinkage or a year that cannot be: look again' },
    { verdict: 'not-yet', finding: CONTRADICTIONS_FINDING },
    ...SHRINKAGE_SPANS,
  ];
  return [...TRIAGE_ORDER].reverse().map((verdict) => ({
    verdict,
    findings:
      verdict === 'run'
        ? ['everything looked at, and none of the above']
        : [
            ...new Set(
              [...others, ...single].flatMap((each) =>
                each.verdict === verdict ? [each.finding] : [],
              ),
            ),
          ],
  }));
}
