import { triageReel, type Triage } from '../../../core/reel/condition-triage.ts';
import { GAUGE_NAMES } from '../../../core/reel/gauges.ts';
import { formatQuantity } from '../../../quantity/format.ts';
import type { ReelFindings } from '../../../core/reel/reel-findings.ts';
import type { TriageVerdict } from '../../../core/reel/triage-rules.ts';
import { wordsAnswer } from '../../machine/labelled-answers.ts';
import { cautionsOf, nitrateWords, sentenceOf, VERDICT_NAMES } from './words.ts';
import {
  defineWorksheet,
  type Outcome,
  type ResultTable,
  type VerdictLevel,
} from '../../machine/types.ts';

const VERDICT_LEVELS: Readonly<Record<TriageVerdict, VerdictLevel>> = {
  run: 'good',
  'run-slowly': 'care',
  'not-yet': 'stop',
  'not-here': 'stop',
  'do-not-open': 'stop',
};

type Entries = Omit<ReelFindings, 'year' | 'shrinkagePercent'> & {
  readonly year: number | undefined;
  readonly shrinkagePercent: number | undefined;
};

function findingsOf({ year, shrinkagePercent, ...rest }: Entries): ReelFindings {
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
  inputs: {
    gauge: {
      kind: 'choice',
      label: 'Gauge',
      options: {
        'not-noted': 'not looked at',
        ...GAUGE_NAMES,
        other: 'none of these, or cannot be told',
      },
      default: 'not-noted',
      help: 'By width and holes, on the outermost turn. Nitrate is a matter of 35 mm and of odd early gauges.',
      bench: 'reel.gauge',
      onlyOwnBenchField: true,
    },
    year: {
      kind: 'optional-quantity',
      label: 'Year',
      unit: 'one',
      minimum: 1889,
      maximum: 2100,
      default: '',
      accepted: '1974',
      help: 'Of the film, from box, edge marks or family. Leave it empty if unknown.',
    },
    smell: {
      kind: 'choice',
      label: 'Smell',
      options: {
        'not-noted': 'not noticed yet',
        none: 'none, or of old film',
        vinegar: 'vinegar',
        'acrid-or-sweet': 'sharp, or sweet, not vinegar',
      },
      default: 'not-noted',
      help: 'Notice it when the can is opened, at arm’s length. Do not sniff at the film.',
    },
    deposit: {
      kind: 'choice',
      label: 'Powder and sticking',
      options: {
        'not-noted': 'not looked at',
        none: 'none',
        'white-powder': 'white powder or crystals',
        sticky: 'layers stick together',
        'brown-powder': 'brown powder, bubbles or honey-like drops',
      },
      default: 'not-noted',
      help: 'Look at both sides of the roll. If layers hold together, stop: do not pull.',
    },
    mould: {
      kind: 'choice',
      label: 'Mould',
      options: {
        'not-noted': 'not looked at',
        none: 'none',
        'dry-traces': 'dry traces',
        active: 'furry or damp',
      },
      default: 'not-noted',
      help: 'Spots or threads on the edges of the winding. Do not blow on it.',
    },
    warp: {
      kind: 'choice',
      label: 'Flatness',
      options: {
        'not-noted': 'not looked at',
        flat: 'flat',
        slight: 'slightly curled or warped',
        strong: 'strongly curled, warped or spoked',
      },
      default: 'not-noted',
      help: 'Look across the side of the winding: spokes and hills mean warp.',
    },
    base: {
      kind: 'choice',
      label: 'Base',
      options: {
        'not-noted': 'not looked at',
        acetate: 'acetate',
        polyester: 'polyester, proved with a polariser',
        'nitrate-suspected': 'nitrate is suspected',
        unknown: 'looked at, still unknown',
      },
      default: 'not-noted',
      help: 'On the film itself, past the leader; nothing is cut. A polarising filter and a dark flat screen show polyester by light or colours, but cannot tell acetate from nitrate.',
    },
    brittleness: {
      kind: 'choice',
      label: 'Bends',
      options: {
        'not-tested': 'not tried',
        supple: 'supple',
        stiff: 'stiff',
        cracks: 'cracks',
      },
      default: 'not-tested',
      help: 'Bend the film itself, at the head, in a loop as wide as your thumb. The leader is often another film.',
    },
    acidLevel: {
      kind: 'choice',
      label: 'Acid level',
      options: {
        'not-tested': 'not tested',
        'level-0': 'level 0',
        'between-0-and-1': 'between 0 and 1',
        'level-1': 'level 1',
        'level-1.5': 'level 1.5',
        'level-2': 'level 2',
        'level-3': 'level 3',
      },
      default: 'not-tested',
      help: 'From acid-detector strips after a day. Between two other levels take the higher one.',
    },
    shrinkagePercent: {
      kind: 'optional-quantity',
      label: 'Shrinkage, at most',
      unit: 'percent',
      minimum: -100,
      maximum: 100,
      default: '',
      accepted: '0.4 or 0,4 %',
      help: 'The upper bound from the shrinkage worksheet, of the film and not of its leader. Leave it empty if not measured.',
    },
    perforations: {
      kind: 'choice',
      label: 'Perforations',
      options: {
        'not-noted': 'not looked at',
        none: 'whole',
        few: 'a few torn',
        many: 'many torn',
      },
      default: 'not-noted',
      help: 'Wind through by hand with a finger on the edge, slowly.',
    },
    splices: {
      kind: 'choice',
      label: 'Splices',
      options: {
        'not-noted': 'not looked at',
        sound: 'sound, or none',
        doubtful: 'doubtful',
        open: 'coming apart',
      },
      default: 'not-noted',
      help: 'Old tape dries out, old cement lets go.',
    },
    stripe: {
      kind: 'choice',
      label: 'Magnetic stripe',
      options: {
        'not-noted': 'not looked at',
        none: 'none',
        striped: 'striped',
        lifting: 'striped, and it lifts',
      },
      default: 'not-noted',
      help: 'A dull brown band along an edge, seen with light from the side.',
    },
  },
  model:
    'Every finding has a verdict of its own, and the most cautious one holds; suspected nitrate always wins. What was not looked at gives “not yet”, whatever the base. Polyester is let off the acid test and the limits of shrinkage, nothing else. The limits for claw projectors are practice of the trade, careful on purpose. A worksheet cannot see the film: when your hand says stop, stop.',
  compute(entries) {
    const findings = findingsOf(entries);
    const result = triageReel(findings);
    const { verdict, reasons, steps, notLookedAt } = result;
    const outcome: Outcome = {
      verdict: { level: VERDICT_LEVELS[verdict], sentence: sentenceOf(result, findings) },
      answers: {
        verdict: wordsAnswer('Verdict', VERDICT_NAMES[verdict], { level: VERDICT_LEVELS[verdict] }),
        nextStep: wordsAnswer(
          'First step',
          steps[0]?.what ?? (verdict === 'do-not-open' ? 'Close it, and call' : 'none'),
        ),
        nitrate: wordsAnswer('Nitrate', nitrateWords(result, findings)),
        firstReason: wordsAnswer('First reason', reasons[0]?.reason ?? 'none'),
        reasonCount: wordsAnswer('Reasons', String(reasons.length)),
        notLookedAtCount: wordsAnswer('Points not looked at', String(notLookedAt.length)),
      },
      cautions: cautionsOf(findings, result),
    };
    const tables = tablesOf(result);
    return tables.length === 0 ? outcome : { ...outcome, tables };
  },
  working(entries) {
    const { reasons, verdict } = triageReel(findingsOf(entries));
    const measured =
      entries.shrinkagePercent === undefined
        ? 'Shrinkage was not measured.'
        : `Shrinkage was given as ${formatQuantity(entries.shrinkagePercent, 'percent', 3)}.`;
    return [
      { words: measured },
      ...reasons.map((reason) => ({
        words: `${reason.reason}.`,
        sum: `→ ${VERDICT_NAMES[reason.verdict]}`,
      })),
      { words: 'The most cautious verdict holds.', sum: `→ ${VERDICT_NAMES[verdict]}` },
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
