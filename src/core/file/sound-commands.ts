import type Fraction from 'fraction.js';
import { requireInterval } from '../../quantity/errors.ts';
import { FILE_NAMES } from './file-names.ts';
import { sampleRatePair } from './sound-retiming.ts';

/** Commands of open tools that do one correction; the same job twice, take either. */
export interface SoundCommands {
  readonly ffmpeg: string;
  readonly sox: string;
}

/** A sound file that a command can start from. */
export type SoundFile = 'taken' | 'corrected' | 'fitted';

/** Samples of 24 bits, which hold those of 16 unchanged; without it the tool writes 16. */
const KEEPS_24_BITS = '-c:a pcm_s24le';

const fromFile = (file: SoundFile): string => `"${FILE_NAMES[file]}"`;

/** Factor in decimals, exact to about one part in 10¹², without an exponent. */
function decimalFactor(ratio: Fraction): string {
  return ratio
    .valueOf()
    .toFixed(12)
    .replace(/\.?0+$/u, '');
}

/**
 * Commands that change speed and pitch together, as the film itself does when it runs faster. The
 * result has the sample rate of the recording again, and 24 bits a sample.
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
    ffmpeg: `ffmpeg -i ${fromFile('taken')} -af "${before}asetrate=${declaredHz},aresample=${sampleRateHz}" ${KEEPS_24_BITS} ${FILE_NAMES.corrected}`,
    sox: `sox ${fromFile('taken')} -b 24 ${FILE_NAMES.corrected} speed ${decimalFactor(ratio)} rate -v ${sampleRateHz}`,
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
 * shot but whose voices are to keep their pitch. They take up where respeedCommands ends.
 *
 * Model: the tools cut the sound into short pieces and overlap them; pitch is kept, quality is not
 * perfect, least of all for music. The length is right to a few hundredths of a second.
 *
 * @param ratio  tempo ratio; 1/16 to 16
 * @param file   file to start from; the one at the right speed when left out
 * @returns one command line per tool
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ffmpeg-documentation
 * @source sox-manual
 */
export function retempoCommands(
  ratio: Fraction,
  file: Exclude<SoundFile, 'fitted'> = 'corrected',
): SoundCommands {
  const factor = requireInterval('ratio', ratio.valueOf(), { minimum: 1 / 16, maximum: 16 });
  return {
    ffmpeg: `ffmpeg -i ${fromFile(file)} -af "${tempoSteps(factor).join(',')}" ${KEEPS_24_BITS} ${FILE_NAMES.fitted}`,
    sox: `sox ${fromFile(file)} -b 24 ${FILE_NAMES.fitted} tempo ${decimalFactor(ratio)}`,
  };
}

/** Time in decimals of a microsecond, less than a sample of 96 kHz. */
const secondsText = (seconds: number): string => seconds.toFixed(6).replace(/\.?0+$/u, '');

/**
 * Commands that put the sound in step: silence before it where it comes too early, a piece cut from
 * its head where it comes too late. The head of the result is the head of the picture file.
 *
 * Model: shift = −lateness, to a millionth of a second or one sample, whichever is longer.
 *
 * @param file         file to start from
 * @param lateSeconds  time by which the sound comes after its picture, s; negative where it comes
 *                     before; −3600 to 3600
 * @returns one command line per tool
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ffmpeg-documentation
 * @source sox-manual
 */
export function offsetCommands(file: SoundFile, lateSeconds: number): SoundCommands {
  requireInterval('lateSeconds', lateSeconds, { minimum: -3600, maximum: 3600, unit: 's' });
  const seconds = secondsText(Math.abs(lateSeconds));
  const isEarly = lateSeconds < 0;
  const filter = isEarly
    ? `adelay=delays=${secondsText(1000 * Math.abs(lateSeconds))}:all=1`
    : `atrim=start=${seconds},asetpts=PTS-STARTPTS`;
  return {
    ffmpeg: `ffmpeg -i ${fromFile(file)} -af "${filter}" ${KEEPS_24_BITS} ${FILE_NAMES.sound}`,
    sox: `sox ${fromFile(file)} -b 24 ${FILE_NAMES.sound} ${isEarly ? 'pad' : 'trim'} ${seconds}`,
  };
}

/**
 * Command that prints the sample rate of a sound file, Hz.
 *
 * @source ffmpeg-documentation
 */
export const SAMPLE_RATE_COMMAND = `ffprobe -v error -select_streams a:0 -show_entries stream=sample_rate -of default=noprint_wrappers=1:nokey=1 ${fromFile('taken')}`;
