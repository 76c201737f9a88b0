import { triageReel, type Triage } from '../../../core/reel/condition-triage.ts';
import type { ReelFindings } from '../../../core/reel/reel-findings.ts';
import type { TriageVerdict } from '../../../core/reel/triage-rules.ts';
import { formatQuantity } from '../../../quantity/format.ts';
import { words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { ResultTable, VerdictLevel } from '../../machine/types.ts';
import { inputs, type Values } from './inputs.ts';
import { cautionsOf, nitrateWords, sentenceOf, VERDICT_NAMES } from './words.ts';

const VERDICT_LEVELS: Readonly<Record<TriageVerdict, VerdictLevel>> = {
  run: 'good',
  'run-slowly': 'care',
  'not-yet': 'stop',
  'not-here': 'stop',
  'do-not-open': 'stop',
};

/** An empty field is a point that nobody looked at: it is left out of the findings. */
function findingsOf({ year, shrinkagePercent, ...rest }: Values): ReelFindings {
  return {
    ...rest,
    ...(year === undefined ? {} : { year }),
    ...(shrinkagePercent === undefined ? {} : { shrinkagePercent }),
  };
}

function tablesOf({ verdict, steps, reasons }: Triage): readonly ResultTable[] {
  const tables: ResultTable[] = [];
  if (steps.length > 0) {
    tables.push({
      caption:
        verdict === 'not-here'
          ? 'To do before it goes to another workshop, in this order'
          : 'To do before it runs, in this order',
      // Two columns, so that a phone shows the whole step.
      columns: ['Step', 'Do this'],
      rows: steps.map(({ what, how }, index) => ({
        cells: [String(index + 1), `${what}. ${how}`],
      })),
    });
  }
  if (reasons.length > 0) {
    tables.push({
      caption: 'Reasons, gravest first',
      columns: ['Finding', 'Leads to', 'Sources'],
      rows: reasons.map((reason) => ({
        cells: [reason.reason, VERDICT_NAMES[reason.verdict], reason.sources.join(', ')],
        level: VERDICT_LEVELS[reason.verdict],
      })),
    });
  }
  return tables;
}

export const worksheet = defineWorksheet({
  id: 'condition-triage',
  title: 'Triage of a reel',
  question: 'May this reel be run, and on what?',
  chapter: 'reel/condition',
  inputs,
  model:
    'Every finding has a verdict of its own, and the most cautious one holds; suspected nitrate always wins. What was not looked at gives “not yet”, whatever the base. Polyester is let off the acid test and the limits of shrinkage, nothing else. The limits for claw projectors are practice of the trade, careful on purpose. A worksheet cannot see the film: when your hand says stop, stop.',
  answers: {
    verdict: 'Verdict',
    nextStep: 'First step',
    nitrate: 'Nitrate',
    firstReason: 'First reason',
    reasonCount: 'Reasons',
    notLookedAtCount: 'Points not looked at',
  },
  find(values) {
    const findings = findingsOf(values);
    return { findings, triage: triageReel(findings) };
  },
  outcome({ findings, triage }) {
    const { verdict, reasons, steps, notLookedAt } = triage;
    const level = VERDICT_LEVELS[verdict];
    const tables = tablesOf(triage);
    return {
      verdict: { level, sentence: sentenceOf(triage, findings) },
      answers: {
        verdict: words(VERDICT_NAMES[verdict], { level }),
        nextStep: words(
          steps[0]?.what ?? (verdict === 'do-not-open' ? 'Close it, and call' : 'none'),
        ),
        nitrate: words(nitrateWords(triage, findings)),
        firstReason: words(reasons[0]?.reason ?? 'none'),
        reasonCount: words(String(reasons.length)),
        notLookedAtCount: words(String(notLookedAt.length)),
      },
      ...(tables.length === 0 ? {} : { tables }),
      cautions: cautionsOf(findings, triage),
    };
  },
  working({ findings: { shrinkagePercent }, triage: { reasons } }, told) {
    const measured =
      shrinkagePercent === undefined
        ? 'Shrinkage was not measured.'
        : `Shrinkage was given as ${formatQuantity(shrinkagePercent, 'percent', 3)}.`;
    return [
      { words: measured },
      ...reasons.map((reason) => ({
        words: `${reason.reason}.`,
        sum: `→ ${VERDICT_NAMES[reason.verdict]}`,
      })),
      { words: 'The most cautious verdict holds.', sum: `→ ${told('verdict')}` },
    ];
  },
  cautions: [
    'Work by an open window, with clean gloves, and with the lamp of the projector cold.',
    'When nitrate is possible, local fire rules and trained people come before anything in this book.',
  ],
  sources: [
    'hse-indg469',
    'h-182-nitrate-2003',
    'amia-nitrate-2008',
    'heritage-science-2020',
    'pritchard-glossary',
    'anica-guide',
    'international-projectionist-1950',
    'ipi-acid-user-guide-2001',
    'ipi-filmcare',
    'nishimura-1993',
    'acetic-acid-guideline',
    'national-archives-mould',
    'fiaf-cataloguing-manual',
    'nfpf-film-preservation-guide',
    'international-projectionist-1963',
    'smpte-149-2004',
    'vinegar-syndrome-encyclopaedia',
    'movies-tech-faq',
    'mace-identify-films',
    'encyclopaedia-16mm',
    'common-practice',
    'from-memory',
  ],
});
