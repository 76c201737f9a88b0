import { framesOnLength } from '../../../core/reel/film-length.ts';
import type { GaugeId } from '../../../core/reel/gauges/gauge.ts';
import { jobTime, workingDays, type JobTime } from '../../../core/customer/job-time.ts';
import { formatDuration, formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { durationAnswer, quantityAnswer } from '../../machine/labelled-answers.ts';
import {
  afterWorkInput,
  handlingInput,
  hoursPerDayInput,
  reelCountInput,
  reelGaugeInput,
  reelLengthInput,
  repeatPercentInput,
} from '../job-inputs.ts';
import type { CurveData } from '../../machine/picture-data.ts';
import { defineWorksheet, type Answer } from '../../machine/types.ts';

interface Entries {
  readonly reelCount: number;
  readonly gauge: GaugeId;
  readonly lengthMetres: number;
  readonly framesPerReel: number | undefined;
  readonly filmFps: number;
  readonly singleFps: number;
  readonly handlingSeconds: number;
  readonly afterWorkSeconds: number;
  readonly repeatPercent: number;
  readonly hoursPerDay: number;
}

/** Frames as counted, or those on the length of the reel. */
function framesOf({ framesPerReel, gauge, lengthMetres }: Entries): number {
  return framesPerReel ?? framesOnLength(lengthMetres * 1000, gauge, 'frames-per-foot');
}

function timesOf(entries: Entries): { readonly realTime: JobTime; readonly single: JobTime } {
  const parts = {
    reelCount: entries.reelCount,
    framesPerReel: framesOf(entries),
    handlingSeconds: entries.handlingSeconds,
    afterWorkSeconds: entries.afterWorkSeconds,
    repeatPercent: entries.repeatPercent,
  };
  return {
    realTime: jobTime({ ...parts, framesPerSecond: entries.filmFps }),
    single: jobTime({ ...parts, framesPerSecond: entries.singleFps }),
  };
}

/** A plan is good to the minute; only runs of a few minutes are told in seconds. */
const SHORTEST_IN_MINUTES = 600;

const plannedSeconds = (seconds: number): number =>
  seconds < SHORTEST_IN_MINUTES ? seconds : Math.round(seconds / 60) * 60;

const planAnswer = (label: string, seconds: number): Answer => ({
  ...durationAnswer(label, plannedSeconds(seconds)),
  value: seconds,
});

const planText = (seconds: number): string => formatDuration(plannedSeconds(seconds));

const daysText = (days: number): string => `${formatNumber(days)} ${days === 1 ? 'day' : 'days'}`;

/** Hours of your day for one reel, from a reel of one frame to one twice as long as the reader's. */
function reelHoursPicture(entries: Entries): CurveData {
  const hoursAt = (count: number, way: 'realTime' | 'single'): number =>
    timesOf({ ...entries, framesPerReel: count })[way].reelSeconds / 3600;
  const minutesAt = (count: number): number => count / entries.filmFps / 60;
  const frames = framesOf(entries);
  const ends = [1, 2 * frames];
  const line = (label: string, way: 'realTime' | 'single'): CurveData['curves'][number] => ({
    label,
    points: ends.map((end) => ({ x: minutesAt(end), y: hoursAt(end, way) })),
  });
  const own = timesOf(entries);
  return {
    name: 'curve',
    alternative: `One reel as long as yours takes ${planText(own.realTime.reelSeconds)} filmed as it runs and ${planText(own.single.reelSeconds)} one frame at a time. Both grow with the length of the reel and begin at the same handling and after-work.`,
    xLabel: 'minutes that one reel runs',
    yLabel: 'hours for one reel, all in',
    curves: [line('one frame at a time', 'single'), line('filmed as it runs', 'realTime')],
    marks: [{ x: minutesAt(frames), label: 'your reel' }],
  };
}

export const worksheet = defineWorksheet({
  id: 'job-time',
  title: 'Time for a job',
  question: 'How long does this job take, and how long would it take one frame at a time?',
  chapter: 'customer/time-and-quotation',
  inputs: {
    reelCount: reelCountInput,
    gauge: reelGaugeInput,
    lengthMetres: reelLengthInput,
    framesPerReel: {
      kind: 'optional-quantity',
      label: 'Film frames on one reel',
      unit: 'frames',
      minimum: 1,
      maximum: 1_000_000,
      default: '',
      accepted: '3600 or 14 400',
      help: 'If you counted them. Empty: from gauge and length.',
    },
    filmFps: {
      kind: 'quantity',
      label: 'Film rate',
      unit: 'fps',
      minimum: 1,
      maximum: 60,
      default: '18',
      accepted: '18, 16 2/3 or 24',
      help: 'Frames per second while the film is filmed.',
      bench: 'projector.filmFps',
    },
    singleFps: {
      kind: 'quantity',
      label: 'Rate of a machine that stops on every frame',
      unit: 'fps',
      minimum: 0.01,
      maximum: 60,
      default: '2',
      accepted: '2, 0.5 or 1/3',
      help: 'For comparison: frames per second that such a machine takes.',
    },
    handlingSeconds: handlingInput,
    afterWorkSeconds: afterWorkInput,
    repeatPercent: repeatPercentInput,
    hoursPerDay: hoursPerDayInput,
  },
  model:
    'Reels × (handling + run) × (1 + repeats) + reels × after-work, all reels equal. Frames come from the length by the foot unless they are typed. Days are begun days. One frame at a time is worked out with the same handling and after-work; a machine that may run alone needs fewer days of yours than it needs itself.',
  compute(entries) {
    const { realTime, single } = timesOf(entries);
    const days = workingDays(realTime.totalSeconds, entries.hoursPerDay);
    const singleDays = workingDays(single.totalSeconds, entries.hoursPerDay);
    return {
      verdict: {
        level: 'note',
        sentence: `The job takes ${planText(realTime.totalSeconds)}, ${daysText(days)}; one frame at a time it would be ${planText(single.totalSeconds)}, ${daysText(singleDays)}.`,
      },
      answers: {
        totalSeconds: planAnswer('Whole job', realTime.totalSeconds),
        days: quantityAnswer('Working days', days, 'one'),
        reelSeconds: planAnswer('One reel, all in', realTime.reelSeconds),
        frames: quantityAnswer(
          'Film frames on one reel',
          Math.round(framesOf(entries)),
          'frames',
          6,
        ),
        runSeconds: planAnswer('One reel, run only', realTime.runSeconds),
        handsOnSeconds: planAnswer(
          'Hands-on part of the job',
          realTime.totalSeconds - realTime.watchSeconds,
        ),
        singleRunSeconds: planAnswer('One frame at a time: one reel', single.runSeconds),
        singleTotalSeconds: planAnswer('One frame at a time: whole job', single.totalSeconds),
        singleDays: quantityAnswer('One frame at a time: days', singleDays, 'one'),
        ratio: quantityAnswer(
          'Times as long, one frame at a time',
          single.totalSeconds / realTime.totalSeconds,
          'one',
        ),
      },
      pictures: [reelHoursPicture(entries)],
    };
  },
  working(entries, { answers }) {
    const text = (key: string): string => answers[key]?.text ?? '';
    const { reelCount, filmFps, repeatPercent, hoursPerDay } = entries;
    const handling = formatDuration(entries.handlingSeconds);
    const afterWork = formatDuration(entries.afterWorkSeconds);
    const total = (run: string): string =>
      `${reelCount} × (${handling} + ${run}) × (1 + ${formatNumber(repeatPercent)} %) + ${reelCount} × ${afterWork}`;
    return [
      {
        words: 'Frames divided by film rate: the run of one reel.',
        sum: `${text('frames')} ÷ ${formatQuantity(filmFps, 'fps', 5)} = ${text('runSeconds')}`,
      },
      {
        words: 'Handling and run for every reel and every repeat, after-work once for each reel.',
        sum: `${total(text('runSeconds'))} = ${text('totalSeconds')}`,
      },
      {
        words: 'Divided by the hours of a day, rounded up.',
        sum: `${text('totalSeconds')} ÷ ${formatQuantity(hoursPerDay, 'h')} → ${text('days')}`,
      },
      {
        words: 'The same with the machine that stops on every frame.',
        sum: `${total(text('singleRunSeconds'))} = ${text('singleTotalSeconds')}`,
      },
    ];
  },
  cautions: [
    'Never leave a projector running alone: a film that stops in the light may burn, and a reel that jams tears.',
    'Promise a later day than the sum gives: it knows nothing of repairs, the queue or illness.',
  ],
  sources: ['arithmetic', 'common-practice'],
});
