import type Fraction from 'fraction.js';
import { requireInterval } from './errors.ts';
import { sampleRatePair } from './sound-retiming.ts';

/** Commands of open tools that do one correction; the same job twice, take either. */
export interface SoundCommands {
  readonly ffmpeg: string;
  readonly sox: string;
}

/** Factor in decimals, exact to about one part in 10¹², without an exponent. */
function decimalFactor(ratio: Fraction): string {
  return ratio
    .valueOf()
    .toFixed(12)
    .replace(/\.?0+$/u, '');
}

/**
 * Commands that change speed and pitch together, as the film itself does when it runs faster. The
 * result has the sample rate of the recording again.
 *
 * Model: speed ratio as two whole sample rates (see sampleRatePair), then back to the recording's
 * rate.
 *
 * @param sampleRateHz  sample rate of the recording, Hz; whole, > 0, at most 768000
 * @param ratio         speed ratio; > 0
 * @returns one command line per tool
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ffmpeg-documentation
 * @source sox-manual
 */
export function respeedCommands(sampleRateHz: number, ratio: Fraction): SoundCommands {
  const { resampleHz, declaredHz } = sampleRatePair(sampleRateHz, ratio);
  const before = resampleHz === sampleRateHz ? '' : `aresample=${resampleHz},`;
  return {
    ffmpeg: `ffmpeg -i taken.wav -af "${before}asetrate=${declaredHz},aresample=${sampleRateHz}" corrected.wav`,
    sox: `sox taken.wav corrected.wav speed ${decimalFactor(ratio)} rate -v ${sampleRateHz}`,
  };
}

/** One step of ffmpeg's tempo filter accepts 0.5 to 2 in every version. */
function tempoSteps(factor: number): readonly string[] {
  const count = Math.max(1, Math.ceil(Math.abs(Math.log2(factor)) - 1e-9));
  const step = factor ** (1 / count);
  return Array.from({ length: count }, () => `atempo=${step.toFixed(12).replace(/\.?0+$/u, '')}`);
}

/**
 * Commands that change the length and keep the pitch, for a film that is shown faster than it was
 * shot but whose voices shall sound as they did. They take up where respeedCommands ends.
 *
 * Model: the tools cut the sound into short pieces and overlap them; pitch is kept, quality is not
 * perfect, least of all for music. The length is right to a few hundredths of a second.
 *
 * @param ratio     tempo ratio; 1/16 to 16
 * @param fromFile  file to start from; `corrected.wav` when left out
 * @returns one command line per tool
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ffmpeg-documentation
 * @source sox-manual
 */
export function retempoCommands(
  ratio: Fraction,
  fromFile: 'taken.wav' | 'corrected.wav' = 'corrected.wav',
): SoundCommands {
  const factor = requireInterval('ratio', ratio.valueOf(), { minimum: 1 / 16, maximum: 16 });
  return {
    ffmpeg: `ffmpeg -i ${fromFile} -af "${tempoSteps(factor).join(',')}" shown.wav`,
    sox: `sox ${fromFile} shown.wav tempo ${decimalFactor(ratio)}`,
  };
}
