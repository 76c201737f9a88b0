import { FILE_NAMES } from './file-names.ts';

/**
 * Command that makes a copy which browsers can read of a recording which they cannot, to be measured
 * and not to be kept. Every camera frame stays, at its own time, and rows stay as the camera read them
 * out, whichever way round the picture is shown.
 *
 * Model: H.264 with a high quality (`crf 12`), no reordering (`bf 0`), a picture that stands alone every
 * 25; times are written as they were counted in the recording.
 *
 * @returns one command line, for a POSIX shell and for the Windows command prompt
 * @source ffmpeg-documentation
 */
export const READABLE_COPY_COMMAND =
  `ffmpeg -noautorotate -i "${FILE_NAMES.recording}" -map 0:v:0 -map 0:a:0? -vsync passthrough ` +
  `-enc_time_base -1 -c:v libx264 -preset veryfast -crf 12 -bf 0 -g 25 -pix_fmt yuv420p -c:a aac ` +
  `"${FILE_NAMES.readable}"`;
