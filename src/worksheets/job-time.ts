import { jobTime, workingDays, type JobTime } from '../core/job-time.ts';
import { formatDuration, formatNumber, formatQuantity } from '../core/quantity/format.ts';
import { durationAnswer, quantityAnswer } from './answers.ts';
import type { CurveData } from './picture-data.ts';
import { defineWorksheet, type Answer } from './types.ts';

interface Entries {
  readonly reelCount: number;
  readonly framesPerReel: number;
  readonly filmFps: number;
  readonly singleFps: number;
  readonly handlingSeconds: number;
  readonly afterWorkSeconds: number;
  readonly repeatPercent: number;
  readonly hoursPerDay: number;
}

function timesOf(entries: Entries): { readonly realTime: JobTime; readonly single: JobTime } {
  const parts = {
    reelCount: entries.reelCount,
    framesPerReel: entries.framesPerReel,
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
  const hoursAt = (frames: number, way: 'realTime' | 'single'): number =>
    timesOf({ ...entries, framesPerReel: frames })[way].reelSeconds / 3600;
  const minutesAt = (frames: number): number => frames / entries.filmFps / 60;
  const ends = [1, 2 * entries.framesPerReel];
  const line = (label: string, way: 'realTime' | 'single'): CurveData['curves'][number] => ({
    label,
    points: ends.map((frames) => ({ x: minutesAt(frames), y: hoursAt(frames, way) })),
  });
  const own = timesOf(entries);
  return {
    name: 'curve',
    alternative: `One reel as long as yours takes ${planText(own.realTime.reelSeconds)} filmed as it runs and ${planText(own.single.reelSeconds)} one frame at a time. Both grow with the length of the reel and begin at the same handling and after-work.`,
    xLabel: 'minutes that one reel runs',
    yLabel: 'hours for one reel, all in',
    curves: [line('one frame at a time', 'single'), line('filmed as it runs', 'realTime')],
    marks: [{ x: minutesAt(entries.framesPerReel), label: 'your reel' }],
  };
}

export const worksheet = defineWorksheet({
  id: 'job-time',
  title: 'Time for a job',
  question: 'How long does this job take, and how long would it take one frame at a time?',
  chapter: 'customer/time-and-quotation',
  inputs: {
    reelCount: {
      kind: 'count',
      label: 'Reels',
      minimum: 1,
      maximum: 10_000,
      default: '20',
      accepted: '20',
      help: 'Equal reels; compute a job of two sizes in two parts.',
    },
    framesPerReel: {
      kind: 'count',
      unit: 'frames',
      label: 'Film frames on one reel',
      minimum: 1,
      maximum: 1_000_000,
      default: '3600',
      accepted: '3600',
      help: 'A 50 ft reel of Super 8 has 3600, of 8 mm type R 4000. The length worksheet gives others.',
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
    handlingSeconds: {
      kind: 'quantity',
      label: 'Handling of one reel',
      unit: 's',
      entryUnit: 'min',
      minimum: 0,
      maximum: 86_400,
      default: '15',
      accepted: '15, 15 min or 1 h',
      help: 'Inspect, clean, mend, thread, rewind. Time yourself on five reels. A bare number means minutes.',
    },
    afterWorkSeconds: {
      kind: 'quantity',
      label: 'After-work for one reel',
      unit: 's',
      entryUnit: 'min',
      minimum: 0,
      maximum: 86_400,
      default: '20',
      accepted: '20, 20 min or 1 h',
      help: 'Whole frames, retiming, sound, checks, copies: the part in which you sit there.',
    },
    repeatPercent: {
      kind: 'quantity',
      label: 'Reels that must be run again',
      unit: 'percent',
      minimum: 0,
      maximum: 100,
      default: '10',
      accepted: '10 or 5 %',
      help: 'Lost loops, wrong exposure, dirt. Count them for a month.',
    },
    hoursPerDay: {
      kind: 'quantity',
      label: 'Hours a day on the job',
      unit: 'h',
      minimum: 0.25,
      maximum: 24,
      default: '5',
      accepted: '5, 7.5 or 90 min',
      help: 'What remains after post, telephone and tea.',
    },
  },
  model:
    'Reels × (handling + run) × (1 + repeats) + reels × after-work, all reels equal. Days are begun days. One frame at a time is reckoned with the same handling and after-work; a machine that may run alone needs fewer days of yours than it needs itself.',
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
    const { reelCount, framesPerReel, filmFps, repeatPercent, hoursPerDay } = entries;
    const handling = formatDuration(entries.handlingSeconds);
    const afterWork = formatDuration(entries.afterWorkSeconds);
    const total = (run: string): string =>
      `${reelCount} × (${handling} + ${run}) × (1 + ${formatNumber(repeatPercent)} %) + ${reelCount} × ${afterWork}`;
    return [
      {
        words: 'Frames divided by film rate: the run of one reel.',
        sum: `${framesPerReel} ÷ ${formatQuantity(filmFps, 'fps', 5)} = ${text('runSeconds')}`,
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
    'Promise the day after the one you reckon.',
  ],
  sources: ['arithmetic', 'common-practice'],
});
