import type Fraction from 'fraction.js';
import { OutOfRangeError } from '../../quantity/errors.ts';
import { FILE_NAMES } from './file-names.ts';
import { commandRate } from './command-rate.ts';
import {
  copyFilters,
  LOSSLESS,
  RECORDED_RIGHT,
  tagOptions,
  type RecordedPicture,
} from './recorded-picture.ts';

function requireAscending(cameraFrames: readonly number[]): void {
  if (cameraFrames.length === 0) throw new OutOfRangeError('cameraFrames', 'none', 'at least one');
  for (const [index, frame] of cameraFrames.entries()) {
    const before = cameraFrames[index - 1] ?? -1;
    if (!Number.isInteger(frame) || frame <= before)
      throw new OutOfRangeError('cameraFrames', frame, 'whole numbers, each above the one before');
  }
}

function treeOf(frames: readonly number[], from: number, to: number): string {
  if (to - from === 1) return `eq(n,${frames[from] ?? 0})`;
  const middle = (from + to) >> 1;
  return `if(lt(n,${frames[middle] ?? 0}),${treeOf(frames, from, middle)},${treeOf(frames, middle, to)})`;
}

/**
 * Test on the number n of a frame that is true for exactly the frames of a list, in the language of an
 * open tool. A flat sum of comparisons fails there above a hundred; a balanced tree asks each frame a
 * dozen questions however long the list is.
 *
 * Model: if(lt(n,m),left,right) halves the list down to eq(n,j). Exact.
 *
 * @param cameraFrames  frames wanted, counted from 0; whole, ascending, at least one
 * @returns the test
 * @throws {OutOfRangeError} names the frame that is not whole or not above the one before
 * @source ffmpeg-documentation
 * @example frameTest([3, 5, 9]) // 'if(lt(n,5),eq(n,3),if(lt(n,9),eq(n,5),eq(n,9)))'
 */
export function frameTest(cameraFrames: readonly number[]): string {
  requireAscending(cameraFrames);
  return treeOf(cameraFrames, 0, cameraFrames.length);
}

/**
 * What follows the frames in a filter file: a list that was written for another native rate, way round
 * or range ends otherwise.
 *
 * @param nativeFps  native rate, frames/s; 0.5–1000
 * @param recorded   way round and range of the recording; right way round and limited when left out
 * @returns the end of its line, from the quotation mark behind the frames
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ffmpeg-documentation
 * @example frameFilterEnd(new Fraction(18)) // "',settb=1/18,setpts=N"
 */
export function frameFilterEnd(
  nativeFps: Fraction,
  recorded: RecordedPicture = RECORDED_RIGHT,
): string {
  const { frame } = commandRate('nativeFps', nativeFps);
  return ["'", `settb=${frame}`, 'setpts=N', ...copyFilters(recorded)].join(',');
}

/**
 * Text of a filter file that picks the frames of a list out of a recording, stamps them one after
 * another at the native rate and turns them the right way round.
 *
 * @param cameraFrames  frames wanted, counted from 0; whole, ascending, at least one
 * @param nativeFps     native rate, frames/s; 0.5–1000
 * @param recorded      way round and range of the recording; right way round and limited when left out
 * @returns the text, one line
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ffmpeg-documentation
 */
export function frameFilterText(
  cameraFrames: readonly number[],
  nativeFps: Fraction,
  recorded: RecordedPicture = RECORDED_RIGHT,
): string {
  return `select='${frameTest(cameraFrames)}${frameFilterEnd(nativeFps, recorded)}\n`;
}

/**
 * Commands that run a recording through the filter file and write the master: lossless, every film
 * frame once, without sound. `current` is the spelling from version 7 on, `older` the one before it.
 *
 * @param nativeFps  native rate, frames/s; 0.5–1000
 * @param recorded   way round and range of the recording; right way round and limited when left out
 * @returns a command line each, for a POSIX shell and for the Windows command prompt
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ffmpeg-documentation
 * @source rfc-9043
 */
export function frameFilterCommands(
  nativeFps: Fraction,
  recorded: RecordedPicture = RECORDED_RIGHT,
): { readonly current: string; readonly older: string } {
  const { rate } = commandRate('nativeFps', nativeFps);
  const withOption = (option: string): string =>
    `ffmpeg -i "${FILE_NAMES.recording}" -an ${option} ${FILE_NAMES.keepFilter} -r ${rate} ${LOSSLESS}${tagOptions(recorded)} ${FILE_NAMES.film}`;
  return { current: withOption('-/filter:v'), older: withOption('-filter_script:v') };
}
