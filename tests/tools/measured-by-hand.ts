// The light and the motion of a clip worked out from ffmpeg's own decoding, sample by sample: nothing of
// the page's reading has a part in it.
import { gramAccumulator } from '../../src/core/file/band-motion.ts';
import { runFfmpeg } from './ffmpeg.ts';
import { spawnSync } from 'node:child_process';
import { ffprobe } from './ffmpeg.ts';

export interface DecodedLuma {
  readonly width: number;
  readonly height: number;
  readonly bitDepth: 8 | 10;
  readonly frames: readonly Uint16Array[];
}

/** Luma of every picture as coded, unturned, as ffmpeg decodes it. */
export function decodeLuma(
  path: string,
  width: number,
  height: number,
  bitDepth: 8 | 10,
): DecodedLuma {
  const raw = runFfmpeg([
    ...[
      '-noautorotate',
      '-i',
      path,
      '-map',
      '0:v:0',
      '-vf',
      'extractplanes=y',
      '-vsync',
      'passthrough',
    ],
    ...['-f', 'rawvideo', '-pix_fmt', bitDepth === 8 ? 'gray' : 'gray10le', '-'],
  ]);
  const bytes = width * height * (bitDepth === 8 ? 1 : 2);
  const frames = Array.from({ length: Math.floor(raw.length / bytes) }, (_, at) => {
    const own = new Uint8Array(raw.subarray(at * bytes, (at + 1) * bytes));
    return bitDepth === 8 ? Uint16Array.from(own) : new Uint16Array(own.buffer);
  });
  return { width, height, bitDepth, frames };
}

/** Time of every picture, s, in the order shown, by ffprobe. */
export function frameSecondsOf(path: string): readonly number[] {
  const { stdout } = spawnSync(
    ffprobe!,
    [
      '-v',
      'error',
      '-select_streams',
      'v:0',
      '-show_entries',
      'frame=pts_time',
      '-of',
      'csv=p=0',
      path,
    ],
    { encoding: 'utf8', maxBuffer: 2 ** 28 },
  );
  return (
    stdout
      .trim()
      .split('\n')
      // Side data of a frame leave a line of their own.
      .filter((line) => /^[\d.-]/u.test(line))
      .map((line) => Number(line.replace(/,.*$/u, '')))
  );
}

/** BT.709, item 1.2 backwards: signal to light. */
const lightOf = (signal: number): number =>
  signal < 4.5 * 0.018 ? signal / 4.5 : Math.pow((signal + 0.099) / 1.099, 1 / 0.45);

function signalOf(code: number, bitDepth: number, isFullRange: boolean): number {
  const unit = bitDepth === 10 ? 4 : 1;
  const signal = isFullRange ? code / (256 * unit - 1) : (code / unit - 16) / 219;
  return signal < 0 ? 0 : signal;
}

/** Mean light of twelve bands, frame by frame, for a clip tagged BT.709. */
export function bandsByHand(
  luma: DecodedLuma,
  isFullRange = false,
): readonly (readonly number[])[] {
  const { width, height, bitDepth } = luma;
  const most = bitDepth === 10 ? 1023 : 255;
  const brightest = lightOf(signalOf(most, bitDepth, isFullRange));
  const lightOfCode = Float64Array.from(
    { length: most + 1 },
    (_, code) => lightOf(signalOf(code, bitDepth, isFullRange)) / brightest,
  );
  return luma.frames.map((frame) =>
    Array.from({ length: 12 }, (_, band) => {
      let sum = 0;
      for (let row = (band * height) / 12; row < ((band + 1) * height) / 12; row += 1) {
        for (let column = 0; column < width; column += 1) {
          sum += lightOfCode[frame[row * width + column]!]!;
        }
      }
      return sum / ((width * height) / 12);
    }),
  );
}

/** Means of 48 × 36 boxes of one picture, as signal. */
function smallPicture(luma: DecodedLuma, at: number): readonly number[] {
  const { width, height, bitDepth } = luma;
  const frame = luma.frames[at]!;
  const boxOf = Int32Array.from(
    { length: width },
    (_, column) => Math.ceil(((column + 1) * 48) / width) - 1,
  );
  const sums = new Array<number>(48 * 36).fill(0);
  const counts = new Array<number>(48 * 36).fill(0);
  for (let row = 0; row < height; row += 1) {
    // The box in whose whole columns and rows this sample lies.
    const boxRow = Math.ceil(((row + 1) * 36) / height) - 1;
    for (let column = 0; column < width; column += 1) {
      const box = boxRow * 48 + boxOf[column]!;
      sums[box]! += signalOf(frame[row * width + column]!, bitDepth, false);
      counts[box]! += 1;
    }
  }
  return sums.map((sum, box) => sum / counts[box]!);
}

/**
 * The 72 numbers of each camera frame: the core's own sum, which its tests judge, over small pictures
 * that are made here from another decoder's samples.
 */
export function gramByHand(luma: DecodedLuma): readonly Float64Array[] {
  const { add } = gramAccumulator();
  return luma.frames.map((_, at) => add(smallPicture(luma, at)));
}
