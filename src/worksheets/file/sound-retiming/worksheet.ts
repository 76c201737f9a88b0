import type Fraction from 'fraction.js';
import { formatNumber, formatQuantity, formatRate } from '../../../quantity/format.ts';
import {
  respeedCommands,
  retempoCommands,
  type SoundCommands,
} from '../../../core/file/sound-commands.ts';
import {
  correctedSampleRateHz,
  lagPerMinuteSeconds,
  pitchSemitones,
  sampleRatePair,
  speedRatio,
} from '../../../core/file/sound-retiming.ts';
import { quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import { defineWorksheet, type Outcome } from '../../machine/types.ts';

interface ExactRates {
  readonly takenFps: Fraction;
  readonly nativeFps: Fraction;
  readonly shownFps: Fraction;
}

/** Speed change of the recording: to the shown rate, or to the native rate where pitch is kept. */
function ratioOf({ takenFps, nativeFps, shownFps }: ExactRates, keepsPitch: boolean): Fraction {
  return speedRatio(takenFps, keepsPitch ? nativeFps : shownFps);
}

function ratioText(ratio: Fraction): string {
  const decimal = formatNumber(ratio.valueOf(), 5);
  if (ratio.d === 1n) return decimal;
  return ratio.d > 100_000n ? decimal : `${ratio.toFraction()} (${decimal})`;
}

function verdictFor(rates: ExactRates, keepsPitch: boolean): Outcome['verdict'] {
  const ratio = ratioOf(rates, keepsPitch).valueOf();
  const isFitted = keepsPitch && !rates.shownFps.equals(rates.nativeFps);
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
  const size = formatQuantity(Math.abs(pitchSemitones(ratio)), 'semitone');
  return {
    level: 'care',
    sentence: `The recording is too ${slow} and ${size} too ${low}: change its speed by ${percent} %${isFitted ? ', then fit its length' : ''}.`,
  };
}

function commandsFor(
  rates: ExactRates,
  sampleRateHz: number,
  keepsPitch: boolean,
): Outcome['commands'] {
  const labelled = (words: string, { ffmpeg, sox }: SoundCommands) => [
    { label: `${words}, with ffmpeg`, text: ffmpeg },
    { label: `${words}, with sox`, text: sox },
  ];
  const ratio = ratioOf(rates, keepsPitch);
  const isRight = ratio.equals(1);
  const speed = isRight ? [] : labelled('Set the speed', respeedCommands(sampleRateHz, ratio));
  if (!keepsPitch || rates.shownFps.equals(rates.nativeFps)) return speed;
  const tempo = retempoCommands(
    speedRatio(rates.nativeFps, rates.shownFps),
    isRight ? 'taken' : 'corrected',
  );
  return [...speed, ...labelled('Fit the length and keep the pitch', tempo)];
}

export const worksheet = defineWorksheet({
  id: 'sound-retiming',
  title: 'Sound retiming',
  question: 'How do I bring the sound back to the speed and pitch that fit the picture?',
  chapter: 'file/sound',
  inputs: {
    takenFps: {
      kind: 'quantity',
      label: 'Film rate while the sound was taken',
      unit: 'fps',
      minimum: 8,
      maximum: 60,
      default: '25',
      accepted: '25, 16 2/3 or 17.83',
      help: 'Measured: a tenth of a frame per second is heard over a whole reel.',
      bench: 'projector.filmFps',
    },
    nativeFps: {
      kind: 'quantity',
      label: 'Native rate',
      unit: 'fps',
      minimum: 8,
      maximum: 60,
      default: '24',
      accepted: '24, 18 or 24000/1001',
      help: 'Rate at which picture and sound were shot.',
      bench: 'reel.nativeFps',
    },
    shownFps: {
      kind: 'quantity',
      label: 'Rate at which the film will be shown',
      unit: 'fps',
      minimum: 8,
      maximum: 60,
      default: '24',
      accepted: '24, 25 or 18',
      help: 'Film frames per second in the finished film: the native rate when it is to look as it did.',
      bench: 'reel.nativeFps',
    },
    pitch: {
      kind: 'choice',
      label: 'Pitch',
      options: {
        follows: 'goes with the speed of the picture',
        kept: 'stays as it was shot',
      },
      default: 'follows',
      help: 'The two only differ when the film is shown at another rate than it was shot.',
    },
    sampleRate: {
      kind: 'choice',
      label: 'Sample rate of the recording',
      options: { '44100': '44 100 Hz', '48000': '48 000 Hz', '96000': '96 000 Hz' },
      default: '48000',
      help: 'From the settings of your recorder. The result has the same rate, with 24 bits a sample.',
    },
  },
  model:
    'Speed and pitch go with the ratio of two film rates, an exact fraction. The samples are declared to be of another rate and resampled back; both rates are chosen whole, so that nothing drifts over a reel. Keeping the pitch at another speed cuts and overlaps the sound: fit for voices, less so for music.',
  compute({ pitch, sampleRate }, { takenFps, nativeFps, shownFps }) {
    const rates = { takenFps, nativeFps, shownFps };
    const keepsPitch = pitch === 'kept';
    const sampleRateHz = Number(sampleRate);
    const ratio = ratioOf(rates, keepsPitch);
    const pair = sampleRatePair(sampleRateHz, ratio);
    const corrected = correctedSampleRateHz(sampleRateHz, ratio).valueOf();
    const lag = lagPerMinuteSeconds(shownFps.valueOf(), takenFps.valueOf());
    const shownSemitones = keepsPitch ? 0 : pitchSemitones(shownFps.div(nativeFps).valueOf());
    return {
      verdict: verdictFor(rates, keepsPitch),
      answers: {
        takenSemitones: quantityAnswer(
          'Pitch of the recording against the original',
          pitchSemitones(takenFps.div(nativeFps).valueOf()),
          'semitone',
          4,
        ),
        ratio: wordsAnswer('Speed change', `× ${ratioText(ratio)}`),
        correctedSampleRateHz: quantityAnswer(
          'Sample rate that would play right',
          corrected,
          'Hz',
          8,
          { note: pair.isExact ? 'reached exactly by the commands' : 'rounded to a whole rate' },
        ),
        shownSemitones: quantityAnswer(
          'Pitch in the finished film',
          shownSemitones,
          'semitone',
          4,
          { note: 'Against the original.' },
        ),
        lagPerMinuteSeconds: quantityAnswer(
          `Left as it is, the sound ${lag < 0 ? 'runs ahead' : 'falls behind'} each minute by`,
          Math.abs(lag),
          's',
          3,
        ),
      },
      commands: commandsFor(rates, sampleRateHz, keepsPitch) ?? [],
    };
  },
  working({ pitch, sampleRate }, { answers }, { takenFps, nativeFps, shownFps }) {
    const text = (key: string): string => answers[key]?.text ?? '';
    const [taken, native, shown] = [takenFps, nativeFps, shownFps].map((rate) =>
      formatRate(rate, false),
    );
    const ratio = ratioOf({ takenFps, nativeFps, shownFps }, pitch === 'kept');
    return [
      {
        words: 'Rate while it was taken, against the native rate: how the recording sounds now.',
        sum: `12 × log2(${taken} ÷ ${native}) = ${text('takenSemitones')}`,
      },
      {
        words: 'Rate wanted divided by rate taken is the speed change.',
        sum: `${pitch === 'kept' ? native : shown} ÷ ${taken} = ${ratioText(ratio)}`,
      },
      {
        words: 'Times the sample rate: the rate at which the same samples play right.',
        sum: `${sampleRate} Hz × ${ratioText(ratio)} = ${text('correctedSampleRateHz')}`,
      },
      {
        words: 'A minute of picture, and the sound that was not changed.',
        sum: `60 s × (${shown} ÷ ${taken} − 1) → ${text('lagPerMinuteSeconds')}`,
      },
    ];
  },
  cautions: [
    'Keep the recording as it was taken. Every correction starts from it, never from a corrected copy.',
    'A machine whose speed wanders cannot be corrected by one number. Check the step at head, middle and tail.',
  ],
  sources: ['arithmetic', 'ffmpeg-documentation', 'sox-manual', 'absolute-speed-article'],
});
