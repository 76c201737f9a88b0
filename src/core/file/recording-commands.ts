import type Fraction from 'fraction.js';
import { requireInterval } from '../../quantity/errors.ts';
import { FILE_NAMES, type FileName } from './file-names.ts';
import {
  copyFilters,
  LOSSLESS,
  tagOptions,
  RECORDED_RIGHT,
  type RecordedPicture,
} from './recorded-picture.ts';
import { nearestSimpleRatio } from '../../quantity/simple-ratio.ts';

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
 * @param fileName  file to ask
 * @returns one command line, for a POSIX shell and for the Windows command prompt
 * @source ffmpeg-documentation
 */
export function describeCommand(fileName: FileName): string {
  return `ffprobe -v error -select_streams v:0 -show_entries stream=${PROPERTIES} -of default=noprint_wrappers=1 "${fileName}"`;
}

/**
 * Command that looks at a minute of a recording and counts pictures made of two fields, and pictures
 * that last longer or shorter than the one before.
 *
 * Model: `idet` compares neighbouring lines; `vfrdet` compares time stamps. A scene without movement
 * leaves the first undetermined.
 *
 * @source ffmprovisr
 * @source ffmpeg-documentation
 */
export const DETECT_COMMAND = `ffmpeg -hide_banner -t 60 -i "${FILE_NAMES.recording}" -map 0:v:0 -vf idet,vfrdet -f null -`;

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
  return `ffmpeg -i "${FILE_NAMES.camera}" -an -vf "${filters.join(',')}" ${LOSSLESS}${tagOptions(recorded)} ${FILE_NAMES.evenRecording}`;
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
  return `ffmpeg -i "${FILE_NAMES.camera}" -an -vf "${filters.join(',')}" ${LOSSLESS}${tagOptions(recorded)} ${FILE_NAMES.evenRecording}`;
}

/**
 * Command that writes the time of every picture of a recording, one a line, s.
 *
 * @source ffmpeg-documentation
 */
export const FRAME_TIMES_COMMAND = `ffprobe -v error -select_streams v:0 -show_entries frame=pts_time -of csv=p=0 "${FILE_NAMES.camera}" > ${FILE_NAMES.cameraTimes}`;

/**
 * Command that takes one picture out of a file, through the filters that the whole is to go through: a
 * look before an hour of work.
 *
 * @param fileName  file to look into
 * @param filters   filters in order; none leaves the picture as it is
 * @param seconds   time of the picture in the file, s; 0–100000
 * @returns one command line, for a POSIX shell and for the Windows command prompt
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ffmpeg-documentation
 */
export function lookCommand(fileName: string, filters: readonly string[], seconds: number): string {
  requireInterval('seconds', seconds, { minimum: 0, maximum: 100_000, unit: 's' });
  const through = filters.length === 0 ? '' : ` -vf "${filters.join(',')}"`;
  return `ffmpeg -ss ${seconds} -i "${fileName}"${through} -frames:v 1 ${FILE_NAMES.look}`;
}

/**
 * Commands that list one checksum for each picture of a camera file, none shown twice and none left
 * out: `current` for version 5.1 and later, `older` for the spelling before it, which the newest
 * versions no longer know.
 *
 * @source ffmpeg-documentation
 */
export const CAMERA_CHECKSUM_COMMANDS = {
  current: `ffmpeg -i "${FILE_NAMES.camera}" -map 0:v:0 -fps_mode passthrough -f framemd5 ${FILE_NAMES.cameraChecksums}`,
  older: `ffmpeg -i "${FILE_NAMES.camera}" -map 0:v:0 -vsync passthrough -f framemd5 ${FILE_NAMES.cameraChecksums}`,
} as const;

/**
 * Commands that list one checksum for each picture of the recording, turned as the master is, so that the
 * two lists can be compared. `current` for version 5.1 and later, `older` for the spelling before it.
 *
 * @param recorded  way round and range of the recording
 * @returns a command line each, for a POSIX shell and for the Windows command prompt
 * @source ffmpeg-documentation
 */
export function recordingChecksumCommands(recorded: RecordedPicture): {
  readonly current: string;
  readonly older: string;
} {
  const filters = copyFilters(recorded);
  const through = filters.length === 0 ? '' : ` -vf "${filters.join(',')}"`;
  const withOption = (option: string): string =>
    `ffmpeg -i "${FILE_NAMES.recording}" -map 0:v:0${through} ${option} passthrough -f framemd5 ${FILE_NAMES.recordingChecksums}`;
  return { current: withOption('-fps_mode'), older: withOption('-vsync') };
}

/**
 * Command that counts the pictures of a recording without decoding them.
 *
 * @source ffmpeg-documentation
 */
export const COUNT_PICTURES_COMMAND = `ffprobe -v error -select_streams v:0 -count_packets -show_entries stream=nb_read_packets -of default=noprint_wrappers=1:nokey=1 "${FILE_NAMES.recording}"`;

/**
 * Command that puts the parts of a recording together which a camera cut for its card, in the order of
 * a list, without compressing anything anew.
 *
 * Model: packets of picture and sound are copied one after the other. The parts must be of one camera
 * and one setting.
 *
 * @source ffmpeg-documentation
 */
export const JOIN_PARTS_COMMAND = `ffmpeg -f concat -safe 0 -i ${FILE_NAMES.parts} -map 0:v -map "0:a?" -c copy "${FILE_NAMES.recording}"`;
