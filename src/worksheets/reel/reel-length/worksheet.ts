import { framesOnLength, runningSeconds } from '../../../core/reel/film-length.ts';
import { GAUGE_NAMES } from '../../../core/reel/gauges.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { convertUnit, type UnitName } from '../../../quantity/units.ts';
import {
  likelyThicknessMillimetres,
  measuredThickness,
  outerDiameterMillimetres,
  woundLengthRange,
  WOUND_THICKNESS,
  type FilmKind,
  type WoundThickness,
} from '../../../core/reel/reel-length.ts';
import {
  roundToUncertainty,
  type RoundingDirection,
} from '../../../quantity/round-to-uncertainty.ts';
import { durationAnswer, quantityAnswer } from '../../machine/labelled-answers.ts';
import { STATUS_WORDS } from '../../machine/provenance-words.ts';
import { runningFpsInput } from '../../machine/film-inputs.ts';
import { defineWorksheet, type Answer, type Outcome } from '../../machine/types.ts';

const KINDS = Object.fromEntries(
  Object.entries(WOUND_THICKNESS).map(([id, { name }]) => [id, name]),
) as Readonly<Record<FilmKind, string>>;

/** Enough digits for a number that is rounded already. */
const ALL_DIGITS = 12;

const metres = (millimetres: number, digits = 3): string =>
  formatQuantity(millimetres / 1000, 'm', digits);

/** A value printed only as far as it is known. The bare value keeps its digits for further sums. */
function knownAnswer(
  label: string,
  value: number,
  error: number,
  unit: UnitName,
  direction: RoundingDirection = 'nearest',
): Answer {
  const shown = quantityAnswer(
    label,
    roundToUncertainty(value, error, direction),
    unit,
    ALL_DIGITS,
  );
  if (shown.imperial === undefined) return { ...shown, value };
  const inFeet = (metres: number): number => convertUnit(metres, unit, 'ft');
  const feet = roundToUncertainty(inFeet(value), inFeet(error), direction);
  return {
    ...shown,
    value,
    imperial: {
      ...shown.imperial,
      text: formatQuantity(feet, 'ft', ALL_DIGITS),
      value: inFeet(value),
    },
  };
}

function knownDuration(
  label: string,
  seconds: number,
  error: number,
  direction: RoundingDirection = 'nearest',
): Answer {
  return {
    ...durationAnswer(label, roundToUncertainty(seconds, error, direction)),
    value: seconds,
  };
}

interface ThicknessEntries {
  readonly filmKind: FilmKind;
  readonly measuredMillimetres: number | undefined;
}

/** A measured thickness counts more than a kind of film. */
function thicknessOf({ filmKind, measuredMillimetres }: ThicknessEntries): WoundThickness {
  return measuredMillimetres === undefined
    ? WOUND_THICKNESS[filmKind]
    : measuredThickness(measuredMillimetres);
}

function memoryCautions({ status, note }: WoundThickness): readonly string[] {
  return status === 'memory'
    ? [`The thickness of this film is ${STATUS_WORDS.memory}. ${note ?? ''}.`]
    : [];
}

