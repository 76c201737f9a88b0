import { triageReel, type Triage, type TriageVerdict } from '../core/condition-triage.ts';
import { GAUGE_NAMES } from '../core/gauges.ts';
import { nitratePounds } from '../core/nitrate-suspicion.ts';
import { formatNumber, formatQuantity } from '../core/quantity/format.ts';
import type { ReelFindings } from '../core/reel-findings.ts';
import { withSmallInitial } from '../core/sentence.ts';
import { wordsAnswer } from './answers.ts';
import { defineWorksheet, type Outcome, type VerdictLevel } from './types.ts';

const VERDICT_NAMES: Readonly<Record<TriageVerdict, string>> = {
  run: 'run',
  'run-slowly': 'run slowly, with care',
  'no-claw': 'not on a sprocket or claw machine',
  'do-not-open': 'do not open or run, refer to a specialist',
};

const VERDICT_LEVELS: Readonly<Record<TriageVerdict, VerdictLevel>> = {
  run: 'good',
  'run-slowly': 'care',
  'no-claw': 'stop',
  'do-not-open': 'stop',
};

const KILOGRAMS_PER_POUND = 0.453_592_37;

type Entries = Omit<ReelFindings, 'year' | 'shrinkagePercent'> & {
  readonly year: number | undefined;
  readonly shrinkagePercent: number | undefined;
};

function triage(entries: Entries): Triage {
  const { year, shrinkagePercent, ...rest } = entries;
  return triageReel({
    ...rest,
    ...(year === undefined ? {} : { year }),
    ...(shrinkagePercent === undefined ? {} : { shrinkagePercent }),
  });
}

function sentenceOf({ verdict, isNitrateSuspected, reasons }: Triage): string {
  if (isNitrateSuspected) {
    return 'This may be nitrate: leave it closed, keep it cool and away from any flame or lamp, and call an archive or the fire service.';
  }
  const [gravest] = reasons;
  const because = withSmallInitial(gravest?.reason ?? '');
  if (verdict === 'run') return 'Run it: everything was looked at and nothing speaks against it.';
  const count = reasons.length === 1 ? 'for one reason' : `for ${reasons.length} reasons`;
  const head = {
    'run-slowly': 'Run it slowly and with care',
    'no-claw': 'Keep it off claws and sprockets',
    'do-not-open': 'Do not open or run it; refer it to a specialist',
  }[verdict];
  return `${head}, ${count}, first of all: ${because}.`;
}

function cautionsOf(entries: Entries, { isNitrateSuspected }: Triage): readonly string[] {
  const cautions: string[] = [];
  if (isNitrateSuspected) {
    cautions.push(
      'Never project, heat, post or burn-test a film that may be nitrate. Badly decayed nitrate has caught fire by itself at about 40 °C, and its fumes are poisonous.',
      `Say on the telephone how much there is: 1,000 ft of 35 mm film weigh about ${nitratePounds(1000)} lb, ${formatNumber(nitratePounds(1000) * KILOGRAMS_PER_POUND, 2)} kg.`,
    );
  }
  if (entries.mould === 'active' || entries.mould === 'dry-traces') {
    cautions.push(
      'Mould harms the lungs, and the harm adds up: nitrile gloves, a mask of class FFP2 or FFP3, eye protection; bag what you throw away, and see a doctor if a rash or asthma comes.',
    );
  }
  const { acidLevel } = entries;
  if (entries.smell === 'vinegar' || acidLevel === '2' || acidLevel === '3') {
    cautions.push(
      'Acid vapour irritates eyes and lungs: open the can outdoors or under extraction, with gloves.',
    );
  }
  return cautions;
}

