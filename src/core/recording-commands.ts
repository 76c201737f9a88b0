import type Fraction from 'fraction.js';
import { requireInterval } from './errors.ts';
import { FILE_NAMES } from './file-names.ts';
import {
  copyFilters,
  LOSSLESS,
  matrixOptions,
  RECORDED_RIGHT,
  type RecordedPicture,
} from './recorded-picture.ts';
import { nearestSimpleRatio } from './simple-ratio.ts';
import { turnFilters, type PictureTurn } from './picture-turn.ts';

const PROPERTIES = [
  'codec_name',
  'width',
  'height',
  'pix_fmt',
  'field_order',
  'color_range',
  'color_space',
  'color_primaries',
  'color_transfer',
  'r_frame_rate',
  'avg_frame_rate',
].join(',');

/**
 * Command that prints what a video file says about itself, one line each: size, range, colour, fields
 * and rates.
 *
 * @param fileName  file to ask; the recording when left out
 * @returns one command line, for a POSIX shell and for the Windows command prompt
 * @source ffmpeg-documentation
 */
export function describeCommand(fileName: string = FILE_NAMES.recording): string {
  return `ffprobe -v error -select_streams v:0 -show_entries stream=${PROPERTIES} -of default=noprint_wrappers=1 "${fileName}"`;
}

/**
 * Command that looks at a minute of a recording and counts pictures made of two fields, and pictures
 * that last longer or shorter than the one before.
 *
 * Model: `idet` compares neighbouring lines; `vfrdet` compares time stamps. A scene without movement
 * leaves the first undetermined.
 *
 * @returns one command line, for a POSIX shell and for the Windows command prompt
 * @source ffmprovisr
 * @source ffmpeg-documentation
 */
export function detectCommand(): string {
  return `ffmpeg -hide_banner -t 60 -i "${FILE_NAMES.recording}" -map 0:v:0 -vf idet,vfrdet -f null -`;
}

/**
 * Command that makes one picture of every field, so that a recording of 25 pictures of two fields
 * becomes one of 50 pictures. Lines that a field has not are drawn from the lines above and below in
 * the same field, never from another moment: the next field may show another film frame.
 *
 * @param recorded  range of the recording; limited when left out
 * @returns one command line, for a POSIX shell and for the Windows command prompt
 * @source ffmpeg-documentation
 */
export function fieldsCommand(recorded: RecordedPicture = RECORDED_RIGHT): string {
  const filters = ['estdif=mode=field', ...copyFilters({ ...recorded, turn: RECORDED_RIGHT.turn })];
  return `ffmpeg -i "${FILE_NAMES.camera}" -an -vf "${filters.join(',')}" ${LOSSLESS}${matrixOptions(recorded)} ${FILE_NAMES.evenRecording}`;
}

/**
 * Command that lays a recording of uneven picture lengths on an even grid by showing pictures again.
 *
 * Model: each picture stands on the grid line nearest to its own time, so times are kept to half a grid
 * step. No picture is lost while no two lie closer together than one step.
 *
 * @param gridFps   rate of the grid, frames/s; 1–1000; twice the highest rate of the camera, or more
 * @param recorded  range of the recording; limited when left out
 * @returns one command line, for a POSIX shell and for the Windows command prompt
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ffmpeg-documentation
 */
export function evenGridCommand(
  gridFps: Fraction,
  recorded: RecordedPicture = RECORDED_RIGHT,
): string {
  requireInterval('gridFps', gridFps.valueOf(), { minimum: 1, maximum: 1000, unit: 'frames/s' });
  const { n, d } = nearestSimpleRatio(gridFps, 10_000);
  const rate = d === 1n ? String(n) : `${n}/${d}`;
  const filters = [
    `fps=fps=${rate}:round=near`,
    ...copyFilters({ ...recorded, turn: RECORDED_RIGHT.turn }),
  ];
  return `ffmpeg -i "${FILE_NAMES.camera}" -an -vf "${filters.join(',')}" ${LOSSLESS}${matrixOptions(recorded)} ${FILE_NAMES.evenRecording}`;
}

/**
 * Command that writes the time of every picture of a recording, one a line, s.
 *
 * @returns one command line, for a POSIX shell and for the Windows command prompt
 * @source ffmpeg-documentation
 */
export function frameTimesCommand(): string {
  return `ffprobe -v error -select_streams v:0 -show_entries frame=pts_time -of csv=p=0 "${FILE_NAMES.camera}" > ${FILE_NAMES.cameraTimes}`;
}

/**
 * Command that takes one picture out of a recording, turned as the whole is to be turned: a look at
 * its lettering before an hour of work.
 *
 * @param turn     how the recorded picture stands
 * @param seconds  time of the picture in the recording, s; 0–100000
 * @returns one command line, for a POSIX shell and for the Windows command prompt
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ffmpeg-documentation
 */
export function lookCommand(turn: PictureTurn, seconds: number): string {
  requireInterval('seconds', seconds, { minimum: 0, maximum: 100_000, unit: 's' });
  const filters = turnFilters(turn);
  const turned = filters.length === 0 ? '' : ` -vf ${filters.join(',')}`;
  return `ffmpeg -ss ${seconds} -i "${FILE_NAMES.recording}"${turned} -frames:v 1 look.png`;
}
