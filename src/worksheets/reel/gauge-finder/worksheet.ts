import {
  identifyGauge,
  type Candidate,
  type Finding,
} from '../../../core/reel/gauge-identification.ts';
import type { GaugeId, PerforationPosition } from '../../../core/reel/gauges/gauge.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import { gaugesSideBySide } from '../gauge-strips.ts';
import { POSITION_NAMES } from '../perforation-words.ts';
import {
  projectorFit,
  projectorFitAnswer,
  projectorGaugeInput,
  type ProjectorGauge,
} from '../projector-gauge-input.ts';
import {
  defineWorksheet,
  type Answer,
  type Outcome,
  type ResultTable,
} from '../../machine/types.ts';

const FEATURES: Readonly<Record<Finding['feature'], string>> = {
  'film-width': 'film width',
  'perforation-height': 'height of the hole',
  pitch: 'length over the pitches',
  'perforation-position': 'place of the holes',
  'picture-width': 'picture width',
};

interface Entries {
  readonly filmWidthMillimetres: number;
  readonly perforationPosition: PerforationPosition | 'unknown';
  readonly pitchCount: number;
  readonly pitchLengthMillimetres: number | undefined;
  readonly perforationHeightMillimetres: number | undefined;
  readonly pictureWidthMillimetres: number | undefined;
  readonly readingErrorMillimetres: number;
  readonly projectorGauge: ProjectorGauge;
}

function identify(entries: Entries): ReturnType<typeof identifyGauge> {
  const {
    perforationPosition,
    pitchLengthMillimetres,
    perforationHeightMillimetres,
    pictureWidthMillimetres,
    filmWidthMillimetres,
    pitchCount,
    readingErrorMillimetres,
  } = entries;
  return identifyGauge({
    filmWidthMillimetres,
    pitchCount,
    readingErrorMillimetres,
    ...(perforationPosition === 'unknown' ? {} : { perforationPosition }),
    ...(pitchLengthMillimetres === undefined ? {} : { pitchLengthMillimetres }),
    ...(perforationHeightMillimetres === undefined ? {} : { perforationHeightMillimetres }),
    ...(pictureWidthMillimetres === undefined ? {} : { pictureWidthMillimetres }),
  });
}

function findingText({ feature, allowed, measuredMillimetres }: Finding): string {
  if (allowed === undefined || measuredMillimetres === undefined) return FEATURES[feature];
  const span = `${formatNumber(allowed.least, 4)} to ${formatQuantity(allowed.most, 'mm', 4)}`;
  return `${FEATURES[feature]} ${formatNumber(measuredMillimetres, 4)}, allowed ${span}`;
}

function candidatesTable(candidates: readonly Candidate[]): ResultTable {
  return {
    caption: 'All gauges of the book, best first',
    columns: ['Gauge', 'Fits', 'Against it'],
    rows: candidates.map(({ name, mismatches }) => ({
      cells: [
        name,
        mismatches.length === 0 ? 'yes' : 'no',
        mismatches.length === 0 ? '–' : mismatches.map(findingText).join('; '),
      ],
      level: mismatches.length === 0 ? 'good' : 'note',
    })),
  };
}

function listed(names: readonly string[]): string {
  return names.length < 2
    ? names.join('')
    : `${names.slice(0, -1).join(', ')} or ${names.at(-1) ?? ''}`;
}

function verdictOf(
  result: 'one' | 'several' | 'none',
  fitting: readonly Candidate[],
  best: string,
): Outcome['verdict'] {
  if (result === 'one') {
    return { level: 'good', sentence: `Everything you measured fits ${best}, and nothing else.` };
  }
  if (result === 'several') {
    const names = listed(fitting.map(({ name }) => name));
    return { level: 'care', sentence: `It may be ${names}: measure one more thing to tell.` };
  }
  return {
    level: 'stop',
    sentence:
      'No gauge of this book fits all that you measured: measure again, and if it stays so put the film into no gate and ask a film archive.',
  };
}

/** Gauges that a film may be and a projector can be for. */
function threadable(fitting: readonly Candidate[]): readonly GaugeId[] {
  return fitting.flatMap(({ id }) => (id === 'double-8-unslit' ? [] : [id]));
}

/** The verdict, with the projector's word where the gauge is settled and the machine is said. */
function withProjector(
  verdict: Outcome['verdict'],
  fitting: readonly Candidate[],
  projector: ProjectorGauge,
): Outcome['verdict'] {
  const [only] = threadable(fitting);
  if (fitting.length !== 1 || only === undefined) return verdict;
  const fit = projectorFit(only, projector);
  return fit === undefined || fit.level === 'good'
    ? verdict
    : { level: fit.level, sentence: `${verdict.sentence} ${fit.sentence}` };
}

/** What each gauge that is still possible would do on the projector. */
function projectorCautions(
  fitting: readonly Candidate[],
  projector: ProjectorGauge,
): readonly string[] {
  return threadable(fitting).flatMap((id) => {
    const fit = projectorFit(id, projector);
    return fit === undefined || fit.level === 'good' ? [] : [fit.sentence];
  });
}

function cautionsFor(candidates: readonly Candidate[]): readonly string[] {
  const fitting = candidates.filter(({ mismatches }) => mismatches.length === 0);
  if (fitting.some(({ id }) => id === '35mm') || fitting.length === 0) {
    return [
      'A 35 mm film or one of unknown gauge may be nitrate, which burns fiercely. Keep it closed, cool and away from lamps until a specialist has seen it.',
    ];
  }
  if (fitting.some(({ id }) => id === 'double-8-unslit')) {
    return ['Double 8 that was never slit runs in no 8 mm projector. Do not slit it by hand.'];
  }
  return [];
}

