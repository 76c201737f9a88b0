import { requireInterval } from '../../../quantity/errors.ts';
import { framesOnLength } from '../../../core/reel/film-length.ts';
import { exactFrameStep, GAUGE_NAMES } from '../../../core/reel/gauges.ts';
import type { GaugeId } from '../../../core/reel/gauges/gauge.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import {
  compareTimings,
  stopwatchRate,
  timingErrorPercent,
  timingSecondsFor,
} from '../../../core/gate/stopwatch.ts';
import { durationAnswer, quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import { defineWorksheet, type Answer } from '../../machine/types.ts';

/** Error that is small enough to set an exposure time by, %. Common practice, no source. */
const WANTED_ERROR_PERCENT = 0.5;

interface CountEntries {
  readonly countedBy: 'frames' | 'length';
  readonly frames: number;
  readonly lengthMillimetres: number;
  readonly gauge: GaugeId;
}

function framesCounted(entries: CountEntries): number {
  if (entries.countedBy === 'frames') return entries.frames;
  const counted = framesOnLength(entries.lengthMillimetres, entries.gauge, 'long-pitch');
  // A frame or two is no stretch of film to time; say so at the length.
  requireInterval('lengthMillimetres', counted, { minimum: 2, unit: 'frames of film in it' });
  return counted;
}

export const worksheet = defineWorksheet({
  id: 'stopwatch',
  title: 'Film rate from a stopwatch',
  question: 'How fast does the film run, timed over a counted stretch?',
  chapter: 'gate/measuring-speed',
  inputs: {
    countedBy: {
      kind: 'choice',
      label: 'The stretch is known as',
      options: { frames: 'a number of frames', length: 'a length of film' },
      default: 'frames',
      help: 'Mark a leader at both ends of the stretch so that each mark is seen or heard as it passes the gate.',
    },
    frames: {
      kind: 'count',
      unit: 'frames',
      label: 'Frames between the marks',
      minimum: 10,
      maximum: 1_000_000,
      default: '1200',
      accepted: '1200',
      help: 'From mark to mark. Used when the stretch is known in frames.',
    },
    lengthMillimetres: {
      kind: 'quantity',
      label: 'Length between the marks',
      unit: 'mm',
      entryUnit: 'm',
      minimum: 50,
      maximum: 1_000_000,
      default: '5',
      accepted: '5 m, 50 ft or 120 in',
      help: 'Used when the stretch is known as a length.',
    },
    gauge: {
      kind: 'choice',
      label: 'Gauge',
      options: GAUGE_NAMES,
      default: 'super-8',
      help: 'Gives the length of one frame. Used when the stretch is known as a length.',
      bench: 'reel.gauge',
    },
    timedSeconds: {
      kind: 'quantity',
      label: 'Time on the stopwatch',
      unit: 's',
      minimum: 0.5,
      maximum: 36_000,
      default: '66.4',
      accepted: '66.4 s or 1:06.4',
      help: 'From the first mark to the last, on the warm machine.',
    },
    secondTimedSeconds: {
      kind: 'optional-quantity',
      label: 'Second timing of the same stretch',
      unit: 's',
      minimum: 0.5,
      maximum: 36_000,
      default: '',
      accepted: '66.7 s or 1:06.7',
      help: 'A second run shows whether the speed holds; the mean of both times is then used. Leave it empty if there is none.',
    },
    reactionSeconds: {
      kind: 'quantity',
      label: 'Largest error of one press',
      unit: 's',
      minimum: 0,
      maximum: 5,
      default: '0.2',
      accepted: '0.2 s or 200 ms',
      help: 'About 0.2 s by eye and thumb (from memory, unverified). About 0.02 s when you read the times off a recording at 50 frames/s.',
    },
    countErrorFrames: {
      kind: 'quantity',
      label: 'Error of the count',
      unit: 'frames',
      minimum: 0,
      maximum: 1000,
      default: '1',
      accepted: '1 or 0',
      help: 'How many frames the count may be out.',
    },
  },
  model:
    'Film rate is frames divided by time. The bounds take the worst case: both presses and the count err in the direction that hurts most. A length is turned into frames by the pitch of new film of that gauge; on shrunken film the same length holds more frames, by the shrinkage in per cent.',
  compute(inputs) {
    const { timedSeconds, secondTimedSeconds, reactionSeconds, countErrorFrames } = inputs;
    const counted = framesCounted(inputs);
    const two =
      secondTimedSeconds === undefined
        ? undefined
        : compareTimings(timedSeconds, secondTimedSeconds, reactionSeconds);
    const seconds = two?.meanSeconds ?? timedSeconds;
    requireInterval('timedSeconds', seconds, { above: 2 * reactionSeconds, unit: 's' });
    const rate = stopwatchRate(counted, seconds, reactionSeconds, countErrorFrames);
    const errorFps = Math.max(rate.highestFps - rate.filmFps, rate.filmFps - rate.lowestFps);
    const errorPercent = (errorFps / rate.filmFps) * 100;
    const answers: Record<string, Answer> = {
      filmFps: quantityAnswer('Film rate', rate.filmFps, 'fps', 4),
      lowestFps: quantityAnswer('At least', rate.lowestFps, 'fps', 4),
      highestFps: quantityAnswer('At most', rate.highestFps, 'fps', 4),
      errorPercent: quantityAnswer('Give or take', errorPercent, 'percent', 2),
      timingErrorPercent: quantityAnswer(
        'Of it from the presses',
        timingErrorPercent(seconds, reactionSeconds),
        'percent',
        2,
      ),
      enoughSeconds: durationAnswer(
        `Time to run for ${WANTED_ERROR_PERCENT} %`,
        timingSecondsFor(reactionSeconds, WANTED_ERROR_PERCENT),
        { note: 'Counting the presses alone.' },
      ),
    };
    if (two !== undefined) {
      answers['agreement'] = wordsAnswer(
        'The two timings',
        two.isSpeedChange
          ? `differ by ${formatQuantity(Math.abs(two.differenceSeconds), 's', 3)}: the speed changed`
          : 'agree within the presses',
        { level: two.isSpeedChange ? 'care' : 'good' },
      );
    }
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
      answers,
    };
  },
  working(inputs, { answers }) {
    const { timedSeconds, secondTimedSeconds, reactionSeconds, countErrorFrames } = inputs;
    const counted = framesCounted(inputs);
    const seconds =
      secondTimedSeconds === undefined ? timedSeconds : (timedSeconds + secondTimedSeconds) / 2;
    const frames = formatNumber(counted, 6);
    const time = formatQuantity(seconds, 's', 5);
    const length =
      inputs.countedBy === 'length'
        ? [
            {
              words: 'Length divided by the length of one frame gives the frames.',
              sum: `${formatQuantity(inputs.lengthMillimetres, 'mm', 6)} ÷ ${formatQuantity(exactFrameStep(inputs.gauge, 'long').valueOf(), 'mm', 5)} = ${frames}`,
            },
          ]
        : [];
    const mean =
      secondTimedSeconds === undefined
        ? []
        : [
            {
              words: 'The mean of the two times is used.',
              sum: `(${formatQuantity(timedSeconds, 's', 5)} + ${formatQuantity(secondTimedSeconds, 's', 5)}) ÷ 2 = ${time}`,
            },
          ];
    return [
      ...length,
      ...mean,
      {
        words: 'Frames divided by time gives the film rate.',
        sum: `${frames} ÷ ${time} = ${answers['filmFps']?.text ?? ''}`,
      },
      {
        words: 'At worst both presses and the count err the same harmful way.',
        sum: `(${frames} − ${formatNumber(countErrorFrames, 4)}) ÷ (${time} + 2 × ${formatQuantity(reactionSeconds, 's', 3)}) = ${answers['lowestFps']?.text ?? ''}`,
      },
    ];
  },
  cautions: ['Use a leader or a film that is already lost for timing, not the customer’s reel.'],
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
