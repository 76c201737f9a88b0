import { tiedSound } from '../../../core/file/sound-ties.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import { nativeFpsInput } from '../../machine/film-inputs.ts';
import type { InputSpecs, Outcome } from '../../machine/types.ts';

/** How far the middle may be off, film frames; practice. */
const MOST_FRAMES = 1;

const time = (label: string, preset: string, help: string) =>
  ({
    kind: 'quantity',
    label,
    unit: 's',
    minimum: 0,
    maximum: 86_400,
    default: preset,
    accepted: `${preset}, 12.4 s or 3 min 20 s`,
    help,
  }) as const;

const inputs = {
  headPictureSeconds: time(
    'Near the head: seen at',
    '12',
    'Time in the film file, which runs at its native rate: lips that close, a footstep, the start mark.',
  ),
  headSoundSeconds: time('Near the head: heard at', '17.3', 'Time in the sound file as taken.'),
  middlePictureSeconds: time('In the middle: seen at', '301', 'A second moment, of the same kind.'),
  middleSoundSeconds: time('In the middle: heard at', '433.5', 'In the sound file as taken.'),
  tailPictureSeconds: time(
    'Near the tail: seen at',
    '588',
    'A third moment, as near the tail as you can find.',
  ),
  tailSoundSeconds: time('Near the tail: heard at', '846.74', 'In the sound file as taken.'),
  nativeFps: { ...nativeFpsInput, default: '24' },
} as const satisfies InputSpecs;

function verdictFor(middleOffFrames: number, takenFps: number): Outcome['verdict'] {
  const rate = formatQuantity(takenFps, 'fps', 5);
  const off = formatQuantity(Math.abs(middleOffFrames), 'frames', 2);
  return Math.abs(middleOffFrames) <= MOST_FRAMES
    ? {
        level: 'good',
        sentence: `The sound was taken at ${rate} and kept its speed: the middle agrees to ${off}. Put that rate into the sheet on sound retiming.`,
      }
    : {
        level: 'care',
        sentence: `The middle is off by ${off}, the sound ${middleOffFrames > 0 ? 'late' : 'early'}: it jumped at a splice or a lost loop, or the machine wandered. Cut the sound there and tie each piece by itself.`,
      };
}

export const worksheet = defineWorksheet({
  id: 'sound-ties',
  title: 'Sound by three ties',
  question: 'At which rate was this sound taken, and did it keep its speed?',
  chapter: 'file/sound',
  inputs,
  model:
    'Two moments that are both seen and heard give the ratio of the two times, and so the film rate at which the sound was taken. A third one in the middle is the proof: by that ratio it must fall on its picture to within a frame. Two ties prove nothing.',
  answers: {
    takenFps: 'Sound taken at',
    middleOffFrames: 'The middle is off by',
    startSeconds: 'Sound of the first picture lies at',
    readingFps: 'One frame misread changes the rate by',
  },
  find(values) {
    const ties = (['head', 'middle', 'tail'] as const).map((name) => ({
      name,
      pictureSeconds: values[`${name}PictureSeconds`],
      soundSeconds: values[`${name}SoundSeconds`],
    }));
    const tied = tiedSound(ties, values.nativeFps);
    const heard = ties.map(({ soundSeconds }) => soundSeconds);
    const seen = ties.map(({ pictureSeconds }) => pictureSeconds);
    const soundLength = Math.max(...heard) - Math.min(...heard);
    const pictureLength = Math.max(...seen) - Math.min(...seen);
    const [first, between] = ties.toSorted((a, b) => a.pictureSeconds - b.pictureSeconds);
    return {
      ...tied,
      middleHeard: (between?.soundSeconds ?? 0) - (first?.soundSeconds ?? 0),
      middleSeen: (between?.pictureSeconds ?? 0) - (first?.pictureSeconds ?? 0),
      soundLength,
      pictureLength,
      readingFps: 1 / soundLength,
    };
  },
  outcome({ takenFps, middleOffFrames, startSeconds, readingFps }) {
    return {
      verdict: verdictFor(middleOffFrames, takenFps),
      answers: {
        takenFps: quantity(takenFps, 'fps', 5),
        middleOffFrames: quantity(Math.abs(middleOffFrames), 'frames', 2, {
          level: Math.abs(middleOffFrames) <= MOST_FRAMES ? 'good' : 'care',
          ...(middleOffFrames === 0
            ? {}
            : { note: middleOffFrames > 0 ? 'The sound is late.' : 'The sound is early.' }),
        }),
        startSeconds: quantity(startSeconds, 's', 4, {
          note: 'Of the sound as taken. Below 0 the beginning was not recorded.',
        }),
        readingFps: quantity(readingFps, 'fps', 2),
      },
    };
  },
  working({ soundLength, pictureLength, middleHeard, middleSeen, middleOffFrames }, told, values) {
    return [
      {
        words: 'Native rate times the time seen, divided by the time heard, between the outer two.',
        sum: `${formatNumber(values.nativeFps, 5)} × ${formatNumber(pictureLength, 6)} ÷ ${formatNumber(soundLength, 6)} = ${told('takenFps')}`,
      },
      {
        words:
          'The middle by that ratio, against where it is seen, both counted from the first; in frames.',
        sum: `(${formatNumber(middleHeard, 6)} × ${formatNumber(pictureLength, 6)} ÷ ${formatNumber(soundLength, 6)} − ${formatNumber(middleSeen, 6)}) × ${formatNumber(values.nativeFps, 5)} = ${formatNumber(middleOffFrames, 2)}`,
      },
    ];
  },
  cautions: ['Work on a copy of the sound, and keep the original recording.'],
  sources: ['arithmetic', 'common-practice', 'bt-1359-summary'],
});
