import {
  apertureStops,
  balancingFNumber,
  lightChange,
  settableFNumber,
  stopsRatio,
} from '../../../core/gate/light-stops.ts';
import { formatExposure, formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { Outcome, ValuesOf } from '../../machine/types.ts';
import { inputs } from './inputs.ts';

/** Below this two exposures look alike side by side. Common practice, no source. */
const ALIKE_STOPS = 0.05;

/** Answers that add up to the change. */
const STOPS_ADDED = [
  'exposureStops',
  'apertureStops',
  'sensitivityStops',
  'filterStops',
  'lampStops',
] as const;

function findChange(values: ValuesOf<typeof inputs>) {
  const change = lightChange(
    {
      exposureSeconds: values.fromExposureSeconds,
      fNumber: values.fromFNumber,
      sensitivity: values.fromSensitivity,
      filterDensity: 0,
      lampRatio: 1,
    },
    {
      exposureSeconds: values.toExposureSeconds,
      fNumber: values.toFNumber,
      sensitivity: values.toSensitivity,
      filterDensity: values.addedDensity,
      lampRatio: values.lampPercent / 100,
    },
  );
  const ratio = stopsRatio(change.totalStops);
  const balancing = balancingFNumber(values.toFNumber, change.totalStops);
  const setFNumber = settableFNumber(balancing, values.lensSteps);
  return {
    change,
    ratio,
    balancing,
    setFNumber,
    /** How much brighter than at first the picture then is. */
    leftStops: apertureStops(balancing, setFNumber),
    balancingSensitivity: values.toSensitivity / ratio,
  };
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
  inputs,
  model:
    'Each stop doubles the light. Time, sensitivity and lamp count in proportion, the f-number by its square, a density of 0.301 as one stop. Exact as long as the camera responds in proportion to light. Marked f-numbers are rounded: 5.6 stands for 5.657. Rounding makes a difference of up to 0.08 stop.',
  answers: {
    totalStops: 'In all',
    lightPercent: 'Brightness after',
    exposureStops: 'From exposure time',
    apertureStops: 'From f-number',
    sensitivityStops: 'From sensitivity',
    filterStops: 'From filter',
    lampStops: 'From lamp',
    balancingFNumber: 'f-number that brings the old brightness back',
    setFNumber: 'Nearest that the lens can be set to',
    leftStops: 'Difference that is left',
    balancingSensitivity: 'Or sensitivity (ISO)',
  },
  find: findChange,
  outcome({ change, ratio, balancing, setFNumber, leftStops, balancingSensitivity }) {
    return {
      verdict: verdictFor(change.totalStops),
      answers: {
        totalStops: quantity(change.totalStops, 'stop', 3, {
          note: 'With a minus sign the picture is darker.',
        }),
        lightPercent: quantity(100 * ratio, 'percent'),
        exposureStops: quantity(change.exposureStops, 'stop'),
        apertureStops: quantity(change.apertureStops, 'stop'),
        sensitivityStops: quantity(change.sensitivityStops, 'stop'),
        filterStops: quantity(change.filterStops, 'stop'),
        lampStops: quantity(change.lampStops, 'stop'),
        balancingFNumber: quantity(balancing, 'one'),
        setFNumber: quantity(setFNumber, 'one'),
        leftStops: quantity(leftStops, 'stop', 2, {
          note: 'Brighter than before; with a minus sign darker. Take it up with lamp or filter.',
        }),
        balancingSensitivity: quantity(balancingSensitivity, 'one'),
      },
    };
  },
  working(_found, told, values) {
    const number = (value: number): string => formatNumber(value, 4);
    return [
      {
        words: 'Exposure time: how often the new one halves or doubles the old.',
        sum: `log2(${formatExposure(values.toExposureSeconds)} ÷ ${formatExposure(values.fromExposureSeconds)}) = ${told('exposureStops')}`,
      },
      {
        words: 'f-number: twice the doublings, because area goes with the square.',
        sum: `2 × log2(${number(values.fromFNumber)} ÷ ${number(values.toFNumber)}) = ${told('apertureStops')}`,
      },
      {
        words: 'Sensitivity, in proportion.',
        sum: `log2(${number(values.toSensitivity)} ÷ ${number(values.fromSensitivity)}) = ${told('sensitivityStops')}`,
      },
      {
        words: 'A filter takes 3.32 stops for each unit of density.',
        sum: `−3.3219 × ${number(values.addedDensity)} = ${told('filterStops')}`,
      },
      {
        words: 'Lamp, in proportion to its light.',
        sum: `log2(${number(values.lampPercent)} % ÷ 100 %) = ${told('lampStops')}`,
      },
      {
        words: 'Stops add up.',
        sum: `${STOPS_ADDED.map((key) => `(${told(key)})`).join(' + ')} = ${told('totalStops')}`,
      },
      {
        words:
          'The f-number that gives it back: the last one times the root of the doublings, then the nearest on the lens.',
        sum: `${number(values.toFNumber)} × 2^(${told('totalStops')} ÷ 2) = ${told('balancingFNumber')}; on the lens ${told('setFNumber')}`,
      },
    ];
  },
  cautions: [
    'Change the exposure time only from one match to another: lens, filter or lamp easily make up for light, but nothing takes flicker away afterwards.',
    'A filter near the lamp must be made for the heat. Let lamp and housing cool before you reach in.',
    'A dimmer may make a lamp flicker, and it reddens a filament: look at a test recording of the empty gate, and set the white balance again.',
  ],
  sources: ['arithmetic', 'densiteetti-table', 'common-practice', 'from-memory'],
});