export const worksheet = defineWorksheet({
  id: 'reel-length',
  title: 'Length from the reel',
  question: 'How much film is on this reel, without unwinding it?',
  chapter: 'reel/length',
  inputs: {
    known: {
      kind: 'choice',
      label: 'What you know',
      options: { diameter: 'the diameter of the film pack', length: 'the length of the film' },
      default: 'diameter',
      help: 'With the length known, the answer is the diameter: will it fit the other reel?',
    },
    outerDiameterMillimetres: {
      kind: 'quantity',
      label: 'Outer diameter of the film',
      unit: 'mm',
      minimum: 20,
      maximum: 800,
      default: '116',
      accepted: '116, 11.6 cm or 4 1/2 in',
      help: 'Across the wound film, not the reel. Lay the rule across the middle of the flange.',
    },
    lengthMetres: {
      kind: 'quantity',
      label: 'Length',
      unit: 'm',
      minimum: 0.5,
      maximum: 2000,
      default: '60',
      accepted: '60 m or 200 ft',
      help: 'Used when the length is known.',
      bench: 'reel.lengthMetres',
    },
    coreDiameterMillimetres: {
      kind: 'quantity',
      label: 'Diameter of the core',
      unit: 'mm',
      minimum: 10,
      maximum: 250,
      default: '32',
      accepted: '32, 3.2 cm or 1 1/4 in',
      help: 'Where the first turn of film lies. Look through the flange, or measure an empty reel of the same kind.',
    },
    diameterErrorMillimetres: {
      kind: 'quantity',
      label: 'Reading error of a diameter',
      unit: 'mm',
      minimum: 0,
      maximum: 10,
      default: '1',
      accepted: '1 or 0.5 mm',
      help: 'How far the rule may be off. One millimetre is usual.',
    },
    filmKind: {
      kind: 'choice',
      label: 'Film',
      options: KINDS,
      default: 'unknown',
      help: 'Its thickness is the largest unknown. Find the base first: the answer then becomes several times closer.',
    },
    measuredMillimetres: {
      kind: 'optional-quantity',
      label: 'Thickness, if measured',
      unit: 'mm',
      minimum: 0.02,
      maximum: 0.5,
      default: '',
      accepted: '0.15 or 0.006 in',
      help: 'Callipers over ten turns, closed until they just touch, divided by ten; not on brittle film. It replaces the choice above.',
    },
    gauge: {
      kind: 'choice',
      label: 'Gauge',
      options: GAUGE_NAMES,
      default: 'super-8',
      help: 'Turns the length into frames and minutes, by the pitch of new film.',
      bench: 'reel.gauge',
    },
    filmFps: runningFpsInput,
  },
  model:
    'The side of the wound film is a ring, and the film covers it: length = π × (outer² − core²) ÷ (4 × thickness of a turn). The thickness runs from that of the film to that of a loose winding; for film not looked at it runs over every kind in the list. Least and most are worst cases, with both diameters misread the unlucky way. Numbers are printed as far as they are known, and no further.',
  compute(inputs) {
    const { known, coreDiameterMillimetres, diameterErrorMillimetres, gauge, filmFps } = inputs;
    const thickness = thicknessOf(inputs);
    const secondsOf = (millimetres: number): number =>
      runningSeconds(framesOnLength(millimetres, gauge, 'long-pitch'), filmFps);
    const cautions = memoryCautions(thickness);
    if (known === 'length') {
      const length = inputs.lengthMetres * 1000;
      const { minimumMillimetres: thin, maximumMillimetres: thick } = thickness;
      const diameterAt = (t: number): number =>
        outerDiameterMillimetres(length, coreDiameterMillimetres, t);
      const likely = diameterAt(likelyThicknessMillimetres(thickness));
      return {
        verdict: {
          level: 'note',
          sentence: `${metres(length)} of film on a core of ${formatQuantity(coreDiameterMillimetres, 'mm', 3)} reach ${formatQuantity(diameterAt(thin), 'mm', 3)} to ${formatQuantity(diameterAt(thick), 'mm', 3)} across.`,
        },
        answers: {
          outerDiameterMillimetres: quantityAnswer('Outer diameter, likely', likely, 'mm', 3),
          leastDiameterMillimetres: quantityAnswer('At least', diameterAt(thin), 'mm', 3),
          mostDiameterMillimetres: quantityAnswer('At most', diameterAt(thick), 'mm', 3),
          runningSeconds: durationAnswer('Running time', secondsOf(length)),
        },
        cautions,
      };
    }
    const range = woundLengthRange(
      inputs.outerDiameterMillimetres,
      coreDiameterMillimetres,
      diameterErrorMillimetres,
      thickness,
    );
    const { leastMillimetres: least, likelyMillimetres: likely, mostMillimetres: most } = range;
    const error = Math.max(most - likely, likely - least);
    const offPercent = likely === 0 ? 0 : (error / likely) * 100;
    const framesOf = (millimetres: number): number =>
      framesOnLength(millimetres, gauge, 'long-pitch');
    const errorSeconds = secondsOf(error);
    const answers = {
      lengthMetres: knownAnswer('Length, likely', likely / 1000, error / 1000, 'm'),
      leastMetres: knownAnswer('At least', least / 1000, error / 1000, 'm', 'down'),
      mostMetres: knownAnswer('At most', most / 1000, error / 1000, 'm', 'up'),
      errorPercent: quantityAnswer('Off by at most', offPercent, 'percent', 2),
      frames: knownAnswer('Frames, likely', framesOf(likely), framesOf(error), 'frames'),
      runningSeconds: knownDuration('Running time, likely', secondsOf(likely), errorSeconds),
      leastSeconds: knownDuration('At least', secondsOf(least), errorSeconds, 'down'),
      mostSeconds: knownDuration('At most', secondsOf(most), errorSeconds, 'up'),
    };
    const outcome: Outcome = {
      verdict: {
        level: offPercent > 15 ? 'care' : 'note',
        sentence: `The reel holds about ${answers.lengthMetres.text}, between ${answers.leastMetres.text} and ${answers.mostMetres.text}; that is about ${answers.runningSeconds.text} at ${formatQuantity(filmFps, 'fps', 4)}.`,
      },
      answers,
      cautions,
    };
    return outcome;
  },
  working(inputs, { answers }) {
    const { known, coreDiameterMillimetres: core } = inputs;
    const thickness = thicknessOf(inputs);
    const { minimumMillimetres: thin, maximumMillimetres: thick, note } = thickness;
    const mean = formatNumber(likelyThicknessMillimetres(thickness), 4);
    const text = (key: string): string => answers[key]?.text ?? '';
    const range = `A turn of this film is ${formatNumber(thin, 3)} to ${formatNumber(thick, 3)} mm thick`;
    const thicknessStep =
      thickness.likelyMillimetres === undefined
        ? {
            words: `${range}; the middle is used. ${note ?? ''}.`,
            sum: `(${formatNumber(thin, 4)} + ${formatNumber(thick, 4)}) ÷ 2 = ${mean} mm`,
          }
        : { words: `${range}; the likely one is used. ${note ?? ''}.`, sum: `${mean} mm` };
    if (known === 'length') {
      return [
        thicknessStep,
        {
          words: 'The same ring formula, solved for the outer diameter.',
          sum: `√(${formatNumber(core, 4)}² + 4 × ${mean} × ${formatNumber(inputs.lengthMetres * 1000, 5)} ÷ π) = ${text('outerDiameterMillimetres')}`,
        },
      ];
    }
    return [
      thicknessStep,
      {
        words: 'The area of the ring divided by the thickness gives the length.',
        sum: `π × (${formatNumber(inputs.outerDiameterMillimetres, 4)}² − ${formatNumber(core, 4)}²) ÷ (4 × ${mean}) ≈ ${text('lengthMetres')}`,
      },
      {
        words:
          'Smallest outer, largest core and thickest winding give the least; the other way round the most.',
        sum: `${text('leastMetres')} to ${text('mostMetres')}`,
      },
    ];
  },
  cautions: [
    'Measure the film, not the reel: a reel is seldom full.',
    'Add the leader: 3 m at each end is longer than the path of most machines, and it needs room on the reel too.',
    'Do not squeeze or pull a loose winding tight to measure it; layers that rub scratch the film.',
  ],
  sources: [
    'arithmetic',
    'international-projectionist-1958',
    'theatre-catalog-1953',
    'data-sheet-h-1-5242-2008',
    'nypl-ami-film-2020',
    'from-memory',
    'common-practice',
  ],
});
