import {
  conventionDifferencePercent,
  exactStepByRule,
  filmSpeedMillimetresPerSecond,
  framesInSeconds,
  framesOnLength,
  lengthMillimetresOf,
  runningSeconds,
  type LengthRule,
} from '../../../core/reel/film-length.ts';
import { GAUGE_NAMES, GAUGES } from '../../../core/reel/gauges.ts';
import type { GaugeId } from '../../../core/reel/gauges/gauge.ts';
import { formatDuration, formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { durationAnswer, quantityAnswer } from '../../machine/labelled-answers.ts';
import { runningFpsInput } from '../../machine/film-inputs.ts';
import { defineWorksheet, type ResultTable, type WorkingStep } from '../../machine/types.ts';

const RATES = [
  ['16', 16],
  ['16 2/3', 50 / 3],
  ['18', 18],
  ['24', 24],
  ['25', 25],
] as const;

const RULE_NAMES = {
  'frames-per-foot': 'by the foot: the counting convention of tables and counters',
  'long-pitch': 'by the pitch of new film, long',
  'short-pitch': 'by the pitch of new film, short',
} as const;

interface Entries {
  readonly known: 'length' | 'frames' | 'time';
  readonly lengthMetres: number;
  readonly frames: number;
  readonly runningSeconds: number;
  readonly gauge: GaugeId;
  readonly lengthRule: LengthRule;
  readonly filmFps: number;
}

function framesOf(entries: Entries): number {
  const { known, gauge, lengthRule, filmFps } = entries;
  if (known === 'frames') return entries.frames;
  if (known === 'time') return framesInSeconds(entries.runningSeconds, filmFps);
  return framesOnLength(entries.lengthMetres * 1000, gauge, lengthRule);
}

function ruleText(gauge: GaugeId, lengthRule: LengthRule): string {
  if (lengthRule === 'frames-per-foot') {
    return `counted at ${GAUGES[gauge].framesPerFoot.frames} frames to the foot`;
  }
  const step = exactStepByRule(gauge, lengthRule).valueOf();
  return `at ${formatQuantity(step, 'mm', 5)} to the frame`;
}

function ratesTable(frames: number): ResultTable {
  return {
    caption: 'Running time at the usual rates',
    columns: ['Film rate, frames/s', 'Running time'],
    rows: RATES.map(([name, rate]) => ({
      cells: [name, formatDuration(runningSeconds(frames, rate))],
    })),
  };
}

export const worksheet = defineWorksheet({
  id: 'film-length',
  title: 'Film length and running time',
  question: 'How many frames, feet, metres and minutes is this film?',
  chapter: 'reel/length',
  inputs: {
    known: {
      kind: 'choice',
      label: 'What you know',
      options: { length: 'the length', frames: 'the number of frames', time: 'the running time' },
      default: 'length',
      help: 'The other two are computed. Their own fields are then not used.',
    },
    lengthMetres: {
      kind: 'quantity',
      label: 'Length',
      unit: 'm',
      minimum: 0.01,
      maximum: 5000,
      default: '50 ft',
      accepted: '50 ft, 15 m or 4 ft 6 in',
      help: 'A bare number means metres. Used when the length is known.',
      bench: 'reel.lengthMetres',
    },
    frames: {
      kind: 'count',
      unit: 'frames',
      label: 'Frames',
      minimum: 1,
      maximum: 10_000_000,
      default: '3600',
      accepted: '3600',
      help: 'Used when the number of frames is known.',
    },
    runningSeconds: {
      kind: 'quantity',
      label: 'Running time',
      unit: 's',
      entryUnit: 'min',
      minimum: 0.04,
      maximum: 86_400,
      default: '3:20',
      accepted: '3:20, 3 min 20 s or 200 s',
      help: 'At the film rate below. A bare number means minutes. Used when the time is known.',
    },
    gauge: {
      kind: 'choice',
      label: 'Gauge',
      options: GAUGE_NAMES,
      default: 'super-8',
      help: 'The gauge finder helps when you are not sure.',
      bench: 'reel.gauge',
    },
    lengthRule: {
      kind: 'choice',
      label: 'Frames and length are tied',
      options: RULE_NAMES,
      default: 'frames-per-foot',
      help: 'Counters and tables count by the foot. For 9.5 mm the pitch gives 1 % more frames.',
    },
    filmFps: runningFpsInput,
  },
  model:
    'Frames are length divided by the length of one frame: 304.8 mm divided by the frames to the foot, or the pitch of new film. Running time is frames divided by film rate. Both are exact for new film; a film that has shrunk by one percent holds one percent more frames on the same length.',
  compute(entries) {
    const { gauge, lengthRule, filmFps } = entries;
    const frames = framesOf(entries);
    const millimetres = lengthMillimetresOf(frames, gauge, lengthRule);
    const seconds = runningSeconds(frames, filmFps);
    return {
      verdict: {
        level: 'note',
        sentence: `${formatQuantity(millimetres / 1000, 'm', 4)} of ${GAUGES[gauge].name} hold ${formatQuantity(frames, 'frames', 4)} and run ${formatDuration(seconds)} at ${formatQuantity(filmFps, 'fps', 4)}, ${ruleText(gauge, lengthRule)}.`,
      },
      answers: {
        frames: quantityAnswer('Frames', frames, 'frames', 4),
        lengthMetres: quantityAnswer('Length', millimetres / 1000, 'm', 4),
        lengthFeet: quantityAnswer('Length in feet', millimetres / 304.8, 'ft', 4),
        runningSeconds: durationAnswer('Running time', seconds),
        speedMillimetresPerSecond: quantityAnswer(
          'Film speed',
          filmSpeedMillimetresPerSecond(filmFps, gauge, lengthRule),
          'mmPerSecond',
          4,
        ),
        ruleDifferencePercent: quantityAnswer(
          'More frames by the long pitch than by the foot',
          conventionDifferencePercent(gauge),
          'percent',
          3,
          { note: 'This is how far two tables can differ that do not say how they count.' },
        ),
      },
      tables: [ratesTable(frames)],
    };
  },
  working(entries, { answers }) {
    const { known, gauge, lengthRule, filmFps } = entries;
    const text = (key: string): string => answers[key]?.text ?? '';
    const step = exactStepByRule(gauge, lengthRule).valueOf();
    const stepText = formatQuantity(step, 'mm', 6);
    const rate = formatQuantity(filmFps, 'fps', 5);
    const { frames: perFoot } = GAUGES[gauge].framesPerFoot;
    const stepSum =
      lengthRule === 'frames-per-foot'
        ? {
            words: 'A foot of film is shared among its frames.',
            sum: `304.8 mm ÷ ${perFoot} = ${stepText}`,
          }
        : { words: 'The standard’s pitch gives the length of one frame.', sum: stepText };
    const toTime: WorkingStep = {
      words: 'Frames divided by film rate give the running time.',
      sum: `${text('frames')} ÷ ${rate} = ${text('runningSeconds')}`,
    };
    const toLength: WorkingStep = {
      words: 'Frames times the length of one frame give the length.',
      sum: `${text('frames')} × ${stepText} = ${text('lengthMetres')}`,
    };
    if (known === 'length') {
      const given = formatQuantity(entries.lengthMetres * 1000, 'mm', 6);
      return [
        stepSum,
        {
          words: 'Length divided by the length of one frame gives the frames.',
          sum: `${given} ÷ ${stepText} = ${text('frames')}`,
        },
        toTime,
      ];
    }
    if (known === 'frames') return [stepSum, toLength, toTime];
    return [
      {
        words: 'Running time times film rate gives the frames.',
        sum: `${formatNumber(entries.runningSeconds, 6)} s × ${rate} = ${text('frames')}`,
      },
      stepSum,
      toLength,
    ];
  },
  cautions: [
    'Leader, splices and missing frames are part of the length: a counted table is no promise of picture.',
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
