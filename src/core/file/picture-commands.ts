import type Fraction from 'fraction.js';
import { commandRate } from './command-rate.ts';
import { FILE_NAMES } from './file-names.ts';
import type { KeepRule } from './keep-list.ts';
import {
  copyFilters,
  LOSSLESS,
  tagOptions,
  RECORDED_RIGHT,
  type RecordedPicture,
} from './recorded-picture.ts';

/** Test on the number n of a camera frame; true where the list keeps it. */
function keepTest({ first, last, step, shift, cycle }: KeepRule): string {
  return `between(n,${first},${last})*lt(mod(${step}*n+${shift},${cycle}),${step}-0.5)`;
}

/**
 * Command of an open tool that picks exactly the frames of a keep list out of a recording, turns them
 * the right way round and stamps them one after another at the native rate. The file is the master:
 * lossless, without sound, every code value of the recording kept, a checksum in every slice.
 *
 * Model: `select` counts camera frames from 0 whatever their time stamps say. All numbers in its test
 * are whole and below 2⁵³, and the remainder is compared half a step away from them, so the tool's
 * doubles decide like exact arithmetic. A time base of one film frame and the count as time stamp make
 * the new time exact.
 *
 * @param rules      rule of the keep list; several for a list that is tied in several places, whose
 *                   stretches must not overlap
 * @param nativeFps  native rate, frames/s; 0.5–1000
 * @param recorded   way round and range of the recording; right way round and limited when left out
 * @returns one command line, for a POSIX shell and for the Windows command prompt
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ffmpeg-documentation
 * @source rfc-9043
 */
export function keepCommand(
  rules: KeepRule | readonly KeepRule[],
  nativeFps: Fraction,
  recorded: RecordedPicture = RECORDED_RIGHT,
): string {
  const { rate, frame } = commandRate('nativeFps', nativeFps);
  const test = [rules].flat().map(keepTest).join('+');
  const filters = [`select='${test}'`, `settb=${frame}`, 'setpts=N', ...copyFilters(recorded)];
  return `ffmpeg -i "${FILE_NAMES.recording}" -an -vf "${filters.join(',')}" -r ${rate} ${LOSSLESS}${tagOptions(recorded)} ${FILE_NAMES.film}`;
}

/**
 * Command of an open tool that lays a film file on a delivery timeline by showing film frames again,
 * without blending any two. Lossless, without sound.
 *
 * Model: film frame k starts at output frame ⌈k·g ÷ f⌉, which is rounding its exact time up to the
 * delivery's frames. The time base of one film frame keeps that time exact, whatever the file's own
 * stamps were rounded to.
 *
 * @param nativeFps    native rate of the film file, frames/s; 0.5–1000
 * @param deliveryFps  delivery rate, frames/s; 0.5–1000
 * @returns one command line, for a POSIX shell and for the Windows command prompt
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ffmpeg-documentation
 */
export function repeatCommand(nativeFps: Fraction, deliveryFps: Fraction): string {
  const { frame } = commandRate('nativeFps', nativeFps);
  const { rate } = commandRate('deliveryFps', deliveryFps);
  const filter = `settb=${frame},setpts=N,fps=fps=${rate}:round=up`;
  return `ffmpeg -i ${FILE_NAMES.film} -an -vf "${filter}" -r ${rate} ${LOSSLESS} ${FILE_NAMES.delivery}`;
}