export const worksheet = defineWorksheet({
  id: 'gauge-finder',
  title: 'Gauge finder',
  question: 'What gauge is this film?',
  chapter: 'reel/gauges',
  inputs: {
    filmWidthMillimetres: {
      kind: 'quantity',
      label: 'Film width',
      unit: 'mm',
      minimum: 4,
      maximum: 80,
      default: '8',
      accepted: '8, 0.95 cm or 5/16 in',
      help: 'Across the film, with a rule or better a calliper held lightly.',
    },
    perforationPosition: {
      kind: 'choice',
      label: 'Place of the holes',
      options: { unknown: 'not looked at', ...POSITION_NAMES },
      default: 'unknown',
      help: 'The frame line is the dark line between two pictures.',
    },
    pitchLengthMillimetres: {
      kind: 'optional-quantity',
      label: 'Length over the pitches',
      unit: 'mm',
      minimum: 2,
      maximum: 2000,
      default: '42.3',
      accepted: '42.3, 4.2 cm or 1 2/3 in',
      help: 'From the upper edge of one hole to the upper edge of the hole counted below. Leave it empty if not measured.',
    },
    pitchCount: {
      kind: 'count',
      label: 'Pitches in that length',
      minimum: 1,
      maximum: 200,
      default: '10',
      accepted: '10',
      help: 'Count the first hole as 0. Ten pitches tell the two 8 mm gauges apart with an ordinary rule.',
    },
    perforationHeightMillimetres: {
      kind: 'optional-quantity',
      label: 'Height of a hole',
      unit: 'mm',
      minimum: 0.3,
      maximum: 5,
      default: '',
      accepted: '1.14 or 0.05 in',
      help: 'Along the film, with a loupe and a scale. Leave it empty if not measured.',
    },
    pictureWidthMillimetres: {
      kind: 'optional-quantity',
      label: 'Picture width',
      unit: 'mm',
      minimum: 2,
      maximum: 60,
      default: '',
      accepted: '5.7 or 1/4 in',
      help: 'Across the film. It tells Super 16 from 16 mm. Leave it empty if not measured.',
    },
    readingErrorMillimetres: {
      kind: 'quantity',
      label: 'Reading error',
      unit: 'mm',
      minimum: 0,
      maximum: 2,
      default: '0.3',
      accepted: '0.3 or 0.1 mm',
      help: 'How far your rule may be off: 0.3 to 0.5 mm by eye, 0.05 mm with a calliper.',
    },
    projectorGauge: projectorGaugeInput,
  },
  model:
    'Each measurement must lie between 3 % below and 0.5 % above the published value of a gauge, widened by the reading error; remembered values have a little more room. The 3 % and the 0.5 % are practice of the trade, without a source. Gauges are ranked by how many measurements speak against them.',
  compute(entries) {
    const { candidates, result } = identify(entries);
    const fitting = candidates.filter(({ mismatches }) => mismatches.length === 0);
    const best = candidates[0]?.name ?? '';
    const answers: Record<string, Answer> = {
      gauge: wordsAnswer(
        'Gauge',
        result === 'none' ? 'none of this book' : listed(fitting.map(({ name }) => name)),
      ),
      nearest: wordsAnswer('Nearest', best),
      againstNearest: wordsAnswer(
        'Against the nearest',
        candidates[0]?.mismatches.map(findingText).join('; ') || 'nothing',
      ),
    };
    const [only, ...others] = threadable(fitting);
    if (only !== undefined && others.length === 0 && fitting.length === 1) {
      answers['onProjector'] = projectorFitAnswer(only, entries.projectorGauge);
    }
    if (entries.pitchLengthMillimetres !== undefined) {
      answers['pitchMillimetres'] = quantityAnswer(
        'One pitch',
        entries.pitchLengthMillimetres / entries.pitchCount,
        'mm',
        4,
      );
    }
    return {
      verdict: withProjector(verdictOf(result, fitting, best), fitting, entries.projectorGauge),
      answers,
      tables: [candidatesTable(candidates)],
      pictures: [
        gaugesSideBySide(
          fitting.map(({ id }) => id),
          entries.perforationPosition === 'unknown' ? undefined : entries.perforationPosition,
        ),
      ],
      cautions: [...cautionsFor(candidates), ...projectorCautions(fitting, entries.projectorGauge)],
    };
  },
  working(entries) {
    const [best] = identify(entries).candidates;
    return (best?.findings ?? []).map((finding) => ({
      words: `${best?.name ?? ''}: ${FEATURES[finding.feature]} ${finding.agrees ? 'agrees' : 'does not agree'}.`,
      ...(finding.allowed === undefined ? {} : { sum: findingText(finding) }),
    }));
  },
  cautions: [
    'Handle the film by its edges, in clean cotton or nitrile gloves, with the lamp cold.',
    'Never thread a film to find out what it is: a claw in the wrong place tears every picture.',
    'The gauge says nothing about sound: look along both edges, on both sides.',
  ],
  sources: [
    'smpte-149-2004',
    'smpte-239-2004',
    'asa-z22-5-1947',
    'smpte-101-2003',
    'smpte-102-2002',
    'de-encyclopaedia-filmschritt',
    'encyclopaedia-9-5mm',
    'iso-486-1988',
    'from-memory',
    'common-practice',
  ],
});
