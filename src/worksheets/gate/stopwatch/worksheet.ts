import { requireInterval } from '../../../quantity/errors.ts';
import { framesOnLength } from '../../../core/reel/film-length.ts';
import { exactFrameStep } from '../../../core/reel/gauges.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import {
  compareTimings,
  stopwatchRate,
  timingErrorPercent,
  timingSecondsFor,
} from '../../../core/gate/stopwatch.ts';
import { duration, quantity, words } from '../../machine/answers.ts';
import { defineWorksheet, type AnswerBody } from '../../machine/define-worksheet.ts';
import type { ValuesOf } from '../../machine/types.ts';
import { inputs } from './inputs.ts';

type Values = ValuesOf<typeof inputs>;
type Found = ReturnType<typeof findRate>;

/** Error that is small enough to set an exposure time by, %. Common practice, no source. */
const WANTED_ERROR_PERCENT = 0.5;

function framesCounted({ countedBy, frames, lengthMillimetres, gauge }: Values): number {
  if (countedBy === 'frames') return frames;
  const counted = framesOnLength(lengthMillimetres, gauge, 'long-pitch');
  // A frame or two is no stretch of film to time; say so at the length.
  requireInterval('lengthMillimetres', counted, { minimum: 2, unit: 'frames of film in it' });
  return counted;
}

function findRate(values: Values) {
  const { timedSeconds, secondTimedSeconds, reactionSeconds, countErrorFrames } = values;
  const counted = framesCounted(values);
  const two =
    secondTimedSeconds === undefined
      ? undefined
      : {
          secondSeconds: secondTimedSeconds,
          ...compareTimings(timedSeconds, secondTimedSeconds, reactionSeconds),
        };
  const seconds = two?.meanSeconds ?? timedSeconds;
  requireInterval('timedSeconds', seconds, { above: 2 * reactionSeconds, unit: 's' });
  const rate = stopwatchRate(counted, seconds, reactionSeconds, countErrorFrames);
  const errorFps = Math.max(rate.highestFps - rate.filmFps, rate.filmFps - rate.lowestFps);
  return {
    counted,
    two,
    seconds,
    rate,
    errorPercent: (errorFps / rate.filmFps) * 100,
    pressesPercent: timingErrorPercent(seconds, reactionSeconds),
    enoughSeconds: timingSecondsFor(reactionSeconds, WANTED_ERROR_PERCENT),
  };
}

function agreement({ isSpeedChange, differenceSeconds }: NonNullable<Found['two']>): AnswerBody {
  return isSpeedChange
    ? words(`differ by ${formatQuantity(Math.abs(differenceSeconds), 's', 3)}: the speed changed`, {
        level: 'care',
      })
    : words('agree within the presses', { level: 'good' });
}

export const worksheet = defineWorksheet({
  id: 'stopwatch',
  title: 'Film rate from a stopwatch',
  question: 'How fast does the film run, timed over a counted stretch?',
  chapter: 'gate/measuring-speed',
  inputs,
  model:
    'Film rate is frames divided by time. The bounds take the worst case: both presses and the count err in the same, harmful direction. A length is turned into frames by the pitch of new film of that gauge; on shrunken film the same length holds more frames, by as many per cent as it has shrunk.',
  answers: {
    filmFps: 'Film rate',
    lowestFps: 'At least',
    highestFps: 'At most',
    errorPercent: 'Give or take',
    timingErrorPercent: 'Share of that from the two presses',
    enoughSeconds: `Time needed for ±${WANTED_ERROR_PERCENT} %`,
    agreement: 'The two timings',
  },
  find: findRate,
  outcome({ two, rate, errorPercent, pressesPercent, enoughSeconds }) {
    const measured = `The film runs at ${formatQuantity(rate.filmFps, 'fps', 4)}, give or take ${formatQuantity(errorPercent, 'percent', 2)}`;
    const isSure = errorPercent <= WANTED_ERROR_PERCENT * 1.000001;
    const sentence =
      two?.isSpeedChange === true
        ? `${measured} on average, but the two runs differ by more than the presses explain: the speed does not hold.`
        : isSure
          ? `${measured}.`
          : `${measured}; time a longer stretch to know it better.`;
    return {
      verdict: { level: two?.isSpeedChange === true || !isSure ? 'care' : 'good', sentence },
      answers: {
        filmFps: quantity(rate.filmFps, 'fps', 4),
        lowestFps: quantity(rate.lowestFps, 'fps', 4),
        highestFps: quantity(rate.highestFps, 'fps', 4),
        errorPercent: quantity(errorPercent, 'percent', 2),
        timingErrorPercent: quantity(pressesPercent, 'percent', 2),
        enoughSeconds: duration(enoughSeconds, { note: 'Counting the presses alone.' }),
        ...(two === undefined ? {} : { agreement: agreement(two) }),
      },
    };
  },
  working({ counted, two, seconds }, told, values) {
    const frames = formatNumber(counted, 6);
    const time = formatQuantity(seconds, 's', 5);
    const length =
      values.countedBy === 'length'
        ? [
            {
              words: 'Length divided by the length of one frame gives the frames.',
              sum: `${formatQuantity(values.lengthMillimetres, 'mm', 6)} ÷ ${formatQuantity(exactFrameStep(values.gauge, 'long').valueOf(), 'mm', 5)} = ${frames}`,
            },
          ]
        : [];
    const mean =
      two === undefined
        ? []
        : [
            {
              words: 'The mean of the two times is used.',
              sum: `(${formatQuantity(values.timedSeconds, 's', 5)} + ${formatQuantity(two.secondSeconds, 's', 5)}) ÷ 2 = ${time}`,
            },
          ];
    return [
      ...length,
      ...mean,
      {
        words: 'Frames divided by time gives the film rate.',
        sum: `${frames} ÷ ${time} = ${told('filmFps')}`,
      },
      {
        words: 'At worst both presses and the count err the same harmful way.',
        sum: `(${frames} − ${formatNumber(values.countErrorFrames, 4)}) ÷ (${time} + 2 × ${formatQuantity(values.reactionSeconds, 's', 3)}) = ${told('lowestFps')}`,
      },
    ];
  },
  cautions: ['Time a leader or a film that is already lost, never the customer’s reel.'],
  sources: [
    'arithmetic',
    'from-memory',
    'smpte-149-2004',
    'smpte-239-2004',
    'asa-z22-5-1947',
    'pritchard-glossary',
    'de-encyclopaedia-filmschritt',
  ],
});
