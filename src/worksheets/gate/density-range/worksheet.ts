import {
  bracketPlan,
  filmRangeStops,
  type BracketPlan,
} from '../../../core/gate/exposure-range.ts';
import { densityTransmittance } from '../../../core/gate/density.ts';
import { stopsRatio } from '../../../core/gate/light-stops.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantity, words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { RangeBarsData } from '../../machine/picture-data.ts';
import type { Outcome, ResultTable } from '../../machine/types.ts';

/** Neighbouring exposures should share this much, to be joined without a seam. Common practice, no source. */
const SAFE_OVERLAP_STOPS = 1;

function signedStops(stops: number): string {
  return stops > 0 ? `+${formatQuantity(stops, 'stop')}` : formatQuantity(stops, 'stop');
}

function verdictFor(filmStops: number, cameraStops: number, plan: BracketPlan): Outcome['verdict'] {
  const film = formatQuantity(filmStops, 'stop');
  const camera = formatQuantity(cameraStops, 'stop');
  return plan.count === 1
    ? {
        level: 'good',
        sentence: `One exposure is enough: the film spans ${film}, the camera holds ${camera}.`,
      }
    : {
        level: 'care',
        sentence: `The film spans ${film} and the camera holds ${camera}: one exposure loses something at one end. A machine that stops on every frame could take ${plan.count} exposures of it.`,
      };
}

function planTable(plan: BracketPlan): ResultTable {
  return {
    caption: 'Exposures, darkest picture first',
    columns: ['Exposure', 'Against the middle', 'Light'],
    rows: plan.offsetStops.map((stops, index) => ({
      cells: [String(index + 1), signedStops(stops), `× ${formatNumber(stopsRatio(stops))}`],
    })),
  };
}

/** Film and exposures in stops below the clearest part of the film, the darkest picture first. */
function rangePicture(filmStops: number, cameraStops: number, plan: BracketPlan): RangeBarsData {
  const [darkest = 0] = plan.offsetStops;
  const held =
    plan.count === 1
      ? `One exposure holds ${formatQuantity(cameraStops, 'stop')}.`
      : `${plan.count} exposures of ${formatQuantity(cameraStops, 'stop')}, each reaching further into the dark, hold ${formatQuantity(plan.heldStops, 'stop')} together.`;
  return {
    name: 'range-bars',
    alternative: `The film ranges over ${formatQuantity(filmStops, 'stop')}. ${held}`,
    unit: 'stops',
    whole: { label: 'film, clear to dense', from: 0, to: filmStops },
    parts: plan.offsetStops.map((offset, index) => ({
      label: `exposure ${index + 1}`,
      from: offset - darkest,
      to: offset - darkest + cameraStops,
    })),
    missedText: 'lost in this exposure',
  };
}

export const worksheet = defineWorksheet({
  id: 'density-range',
  title: 'Range of the film, range of the camera',
  question: 'Can one exposure hold everything on this film, and if not, how many can?',
  chapter: 'gate/light',
  inputs: {
    minimumDensity: {
      kind: 'quantity',
      label: 'Clearest part of the film',
      unit: 'density',
      minimum: 0,
      maximum: 5,
      default: '0.3',
      accepted: '0.2 or 0.3',
      help: 'Density of the brightest highlight. Clear reversal film is about 0.1 to 0.3.',
    },
    maximumDensity: {
      kind: 'quantity',
      label: 'Densest part of the film',
      unit: 'density',
      minimum: 0.01,
      maximum: 6,
      default: '3.3',
      accepted: '3.3 or 2.4',
      help: 'From memory, so measure if you can: colour reversal 3.2 to 3.8, black-and-white reversal 2.2 to 3.0, negative 2 to 2.5, prints up to 4.',
    },
    cameraStops: {
      kind: 'quantity',
      label: 'Range the camera holds',
      unit: 'stop',
      minimum: 1,
      maximum: 20,
      default: '9',
      accepted: '9 or 10.5',
      help: 'Stops from clipped white to shadows you still accept. Usable, not advertised: test it with a row of filters.',
    },
    spacingStops: {
      kind: 'quantity',
      label: 'Step between exposures',
      unit: 'stop',
      minimum: 0.25,
      maximum: 12,
      default: '2',
      accepted: '2 or 1.5',
      help: 'How much lighter each next exposure is.',
    },
  },
  model:
    'A density of 1 is 3.32 stops. Together the exposures hold the camera’s range plus one step for each further exposure. Exact for an evenly lit gate; stray light in the lens lifts the shadows and makes the film’s range smaller than its densities say.',
  answers: {
    densityRange: 'Density range',
    filmStops: 'Range of the film',
    contrast: 'Contrast',
    shortfallStops: 'What one exposure cannot hold',
    count: 'Exposures of every frame',
    overlap: 'Range that neighbours share',
    heldStops: 'Range held together',
  },
  find({ minimumDensity, maximumDensity, cameraStops, spacingStops }) {
    const filmStops = filmRangeStops(minimumDensity, maximumDensity);
    const densityRange = maximumDensity - minimumDensity;
    return {
      densityRange,
      filmStops,
      contrast: 1 / densityTransmittance(densityRange),
      plan: bracketPlan(filmStops, cameraStops, spacingStops),
    };
  },
  outcome({ densityRange, filmStops, contrast, plan }, { cameraStops }) {
    const isTight = plan.count > 1 && plan.overlapStops < SAFE_OVERLAP_STOPS;
    return {
      verdict: verdictFor(filmStops, cameraStops, plan),
      answers: {
        densityRange: quantity(densityRange, 'density'),
        filmStops: quantity(filmStops, 'stop', 4),
        contrast: words(`${formatNumber(contrast, 3)}\u00a0:\u00a01`),
        shortfallStops: quantity(plan.shortfallStops, 'stop'),
        count: quantity(plan.count, 'one'),
        overlap: words(
          plan.count === 1 ? 'no second exposure' : formatQuantity(plan.overlapStops, 'stop'),
        ),
        heldStops: quantity(plan.heldStops, 'stop'),
      },
      tables: [planTable(plan)],
      pictures: [rangePicture(filmStops, cameraStops, plan)],
      cautions: isTight
        ? ['The exposures share less than one stop: a seam may show where they are joined.']
        : [],
    };
  },
  working(_found, told, { minimumDensity, maximumDensity, cameraStops, spacingStops }) {
    return [
      {
        words: 'Densest less clearest part, times 3.32, is the range of the film.',
        sum: `(${formatNumber(maximumDensity)} − ${formatNumber(minimumDensity)}) × 3.3219 = ${told('filmStops')}`,
      },
      {
        words: 'Less the range of the camera: what one exposure cannot hold.',
        sum: `${told('filmStops')} − ${formatQuantity(cameraStops, 'stop')}, at least 0 = ${told('shortfallStops')}`,
      },
      {
        words: 'One exposure, and one more for each step, or part of a step, of the rest.',
        sum: `1 + ${told('shortfallStops')} ÷ ${formatQuantity(spacingStops, 'stop')}, rounded up = ${told('count')}`,
      },
    ];
  },
  cautions: [
    'Several exposures of one frame need a machine that stops on it. Two runs of a projector do not lie on one another: the film weaves, and stands a little differently each time.',
    'Space exposures by light, filter or sensitivity. Another exposure time brings flicker back unless it is a match too.',
    'When one exposure has to do, expose so that the clearest part just does not clip: burnt-out whites are ugly; deep shadows were dark on the screen too.',
  ],
  sources: ['arithmetic', 'densiteetti-table', 'from-memory', 'common-practice'],
});
