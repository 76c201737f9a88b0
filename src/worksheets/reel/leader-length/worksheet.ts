import { runningSeconds } from '../../../core/reel/film-length.ts';
import { frameStepMillimetres, GAUGE_NAMES } from '../../../core/reel/gauges.ts';
import { leaderParts } from '../../../core/reel/leader-length.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { duration, quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import { runningFpsInput } from '../../machine/film-inputs.ts';
import type { InputSpecs } from '../../machine/types.ts';

/** Longer than the path of any small-gauge machine that this book knows of, mm; practice. */
const LONGEST_PATH_MILLIMETRES = 2000;

const seconds = (label: string, preset: string, help: string) =>
  ({
    kind: 'quantity',
    label,
    unit: 's',
    minimum: 0,
    maximum: 60,
    default: preset,
    accepted: `${preset} or ${preset} s`,
    help,
  }) as const;

const inputs = {
  gauge: {
    kind: 'choice',
    label: 'Gauge',
    options: GAUGE_NAMES,
    default: 'super-8',
    help: 'Gives the length of a frame.',
    bench: 'reel.gauge',
  },
  filmFps: runningFpsInput,
  pathMillimetres: {
    kind: 'optional-quantity',
    label: 'Path through the machine',
    unit: 'mm',
    entryUnit: 'm',
    minimum: 100,
    maximum: 5000,
    default: '',
    accepted: '0.9 or 3 ft',
    help: 'A string laid through the threaded path, from the edge of the full feed reel to the take-up hub. Empty: not measured, and two metres are assumed.',
  },
  hubDiameterMillimetres: {
    kind: 'quantity',
    label: 'Hub of the take-up reel, across',
    unit: 'mm',
    minimum: 10,
    maximum: 300,
    default: '32',
    accepted: '32 or 1.25 in',
    help: 'Three turns lie on it before the motor starts.',
  },
  runUpSeconds: seconds(
    'Time until the machine runs steadily',
    '5',
    'With a stopwatch, from the switch to an even sound. Warm machines are quicker.',
  ),
  markSeconds: seconds(
    'Test pieces in the leader',
    '3',
    'Clear, pattern and black together, in seconds of run.',
  ),
  leaderMillimetres: {
    kind: 'quantity',
    label: 'Leader on the reel',
    unit: 'mm',
    entryUnit: 'm',
    minimum: 0,
    maximum: 50_000,
    default: '3',
    accepted: '3 or 10 ft',
    help: 'From its end to the first picture. A large library asks for 3 m, 10 ft, at each end.',
  },
} as const satisfies InputSpecs;

/** Metres that cover a need, rounded up to what a hand can measure off. */
const roundedUp = (millimetres: number): string =>
  formatQuantity(Math.ceil(millimetres / 100 - 1e-9) / 10, 'm');

export const worksheet = defineWorksheet({
  id: 'leader-length',
  title: 'Leader needed',
  question: 'How much leader must be in front of the first picture?',
  chapter: 'gate/run-the-reel',
  inputs,
  model:
    'The leader reaches through the machine, goes three times round the take-up hub, and runs until the machine is steady and the test pieces have passed. The frame step is that of new film. The tail needs only the path and a second of black, so a tail as long as the head is enough.',
  answers: {
    neededMetres: 'Leader needed at the head',
    pathMetres: 'Through the machine',
    turnsMetres: 'Three turns on the hub',
    runUpMetres: 'Until it runs steadily',
    marksMetres: 'Test pieces',
    leaderFrames: 'Frames on the present leader',
    leaderSeconds: 'The present leader runs for',
  },
  find({ gauge, pathMillimetres, leaderMillimetres, ...values }) {
    const stepMillimetres = frameStepMillimetres(gauge, 'long');
    const frames = leaderMillimetres / stepMillimetres;
    return {
      stepMillimetres,
      parts: leaderParts({
        ...values,
        stepMillimetres,
        pathMillimetres: pathMillimetres ?? LONGEST_PATH_MILLIMETRES,
      }),
      frames,
      seconds: runningSeconds(frames, values.filmFps),
    };
  },
  outcome({ parts, frames, seconds: runs }, { leaderMillimetres, pathMillimetres }) {
    const needed = parts.totalMillimetres;
    const isEnough = leaderMillimetres >= needed - 1e-6;
    const assumed =
      pathMillimetres === undefined ? ' The path was not measured: two metres are assumed.' : '';
    return {
      verdict: isEnough
        ? {
            level: 'good',
            sentence: `${formatQuantity(leaderMillimetres / 1000, 'm')} is enough; ${formatQuantity(needed / 1000, 'm')} is needed.${assumed}`,
          }
        : {
            level: 'stop',
            sentence: `Too short: a picture would be threaded, or would pass before the machine is steady. Put on ${roundedUp(needed)} in all.${assumed}`,
          },
      answers: {
        neededMetres: quantity(needed / 1000, 'm', 3, { level: isEnough ? 'good' : 'stop' }),
        pathMetres: quantity(parts.pathMillimetres / 1000, 'm', 3, {
          note: pathMillimetres === undefined ? 'Not measured: assumed.' : 'As measured.',
        }),
        turnsMetres: quantity(parts.turnsMillimetres / 1000, 'm'),
        runUpMetres: quantity(parts.runUpMillimetres / 1000, 'm'),
        marksMetres: quantity(parts.marksMillimetres / 1000, 'm'),
        leaderFrames: quantity(frames, 'frames', 3),
        leaderSeconds: duration(runs),
      },
    };
  },
  working({ stepMillimetres }, told, values) {
    const speed = `${formatNumber(values.filmFps, 4)} × ${formatQuantity(stepMillimetres, 'mm', 4)}`;
    return [
      {
        words: 'Three turns on the hub.',
        sum: `3 × π × ${formatQuantity(values.hubDiameterMillimetres, 'mm')} = ${told('turnsMetres')}`,
      },
      {
        words: 'Run-up and test pieces: seconds times film rate times frame step.',
        sum: `${formatNumber(values.runUpSeconds)} × ${speed} = ${told('runUpMetres')}; ${formatNumber(values.markSeconds)} × ${speed} = ${told('marksMetres')}`,
      },
      {
        words: 'All together.',
        sum: `${told('pathMetres')} + ${told('turnsMetres')} + ${told('runUpMetres')} + ${told('marksMetres')} = ${told('neededMetres')}`,
      },
    ];
  },
  cautions: [
    'Thread with the motor and the lamp off. Lay the string through a cold machine with the plug pulled.',
  ],
  sources: ['arithmetic', 'nypl-ami-film-2020', 'common-practice'],
});
