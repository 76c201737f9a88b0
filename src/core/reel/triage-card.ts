// The rule of the triage as a card shows it: for each answer the findings that lead to it, in few words.
// Apart from the rules, because only the build of the cards needs these words.

import { LAST_NITRATE_YEAR } from './nitrate-suspicion.ts';
import { formatQuantity } from '../../quantity/format.ts';
import {
  CLAW_LIMIT_SHRINKAGE_PERCENT,
  HIGHEST_ARCHIVE_CLASS_PERCENT,
  LEAST_MEANINGFUL_SHRINKAGE_PERCENT,
} from './shrinkage-class.ts';
import {
  FINDING_RULES,
  TRIAGE_ORDER,
  type TriageRule,
  type TriageVerdict,
} from './triage-rules.ts';

/** Words of a card for each value that has a rule, but for what was not looked at. */
const CARD_WORDS: Readonly<Record<keyof typeof FINDING_RULES, Readonly<Record<string, string>>>> = {
  gauge: {
    'super-16': 'Super 16',
    '35mm': '35 mm',
    other: 'a gauge that fits nothing',
  },
  base: {
    unknown: 'base unknown after the look',
  },
  acidLevel: {
    'between-0-and-1': 'acid level 1, or between 0 and 1',
    'level-1': 'acid level 1, or between 0 and 1',
    'level-1.5': 'acid level 1.5: copy it now',
    'level-2': 'acid level 2',
    'level-3': 'acid level 3',
  },
  smell: {
    vinegar: 'vinegar, with the acid tested',
  },
  brittleness: {
    stiff: 'stiff',
    cracks: 'cracks when bent',
  },
  mould: {
    'dry-traces': 'dry traces of mould: cleaned off first',
    active: 'furry or damp mould',
  },
  perforations: {
    few: 'a few torn holes: mended first',
    many: 'many torn holes',
  },
  splices: {
    doubtful: 'doubtful splices: remade first',
    open: 'splices coming apart',
  },
  warp: {
    slight: 'slightly warped',
    strong: 'strongly warped or curled',
  },
  deposit: {
    'white-powder': 'white powder or crystals',
    sticky: 'turns that stick',
    'brown-powder': 'brown powder, bubbles or drops',
  },
  stripe: {
    lifting: 'a stripe that lifts',
  },
};

const percent = (value: number): string => formatQuantity(value, 'percent', 2);

/** Shrinkage in words of a card, with the verdict of each span; upper bounds, for acetate. */
const SHRINKAGE_SPANS: readonly {
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
const CONTRADICTIONS_FINDING =
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
 * @throws {Error} for a rule that has no words on the card
 * @source common practice, no source
 */
export function triageRuleLines(): readonly TriageRuleLine[] {
  const single = Object.entries(FINDING_RULES).flatMap(([key, rules]) =>
    Object.entries(rules as Readonly<Record<string, TriageRule>>).flatMap(
      ([value, { verdict }]) => {
        const finding = CARD_WORDS[key as keyof typeof FINDING_RULES][value];
        if (value === 'not-noted' || value === 'not-tested') return [];
        if (finding === undefined) throw new Error(`no words on the card for ${key} ${value}`);
        return [{ verdict, finding }];
      },
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
