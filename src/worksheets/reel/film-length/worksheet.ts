import {
  conventionDifferencePercent,
  exactStepByRule,
  filmSpeedMillimetresPerSecond,
  framesInSeconds,
  framesOnLength,
  lengthMillimetresOf,
  runningSeconds,
} from '../../../core/reel/film-length.ts';
import { GAUGES } from '../../../core/reel/gauges.ts';
import { formatDuration, formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { duration, quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { WorkingStep } from '../../machine/types.ts';
import { inputs, type Values } from './inputs.ts';

const RATES = [
  ['16', 16],
  ['16 2/3', 50 / 3],
  ['18', 18],
  ['24', 24],
  ['25', 25],
] as const;

function framesOf(values: Values): number {
  const { known, gauge, lengthRule, filmFps } = values;
  if (known === 'frames') return values.frames;
  if (known === 'time') return framesInSeconds(values.runningSeconds, filmFps);
  return framesOnLength(values.lengthMetres * 1000, gauge, lengthRule);
}

function ruleText({ gauge, lengthRule }: Values, stepMillimetres: number): string {
  return lengthRule === 'frames-per-foot'
    ? `counted at ${GAUGES[gauge].framesPerFoot.frames} frames to the foot`
    : `at ${formatQuantity(stepMillimetres, 'mm', 5)} to the frame`;
}

export const worksheet = defineWorksheet({
  id: 'film-length',
  title: 'Film length and running time',
  question: 'How many frames, feet, metres and minutes is this film?',
  chapter: 'reel/length',
  inputs,
  model:
    'Frames are length divided by the length of one frame: 304.8 mm divided by the frames to the foot, or the pitch of new film. Running time is frames divided by film rate. Both are exact for new film; a film that has shrunk by one per cent holds one per cent more frames on the same length.',
  answers: {
    frames: 'Frames',
    lengthMetres: 'Length',
    lengthFeet: 'Length in feet',
    runningSeconds: 'Running time',
    speedMillimetresPerSecond: 'Film speed',
    ruleDifferencePercent: 'More frames by the long pitch than by the foot',
  },
  find(values) {
    const { gauge, lengthRule, filmFps } = values;
    const frames = framesOf(values);
    return {
      frames,
      stepMillimetres: exactStepByRule(gauge, lengthRule).valueOf(),
      millimetres: lengthMillimetresOf(frames, gauge, lengthRule),
      seconds: runningSeconds(frames, filmFps),
      speed: filmSpeedMillimetresPerSecond(filmFps, gauge, lengthRule),
      ruleDifferencePercent: conventionDifferencePercent(gauge),
      atUsualRates: RATES.map(([name, rate]) => ({ name, seconds: runningSeconds(frames, rate) })),
    };
  },
  outcome(found, values) {
    const { frames, stepMillimetres, millimetres, seconds } = found;
    return {
      verdict: {
        level: 'note',
        sentence: `${formatQuantity(millimetres / 1000, 'm', 4)} of ${GAUGES[values.gauge].name} holds ${formatQuantity(frames, 'frames', 4)} and runs ${formatDuration(seconds)} at ${formatQuantity(values.filmFps, 'fps', 4)}, ${ruleText(values, stepMillimetres)}.`,
      },
      answers: {
        frames: quantity(frames, 'frames', 4),
        lengthMetres: quantity(millimetres / 1000, 'm', 4),
        lengthFeet: quantity(millimetres / 304.8, 'ft', 4),
        runningSeconds: duration(seconds),
        speedMillimetresPerSecond: quantity(found.speed, 'mmPerSecond', 4),
        ruleDifferencePercent: quantity(found.ruleDifferencePercent, 'percent', 3, {
          note: 'Two tables that do not say how they count can differ by this much.',
        }),
      },
      tables: [
        {
          caption: 'Running time at the usual rates',
          columns: ['Film rate, frames/s', 'Running time'],
          rows: found.atUsualRates.map((at) => ({ cells: [at.name, formatDuration(at.seconds)] })),
        },
      ],
    };
  },
  working({ stepMillimetres }, told, values) {
    const { known, gauge, lengthRule } = values;
    const step = formatQuantity(stepMillimetres, 'mm', 6);
    const rate = formatQuantity(values.filmFps, 'fps', 5);
    const oneFrame: WorkingStep =
      lengthRule === 'frames-per-foot'
        ? {
            words: 'A foot of film is shared among its frames.',
            sum: `304.8 mm ÷ ${GAUGES[gauge].framesPerFoot.frames} = ${step}`,
          }
        : { words: 'The standard’s pitch gives the length of one frame.', sum: step };
    const toTime: WorkingStep = {
      words: 'Frames divided by film rate give the running time.',
      sum: `${told('frames')} ÷ ${rate} = ${told('runningSeconds')}`,
    };
    const toLength: WorkingStep = {
      words: 'Frames times the length of one frame give the length.',
      sum: `${told('frames')} × ${step} = ${told('lengthMetres')}`,
    };
    if (known === 'length') {
      const given = formatQuantity(values.lengthMetres * 1000, 'mm', 6);
      return [
        oneFrame,
        {
          words: 'Length divided by the length of one frame gives the frames.',
          sum: `${given} ÷ ${step} = ${told('frames')}`,
        },
        toTime,
      ];
    }
    if (known === 'frames') return [oneFrame, toLength, toTime];
    return [
      {
        words: 'Running time times film rate gives the frames.',
        sum: `${formatNumber(values.runningSeconds, 6)} s × ${rate} = ${told('frames')}`,
      },
      oneFrame,
      toLength,
    ];
  },
  cautions: [
    'Leader, splices and missing frames are part of the length: the count does not promise as many pictures.',
  ],
  sources: [
    'arithmetic',
    'de-encyclopaedia-filmschritt',
    'gale-making-better-movies',
    'smpte-149-2004',
    'smpte-239-2004',
    'asa-z22-5-1947',
    'pritchard-glossary',
  ],
});