export const worksheet = defineWorksheet({
  id: 'condition-triage',
  title: 'Triage of a reel',
  question: 'May this reel be run, and on what?',
  chapter: 'reel/condition',
  inputs: {
    base: {
      kind: 'choice',
      label: 'Base',
      options: {
        acetate: 'acetate',
        polyester: 'polyester, proved with a polariser',
        'nitrate-suspected': 'nitrate is suspected',
        unknown: 'unknown',
      },
      default: 'unknown',
      help: 'A polarising filter and a flat screen show polyester by its colours. They cannot tell acetate from nitrate.',
    },
    gauge: {
      kind: 'choice',
      label: 'Gauge',
      options: { ...GAUGE_NAMES, other: 'another, or unknown' },
      default: 'super-8',
      help: 'Nitrate is a matter of 35 mm and of odd early gauges.',
      bench: 'reel.gauge',
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
    shrinkagePercent: {
      kind: 'optional-quantity',
      label: 'Shrinkage, at most',
      unit: 'percent',
      minimum: -5,
      maximum: 15,
      default: '',
      accepted: '0.4 or 0,4 %',
      help: 'The upper bound from the shrinkage worksheet. Leave it empty if not measured.',
    },
    acidLevel: {
      kind: 'choice',
      label: 'Acid level',
      options: {
        'not-tested': 'not tested',
        '0': 'level 0',
        '1': 'level 1',
        '1.5': 'level 1.5',
        '2': 'level 2',
        '3': 'level 3',
      },
      default: 'not-tested',
      help: 'From acid-detector strips. A shade in between counts as the higher level.',
    },
    smell: {
      kind: 'choice',
      label: 'Smell',
      options: {
        none: 'none, or of old film',
        vinegar: 'vinegar',
        'acrid-or-sweet': 'acrid, or sweet, not vinegar',
        'not-noted': 'not noted',
      },
      default: 'none',
      help: 'Notice it when the can is opened, at arm’s length. Do not sniff at the film.',
    },
    brittleness: {
      kind: 'choice',
      label: 'Bends',
      options: {
        supple: 'supple',
        stiff: 'stiff',
        cracks: 'cracks',
        'not-tested': 'not tested',
      },
      default: 'supple',
      help: 'Try the leader, never the picture.',
    },
    mould: {
      kind: 'choice',
      label: 'Mould',
      options: {
        none: 'none',
        'dry-traces': 'dry traces',
        active: 'furry or damp',
        'not-noted': 'not looked at',
      },
      default: 'none',
      help: 'Spots or threads on the edges of the winding. Do not blow on it.',
    },
    perforations: {
      kind: 'choice',
      label: 'Perforations',
      options: {
        none: 'whole',
        few: 'a few torn',
        many: 'many torn',
        'not-noted': 'not looked at',
      },
      default: 'none',
      help: 'Wind through by hand with a finger on the edge, slowly.',
    },
    splices: {
      kind: 'choice',
      label: 'Splices',
      options: {
        sound: 'sound, or none',
        doubtful: 'doubtful',
        open: 'coming apart',
        'not-noted': 'not looked at',
      },
      default: 'sound',
      help: 'Old tape dries out, old cement lets go.',
    },
    warp: {
      kind: 'choice',
      label: 'Flatness',
      options: {
        flat: 'flat',
        slight: 'slightly curled or warped',
        strong: 'strongly curled, warped or spoked',
        'not-noted': 'not looked at',
      },
      default: 'flat',
      help: 'Look across the side of the winding: spokes and hills mean warp.',
    },
    deposit: {
      kind: 'choice',
      label: 'Powder and sticking',
      options: {
        none: 'none',
        'white-powder': 'white powder or crystals',
        sticky: 'layers stick together',
        'brown-powder': 'brown powder, bubbles or honey-like drops',
        'not-noted': 'not looked at',
      },
      default: 'none',
      help: 'If layers hold together, stop: do not pull.',
    },
  },
  model:
    'Every finding has a verdict of its own, and the most cautious one holds; suspected nitrate always wins. What was not looked at counts against the reel. The limits for claw projectors are practice of the trade, careful on purpose. A worksheet cannot see the film: when your hand says stop, stop.',
  compute(entries) {
    const result = triage(entries);
    const { verdict, reasons, isNitrateSuspected } = result;
    const outcome: Outcome = {
      verdict: { level: VERDICT_LEVELS[verdict], sentence: sentenceOf(result) },
      answers: {
        verdict: wordsAnswer('Verdict', VERDICT_NAMES[verdict], { level: VERDICT_LEVELS[verdict] }),
        nitrate: wordsAnswer('Nitrate', isNitrateSuspected ? 'suspected' : 'not suspected'),
        firstReason: wordsAnswer('First reason', reasons[0]?.reason ?? 'none'),
        reasonCount: wordsAnswer('Reasons', String(reasons.length)),
      },
      cautions: cautionsOf(entries, result),
      ...(reasons.length === 0
        ? {}
        : {
            tables: [
              {
                caption: 'Reasons, gravest first',
                columns: ['Finding', 'Leads to', 'Sources'],
                rows: reasons.map((reason) => ({
                  cells: [reason.reason, VERDICT_NAMES[reason.verdict], reason.sources.join(', ')],
                  level: VERDICT_LEVELS[reason.verdict],
                })),
              },
            ],
          }),
    };
    return outcome;
  },
  working(entries) {
    const { reasons, verdict } = triage(entries);
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
    'common-practice',
    'from-memory',
  ],
});
