import {
  apertureStops,
  balancingFNumber,
  lightChange,
  settableFNumber,
  stopsRatio,
  type LensSteps,
} from '../../../core/gate/light-stops.ts';
import { formatExposure, formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantityAnswer } from '../../machine/labelled-answers.ts';
import { LENS_STEP_NAMES } from '../lens-steps.ts';
import { defineWorksheet, type Outcome } from '../../machine/types.ts';

/** Below this two exposures look alike side by side. Common practice, no source. */
const ALIKE_STOPS = 0.05;

interface Entries {
  readonly fromExposureSeconds: number;
  readonly toExposureSeconds: number;
  readonly fromFNumber: number;
  readonly toFNumber: number;
  readonly fromSensitivity: number;
  readonly toSensitivity: number;
  readonly addedDensity: number;
  readonly lampPercent: number;
  readonly lensSteps: LensSteps;
}

/** f-number to set, and the stops by which the picture is then brighter than it was. */
function settingOf(
  { toFNumber, lensSteps }: Entries,
  totalStops: number,
): { readonly fNumber: number; readonly leftStops: number } {
  const wanted = balancingFNumber(toFNumber, totalStops);
  const fNumber = settableFNumber(wanted, lensSteps);
  return { fNumber, leftStops: apertureStops(wanted, fNumber) };
}

function changeOf(entries: Entries): ReturnType<typeof lightChange> {
  return lightChange(
    {
      exposureSeconds: entries.fromExposureSeconds,
      fNumber: entries.fromFNumber,
      sensitivity: entries.fromSensitivity,
      filterDensity: 0,
      lampRatio: 1,
    },
    {
      exposureSeconds: entries.toExposureSeconds,
      fNumber: entries.toFNumber,
      sensitivity: entries.toSensitivity,
      filterDensity: entries.addedDensity,
      lampRatio: entries.lampPercent / 100,
    },
  );
}

function verdictFor(totalStops: number): Outcome['verdict'] {
  if (Math.abs(totalStops) < ALIKE_STOPS) {
    return { level: 'good', sentence: 'Both settings give a picture of the same brightness.' };
  }
  const size = formatQuantity(Math.abs(totalStops), 'stop', 3);
  const times = formatNumber(stopsRatio(Math.abs(totalStops)), 3);
  return {
    level: 'note',
    sentence:
      totalStops > 0
        ? `The second setting is ${size} brighter: the first times ${times}.`
        : `The second setting is ${size} darker: the first divided by ${times}.`,
  };
}

