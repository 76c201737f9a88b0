import { formatDuration, formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { duration, quantity } from '../../machine/answers.ts';
import { defineWorksheet, type AnswerBody } from '../../machine/define-worksheet.ts';
import type { CurveData } from '../../machine/picture-data.ts';
import { inputs } from './inputs.ts';
import { jobTimes, type BothWays, type JobTimes } from './job-times.ts';

/** A plan is good to the minute; only runs of a few minutes are told in seconds. */
const SHORTEST_IN_MINUTES = 600;

const plannedSeconds = (seconds: number): number =>
  seconds < SHORTEST_IN_MINUTES ? seconds : Math.round(seconds / 60) * 60;

const plan = (seconds: number): AnswerBody => ({
  ...duration(plannedSeconds(seconds)),
  value: seconds,
});

const planText = (seconds: number): string => formatDuration(plannedSeconds(seconds));

const daysText = (days: number): string => `${formatNumber(days)} ${days === 1 ? 'day' : 'days'}`;

/** Hours of your day for one reel, from a reel of one frame to one twice as long as the reader's. */
function reelHoursPicture({ frames, own, ends }: JobTimes, filmFps: number): CurveData {
  const minutesAt = (count: number): number => count / filmFps / 60;
  const line = (label: string, way: keyof BothWays): CurveData['curves'][number] => ({
    label,
    points: ends.map((end) => ({ x: minutesAt(end.frames), y: end[way].reelSeconds / 3600 })),
  });
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
  inputs,
  model:
    'Reels × (handling + run) × (1 + repeats) + reels × after-work, all reels equal. Frames come from the length by the foot unless they are typed. A day begun counts as a whole day. One frame at a time is worked out with the same handling and after-work; a machine that may run alone needs fewer days of yours than it needs itself.',
  answers: {
    totalSeconds: 'Whole job',
    days: 'Working days',
    reelSeconds: 'One reel, all in',
    frames: 'Film frames on one reel',
    runSeconds: 'One reel, run only',
    handsOnSeconds: 'Hands-on part of the job',
    singleRunSeconds: 'One frame at a time: one reel',
    singleTotalSeconds: 'One frame at a time: whole job',
    singleDays: 'One frame at a time: days',
    ratio: 'Times as long, one frame at a time',
  },
  find: jobTimes,
  outcome(found, { filmFps }) {
    const { frames, days, singleDays } = found;
    const { realTime, single } = found.own;
    return {
      verdict: {
        level: 'note',
        sentence: `The job takes ${planText(realTime.totalSeconds)}, ${daysText(days)}; one frame at a time it would be ${planText(single.totalSeconds)}, ${daysText(singleDays)}.`,
      },
      answers: {
        totalSeconds: plan(realTime.totalSeconds),
        days: quantity(days, 'one'),
        reelSeconds: plan(realTime.reelSeconds),
        frames: quantity(Math.round(frames), 'frames', 6),
        runSeconds: plan(realTime.runSeconds),
        handsOnSeconds: plan(realTime.totalSeconds - realTime.watchSeconds),
        singleRunSeconds: plan(single.runSeconds),
        singleTotalSeconds: plan(single.totalSeconds),
        singleDays: quantity(singleDays, 'one'),
        ratio: quantity(single.totalSeconds / realTime.totalSeconds, 'one'),
      },
      pictures: [reelHoursPicture(found, filmFps)],
    };
  },
  working(_found, told, values) {
    const { reelCount, filmFps, repeatPercent, hoursPerDay } = values;
    const handling = formatDuration(values.handlingSeconds);
    const afterWork = formatDuration(values.afterWorkSeconds);
    const total = (run: string): string =>
      `${reelCount} × (${handling} + ${run}) × (1 + ${formatNumber(repeatPercent)} %) + ${reelCount} × ${afterWork}`;
    return [
      {
        words: 'Frames divided by film rate: the run of one reel.',
        sum: `${told('frames')} ÷ ${formatQuantity(filmFps, 'fps', 5)} = ${told('runSeconds')}`,
      },
      {
        words: 'Handling and run for every reel and every repeat, after-work once for each reel.',
        sum: `${total(told('runSeconds'))} = ${told('totalSeconds')}`,
      },
      {
        words: 'Divided by the hours a day on the job, rounded up.',
        sum: `${told('totalSeconds')} ÷ ${formatQuantity(hoursPerDay, 'h')} → ${told('days')}`,
      },
      {
        words: 'The same with the machine that stops on every frame.',
        sum: `${total(told('singleRunSeconds'))} = ${told('singleTotalSeconds')}`,
      },
    ];
  },
  cautions: [
    'Never leave a projector running alone: a film that stops in the light may burn, and a reel that jams tears.',
    'Promise a later day than the sum gives: it leaves out repairs, the queue and illness.',
  ],
  sources: ['arithmetic', 'common-practice'],
});
