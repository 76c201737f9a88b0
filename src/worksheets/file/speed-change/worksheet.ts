import {
  formatDuration,
  formatNumber,
  formatQuantity,
  formatRate,
} from '../../../quantity/format.ts';
import { pitchSemitones } from '../../../core/file/sound-retiming.ts';
import { shownSeconds, speedChangePercent } from '../../../core/file/speed-change.ts';
import { duration, quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import { nativeFpsInput } from '../../machine/film-inputs.ts';
import type { Outcome } from '../../machine/types.ts';

/** Changes of speed that few people notice without comparing. Common practice, no source. */
const HARDLY_SEEN_PERCENT = 5;

function verdictFor(percent: number): Outcome['verdict'] {
  const size = formatNumber(Math.abs(percent), 3);
  if (Math.abs(percent) < 0.0005) {
    return { level: 'good', sentence: 'The film is shown at the speed it was shot.' };
  }
  const direction = percent > 0 ? 'fast' : 'slow';
  return Math.abs(percent) <= HARDLY_SEEN_PERCENT
    ? {
        level: 'note',
        sentence: `The film runs ${size} % ${direction}: hardly seen, but heard by anyone with an ear for pitch.`,
      }
    : {
        level: 'care',
        sentence: `The film runs ${size} % ${direction}: people move and speak visibly too ${direction}.`,
      };
}

export const worksheet = defineWorksheet({
  id: 'speed-change',
  title: 'Speed change',
  question: 'How much too fast or too slow is the film when it is shown at another rate?',
  chapter: 'file/retiming',
  inputs: {
    nativeFps: {
      ...nativeFpsInput,
      accepted: '18, 16 2/3 or 24000/1001',
      help: 'Rate at which the film was shot.',
    },
    shownFps: {
      kind: 'quantity',
      label: 'Rate at which it is shown',
      unit: 'fps',
      minimum: 1,
      maximum: 120,
      default: '25',
      accepted: '25, 16 2/3 or 30000/1001',
      help: 'One film frame for each frame shown: what happens when a film file is simply declared to be of another rate, or the projector runs at another speed.',
      bench: 'region.deliveryFps',
    },
    nativeSeconds: {
      kind: 'quantity',
      label: 'Running time as shot',
      unit: 's',
      minimum: 0,
      maximum: 36_000,
      default: '3 min 20 s',
      accepted: '3 min 20 s or 3:20',
      help: 'At the native rate.',
    },
  },
  model:
    'Speed follows the ratio of the two rates. If the sound runs with the picture its pitch changes too: twelve semitones for a doubling of speed. The percentage there and the percentage back are not the same, because each is counted from its own start. That up to 5 % is hardly seen is common practice, not a measured limit; one article says that up to 3 % mostly goes unnoticed.',
  answers: {
    speedChangePercent: 'Faster than shot by',
    semitones: 'Pitch, if the sound runs with it',
    shownSeconds: 'Running time as shown',
    changeSeconds: 'Longer by',
    wayBackPercent: 'Change that undoes it',
  },
  find({ nativeFps, shownFps, nativeSeconds }, exact) {
    return {
      nativeRate: formatRate(exact.nativeFps, false),
      shownRate: formatRate(exact.shownFps, false),
      ratio: shownFps / nativeFps,
      percent: speedChangePercent(nativeFps, shownFps),
      wayBackPercent: speedChangePercent(shownFps, nativeFps),
      semitones: pitchSemitones(shownFps / nativeFps),
      shown: shownSeconds(nativeSeconds, nativeFps, shownFps),
    };
  },
  outcome({ percent, wayBackPercent, semitones, shown }, { nativeSeconds }) {
    return {
      verdict: verdictFor(percent),
      answers: {
        speedChangePercent: quantity(percent, 'percent', 4, {
          note: 'With a minus sign the film runs slow.',
        }),
        semitones: quantity(semitones, 'semitone', 4),
        shownSeconds: duration(shown),
        changeSeconds: duration(shown - nativeSeconds, {
          note: 'With a minus sign it is shorter.',
        }),
        wayBackPercent: quantity(wayBackPercent, 'percent', 4),
      },
    };
  },
  working({ nativeRate, shownRate, ratio, shown }, told, { nativeSeconds }) {
    return [
      {
        words: 'Shown rate divided by native rate, less 1, is the change of speed.',
        sum: `${shownRate} ÷ ${nativeRate} − 1 = ${formatNumber(ratio, 5)} − 1 = ${told('speedChangePercent')}`,
      },
      {
        words: 'Pitch goes in equal steps for equal ratios: twelve semitones make a doubling.',
        sum: `12 × log2(${formatNumber(ratio, 5)}) = ${told('semitones')}`,
      },
      {
        words: 'The running time goes the other way.',
        sum: `${formatDuration(nativeSeconds)} × ${nativeRate} ÷ ${shownRate} = ${formatQuantity(shown, 's', 5)}`,
      },
    ];
  },
  cautions: ['Say on the delivery note at which rate the film is shown, so that it can be undone.'],
  sources: [
    'arithmetic',
    'common-practice',
    'absolute-speed-article',
    'australian-movie-makers-55',
  ],
});
