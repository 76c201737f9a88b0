import type Fraction from 'fraction.js';
import { formatNumber, formatQuantity, formatRate } from '../../../quantity/format.ts';
import { quantity, words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { Outcome } from '../../machine/types.ts';
import { labelledSoundCommands } from '../labelled-sound-commands.ts';
import { findRetiming, type RetimingFindings } from './findings.ts';
import { inputs } from './inputs.ts';

function ratioText(ratio: Fraction): string {
  const decimal = formatNumber(ratio.valueOf(), 5);
  if (ratio.d === 1n) return decimal;
  return ratio.d > 100_000n ? decimal : `${ratio.toFraction()} (${decimal})`;
}

function verdictFor(found: RetimingFindings): Outcome['verdict'] {
  const { isFitted, ratioSemitones } = found;
  const ratio = found.ratio.valueOf();
  if (Math.abs(ratio - 1) < 1e-9) {
    return isFitted
      ? {
          level: 'care',
          sentence: 'The pitch is right; only the length has to be fitted to the picture.',
        }
      : { level: 'good', sentence: 'The sound already has the right speed.' };
  }
  const percent = formatNumber(Math.abs(ratio - 1) * 100);
  const [slow, low] = ratio > 1 ? ['slow', 'low'] : ['fast', 'high'];
  const size = formatQuantity(Math.abs(ratioSemitones), 'semitone');
  return {
    level: 'care',
    sentence: `The recording is too ${slow} and ${size} too ${low}: ${ratio > 1 ? 'speed it up' : 'slow it down'} by ${percent} %${isFitted ? ', then fit its length' : ''}.`,
  };
}

function leftAsItIs(lagPerMinuteSeconds: number): string {
  if (lagPerMinuteSeconds === 0) return 'keeps up with the picture';
  return lagPerMinuteSeconds < 0 ? 'runs ahead of the picture' : 'falls behind the picture';
}

export const worksheet = defineWorksheet({
  id: 'sound-retiming',
  title: 'Sound retiming',
  question: 'How do I bring the sound back to the speed and pitch that fit the picture?',
  chapter: 'file/sound',
  inputs,
  model:
    'Speed and pitch follow the ratio of two film rates, an exact fraction. The samples are declared to be of another rate and resampled back; both rates are chosen whole, so that nothing drifts over a reel. Keeping the pitch at another speed cuts and overlaps the sound: good enough for voices, less so for music.',
  answers: {
    takenSemitones: 'Pitch of the recording against the original',
    ratio: 'Speed change',
    correctedSampleRateHz: 'Sample rate that would play right',
    shownSemitones: 'Pitch in the finished film',
    leftAsItIs: 'Left as it is, the sound',
    lagPerMinuteSeconds: 'Sound and picture part each minute by',
  },
  find: findRetiming,
  outcome(found) {
    const { correctedSampleRateHz, lagPerMinuteSeconds, isExact } = found;
    return {
      verdict: verdictFor(found),
      answers: {
        takenSemitones: quantity(found.takenSemitones, 'semitone', 4),
        ratio: words(`× ${ratioText(found.ratio)}`),
        correctedSampleRateHz: quantity(correctedSampleRateHz, 'Hz', 8, {
          note: isExact ? 'reached exactly by the commands' : 'rounded to a whole rate',
        }),
        shownSemitones: quantity(found.shownSemitones, 'semitone', 4, {
          note: 'Against the original.',
        }),
        leftAsItIs: words(leftAsItIs(lagPerMinuteSeconds)),
        lagPerMinuteSeconds: quantity(Math.abs(lagPerMinuteSeconds), 's', 3),
      },
      commands: [
        ...labelledSoundCommands('Set the speed', found.respeed),
        ...labelledSoundCommands('Fit the length and keep the pitch', found.retempo),
      ],
    };
  },
  working({ rates, wantedFps, ratio }, told, { sampleRate }) {
    const rateText = (rate: Fraction): string => formatRate(rate, false);
    const [taken, shown] = [rateText(rates.takenFps), rateText(rates.shownFps)];
    return [
      {
        words: 'Rate while it was taken, against the native rate: how the recording sounds now.',
        sum: `12 × log2(${taken} ÷ ${rateText(rates.nativeFps)}) = ${told('takenSemitones')}`,
      },
      {
        words: 'Rate wanted divided by rate taken is the speed change.',
        sum: `${rateText(wantedFps)} ÷ ${taken} = ${ratioText(ratio)}`,
      },
      {
        words: 'Times the sample rate: the rate at which the same samples play right.',
        sum: `${sampleRate} Hz × ${ratioText(ratio)} = ${told('correctedSampleRateHz')}`,
      },
      {
        words: 'A minute of picture, and the sound that was not changed.',
        sum: `60 s × |${shown} ÷ ${taken} − 1| = ${told('lagPerMinuteSeconds')}`,
      },
    ];
  },
  cautions: [
    'Keep the recording as it was taken. Every correction starts from it, never from a corrected copy.',
    'The sound of a machine whose speed wanders cannot be corrected by one number. Check the step at head, middle and tail.',
  ],
  sources: ['arithmetic', 'ffmpeg-documentation', 'sox-manual', 'absolute-speed-article'],
});
