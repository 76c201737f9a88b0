import type { Candidate, Finding } from '../../../core/reel/gauge-identification.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantity, words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { Outcome, ResultTable } from '../../machine/types.ts';
import { gaugesSideBySide } from '../gauge-strips.ts';
import { PROJECTOR_FIT_LABEL, projectorFitAnswer } from '../projector-gauge-input.ts';
import { identifiedFilm, type FittingGauge, type IdentifiedFilm } from './identified.ts';
import { inputs } from './inputs.ts';

const FEATURES: Readonly<Record<Finding['feature'], string>> = {
  'film-width': 'film width',
  'perforation-height': 'height of the hole',
  pitch: 'length over the pitches',
  'perforation-position': 'place of the holes',
  'picture-width': 'picture width',
};

function findingText({ feature, allowed, measuredMillimetres }: Finding): string {
  if (allowed === undefined || measuredMillimetres === undefined) return FEATURES[feature];
  const span = `${formatNumber(allowed.least, 4)} to ${formatQuantity(allowed.most, 'mm', 4)}`;
  return `${FEATURES[feature]} ${formatNumber(measuredMillimetres, 4)}, allowed ${span}`;
}

function candidatesTable(candidates: readonly Candidate[]): ResultTable {
  return {
    caption: 'All gauges in the book, best first',
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

function verdictOf({ result, fitting, best }: IdentifiedFilm): Outcome['verdict'] {
  if (result === 'one') {
    const fits = `Everything you measured fits ${best?.name ?? ''}, and nothing else.`;
    const fit = fitting[0]?.fit;
    return fit === undefined || fit.level === 'good'
      ? { level: 'good', sentence: fits }
      : { level: fit.level, sentence: `${fits} ${fit.sentence}` };
  }
  if (result === 'several') {
    const names = listed(fitting.map(({ candidate }) => candidate.name));
    return {
      level: 'care',
      sentence: `It may be ${names}: measure one more thing to tell them apart.`,
    };
  }
  return {
    level: 'stop',
    sentence:
      'No gauge in this book fits all that you measured: measure again, and if the result is the same, put the film in no gate and ask a film archive.',
  };
}

/** What each gauge that is still possible would do on the projector. */
function projectorCautions(fitting: readonly FittingGauge[]): readonly string[] {
  return fitting.flatMap(({ fit }) =>
    fit === undefined || fit.level === 'good' ? [] : [fit.sentence],
  );
}

function gaugeCautions(fitting: readonly FittingGauge[]): readonly string[] {
  const ids = fitting.map(({ candidate }) => candidate.id);
  if (ids.includes('35mm') || ids.length === 0) {
    return [
      'A 35 mm film or one of unknown gauge may be nitrate, which burns fiercely. Keep it closed, cool and away from lamps until a specialist has seen it.',
    ];
  }
  if (ids.includes('double-8-unslit')) {
    return ['Double 8 that was never slit runs in no 8 mm projector. Do not slit it by hand.'];
  }
  return [];
}

export const worksheet = defineWorksheet({
  id: 'gauge-finder',
  title: 'Gauge finder',
  question: 'What gauge is this film?',
  chapter: 'reel/gauges',
  inputs,
  model:
    'Each measurement must lie between 3 % below and 0.5 % above the published value of a gauge, widened by the reading error; remembered values have a little more room. The 3 % and the 0.5 % are practice of the trade, without a source. Gauges are ranked by how many measurements speak against them.',
  answers: {
    gauge: 'Gauge',
    nearest: 'Nearest',
    againstNearest: 'Against the nearest',
    onProjector: PROJECTOR_FIT_LABEL,
    pitchMillimetres: 'One pitch',
  },
  find: identifiedFilm,
  outcome(found, { perforationPosition }) {
    const { candidates, result, best, fitting, pitchMillimetres } = found;
    const ids = fitting.map(({ candidate }) => candidate.id);
    const names = fitting.map(({ candidate }) => candidate.name);
    const [first] = fitting;
    return {
      verdict: verdictOf(found),
      answers: {
        gauge: words(result === 'none' ? 'none in this book' : listed(names)),
        nearest: words(best?.name ?? ''),
        againstNearest: words(best?.mismatches.map(findingText).join('; ') || 'nothing'),
        ...(result === 'one' &&
          first !== undefined &&
          first.candidate.id !== 'double-8-unslit' && {
            onProjector: projectorFitAnswer(first.fit),
          }),
        ...(pitchMillimetres !== undefined && {
          pitchMillimetres: quantity(pitchMillimetres, 'mm', 4),
        }),
      },
      tables: [candidatesTable(candidates)],
      pictures: [
        gaugesSideBySide(ids, perforationPosition === 'unknown' ? undefined : perforationPosition),
      ],
      cautions: [...gaugeCautions(fitting), ...projectorCautions(fitting)],
    };
  },
  working({ best }) {
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
