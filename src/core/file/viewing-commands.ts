import { requireInterval } from '../../quantity/errors.ts';
import { FILE_NAMES } from './file-names.ts';
import type { CropRectangle } from '../gate/picture-crop.ts';

const SIZE = { minimum: 1, whole: true, unit: 'px' };
const PLACE = { minimum: 0, whole: true, unit: 'px' };

/**
 * Filter that keeps a part of the picture.
 *
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 */
export function cropFilter({
  widthPixels,
  heightPixels,
  leftPixels,
  topPixels,
}: CropRectangle): string {
  requireInterval('widthPixels', widthPixels, SIZE);
  requireInterval('heightPixels', heightPixels, SIZE);
  requireInterval('leftPixels', leftPixels, PLACE);
  requireInterval('topPixels', topPixels, PLACE);
  return `crop=${widthPixels}:${heightPixels}:${leftPixels}:${topPixels}`;
}

/** Range, depth and tags that every player takes: 8 bits, 16 to 235, BT.709. */
const FOR_SCREENS = 'scale=out_range=limited:out_color_matrix=bt709,format=yuv420p';
const SCREEN_TAGS =
  '-color_range tv -colorspace bt709 -color_primaries bt709 -color_trc bt709 -movflags +faststart';

/**
 * Command of an open tool that makes the copy to watch out of the delivery file, with sound or without.
 *
 * Model: cropped first, then through the filters given, then brought into the limited range from whatever range the file is tagged
 * with, then compressed. An untagged file is taken as limited.
 *
 * @param crop      part of the picture to keep; all of it when left out
 * @param hasSound  true to put the sound in step beside it
 * @param filters   filters for colour and tone, in order; none when left out
 * @returns one command line, for a POSIX shell and for the Windows command prompt
 * @source ffmpeg-documentation
 */
export function viewingCommand(
  crop: CropRectangle | undefined,
  hasSound: boolean,
  filters: readonly string[] = [],
): string {
  const parts = [...(crop === undefined ? [] : [cropFilter(crop)]), ...filters];
  const part = parts.map((filter) => `${filter},`).join('');
  const inputs = `-i ${FILE_NAMES.delivery}${hasSound ? ` -i ${FILE_NAMES.sound} -map 0:v -map 1:a` : ''}`;
  const sound = hasSound ? ' -c:a aac -b:a 192k -ar 48000' : '';
  return `ffmpeg ${inputs} -vf "${part}${FOR_SCREENS}" -c:v libx264 -crf 18 ${SCREEN_TAGS}${sound} ${FILE_NAMES.viewing}`;
}

/**
 * Command that puts the sound beside the pictures of the master without touching either.
 *
 * @source ffmpeg-documentation
 */
export const MASTER_WITH_SOUND_COMMAND = `ffmpeg -i ${FILE_NAMES.film} -i ${FILE_NAMES.sound} -map 0:v -map 1:a -c copy ${FILE_NAMES.filmWithSound}`;

/**
 * Command that lists one checksum for each picture of the master.
 *
 * @source ffmprovisr
 */
export const PICTURE_CHECKSUMS_COMMAND = `ffmpeg -i ${FILE_NAMES.film} -map 0:v -f framemd5 ${FILE_NAMES.pictureChecksums}`;

/**
 * Command that reads the master from end to end and says nothing when every slice is whole.
 *
 * Model: the checksum that FFV1 keeps in each slice is compared while the slice is read.
 *
 * @source rfc-9043
 */
export const READ_MASTER_COMMAND = `ffmpeg -v error -i ${FILE_NAMES.film} -f null -`;

/**
 * Command that prints how long the picture of the copy to watch lasts, s.
 *
 * @source ffmpeg-documentation
 */
export const VIEWING_SECONDS_COMMAND = `ffprobe -v error -select_streams v:0 -show_entries stream=duration -of default=noprint_wrappers=1:nokey=1 ${FILE_NAMES.viewing}`;