export const worksheet = defineWorksheet({
  id: 'light-stops',
  title: 'Stops between two settings',
  question: 'How much brighter or darker is the picture when I change these settings?',
  chapter: 'gate/light',
  inputs: {
    fromExposureSeconds: {
      kind: 'quantity',
      label: 'Exposure time before',
      unit: 's',
      minimum: 0.00001,
      maximum: 10,
      default: '1/50',
      accepted: '1/50, 20 ms or 180°',
      help: 'As set on the camera now.',
      angleOf: 'cameraFps',
    },
    toExposureSeconds: {
      kind: 'quantity',
      label: 'Exposure time after',
      unit: 's',
      minimum: 0.00001,
      maximum: 10,
      default: '1/54',
      accepted: '1/54, 18.5 ms or 166.7°',
      help: 'The one you want. Choose it by the flash match, not by brightness.',
      angleOf: 'cameraFps',
    },
    fromFNumber: {
      kind: 'quantity',
      label: 'f-number before',
      unit: 'fNumber',
      minimum: 0.5,
      maximum: 128,
      default: '5.6',
      accepted: '5.6 or 8',
      help: 'As marked on the lens.',
    },
    toFNumber: {
      kind: 'quantity',
      label: 'f-number after',
      unit: 'fNumber',
      minimum: 0.5,
      maximum: 128,
      default: '5.6',
      accepted: '5.6 or 8',
      help: 'A larger number lets less light through.',
    },
    fromSensitivity: {
      kind: 'quantity',
      label: 'Sensitivity before (ISO)',
      unit: 'iso',
      minimum: 1,
      maximum: 1_000_000,
      default: '100',
      accepted: '100 or 400',
      help: 'As set on the camera now.',
    },
    toSensitivity: {
      kind: 'quantity',
      label: 'Sensitivity after (ISO)',
      unit: 'iso',
      minimum: 1,
      maximum: 1_000_000,
      default: '100',
      accepted: '100 or 400',
      help: 'Twice the number is one stop brighter, and noisier.',
    },
    addedDensity: {
      kind: 'quantity',
      label: 'Filter density added',
      unit: 'density',
      minimum: -6,
      maximum: 6,
      default: '0',
      accepted: '0.3, 0.9 or -0.6',
      help: 'Density of a neutral filter put in; with a minus sign, taken out. 0.3 is one stop.',
    },
    lampPercent: {
      kind: 'quantity',
      label: 'Light of the lamp after',
      unit: 'percent',
      minimum: 0.1,
      maximum: 10_000,
      default: '100',
      accepted: '100 or 50 %',
      help: 'Against before. Measured light, not watts: half the watts of a filament lamp is far less than half the light.',
    },
    lensSteps: {
      kind: 'choice',
      label: 'Opening of the lens can be set',
      options: LENS_STEP_NAMES,
      default: 'third',
      help: 'The clicks of the ring, or the steps of the dial.',
      bench: 'camera.lensSteps',
    },
    cameraFps: {
      kind: 'quantity',
      label: 'Camera rate',
      unit: 'fps',
      minimum: 1,
      maximum: 240,
      default: '25',
      accepted: '25, 50 or 30000/1001',
      help: 'Only needed when you type a shutter angle.',
      bench: 'camera.cameraFps',
    },
  },
  model:
    'Each stop doubles the light. Time, sensitivity and lamp count in proportion, the f-number by its square, a density of 0.301 as one stop. Exact as long as the camera answers in proportion to light. Marked f-numbers are rounded: 5.6 stands for 5.657, which is good for up to 0.08 stop of difference.',
  compute(entries) {
    const change = changeOf(entries);
    const { totalStops } = change;
    const setting = settingOf(entries, totalStops);
    return {
      verdict: verdictFor(totalStops),
      answers: {
        totalStops: quantityAnswer('In all', totalStops, 'stop', 3, {
          note: 'With a minus sign the picture is darker.',
        }),
        lightPercent: quantityAnswer('Brightness after', 100 * stopsRatio(totalStops), 'percent'),
        exposureStops: quantityAnswer('From exposure time', change.exposureStops, 'stop'),
        apertureStops: quantityAnswer('From f-number', change.apertureStops, 'stop'),
        sensitivityStops: quantityAnswer('From sensitivity', change.sensitivityStops, 'stop'),
        filterStops: quantityAnswer('From filter', change.filterStops, 'stop'),
        lampStops: quantityAnswer('From lamp', change.lampStops, 'stop'),
        balancingFNumber: quantityAnswer(
          'f-number that brings the old brightness back',
          balancingFNumber(entries.toFNumber, totalStops),
          'one',
        ),
        setFNumber: quantityAnswer('Nearest that the lens can be set to', setting.fNumber, 'one'),
        leftStops: quantityAnswer('What that leaves over', setting.leftStops, 'stop', 2, {
          note: 'Brighter than before; with a minus sign darker. Take it up with lamp or filter.',
        }),
        balancingSensitivity: quantityAnswer(
          'Or sensitivity (ISO)',
          entries.toSensitivity / stopsRatio(totalStops),
          'one',
        ),
      },
    };
  },
  working(entries, { answers }) {
    const text = (key: string): string => answers[key]?.text ?? '';
    const number = (value: number): string => formatNumber(value, 4);
    return [
      {
        words: 'Exposure time: how often the new one halves or doubles the old.',
        sum: `log2(${formatExposure(entries.toExposureSeconds)} ÷ ${formatExposure(entries.fromExposureSeconds)}) = ${text('exposureStops')}`,
      },
      {
        words: 'f-number: twice the doublings, because area goes with the square.',
        sum: `2 × log2(${number(entries.fromFNumber)} ÷ ${number(entries.toFNumber)}) = ${text('apertureStops')}`,
      },
      {
        words: 'Sensitivity, in proportion.',
        sum: `log2(${number(entries.toSensitivity)} ÷ ${number(entries.fromSensitivity)}) = ${text('sensitivityStops')}`,
      },
      {
        words: 'A filter takes 3.32 stops for each unit of density.',
        sum: `−3.3219 × ${number(entries.addedDensity)} = ${text('filterStops')}`,
      },
      {
        words: 'Lamp, in proportion to its light.',
        sum: `log2(${number(entries.lampPercent)} % ÷ 100 %) = ${text('lampStops')}`,
      },
      { words: 'Stops add up.', sum: text('totalStops') },
      {
        words:
          'The f-number that gives it back: the last one times the root of the doublings, then the nearest on the lens.',
        sum: `${number(entries.toFNumber)} × 2^(${text('totalStops')} ÷ 2) = ${text('balancingFNumber')} → ${text('setFNumber')}`,
      },
    ];
  },
  cautions: [
    'Change the exposure time only from one match to another: light is easily given back by lens, filter or lamp, flicker is not.',
    'A filter near the lamp must be made for the heat. Let lamp and housing cool before you reach in.',
    'A dimmer may make a lamp flicker, and it reddens a filament: look at a test recording of the empty gate, and set the white balance again.',
  ],
  sources: ['arithmetic', 'densiteetti-table', 'common-practice', 'from-memory'],
});
