// Pictures with lettering, every code value and a number, and the files that a camera would make of them.
import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AS_STORED, runFfmpeg } from './ffmpeg.ts';
import { makeAllOnce } from './made-once.ts';

export const WIDTH = 96;
export const HEIGHT = 64;

/** One plane of a picture, row by row. */
export interface Plane {
  readonly width: number;
  readonly height: number;
  readonly values: Uint16Array;
}

/** Luma and the two planes of colour. */
export type Picture = readonly Plane[];

/** How code values are stored. */
export interface Layout {
  readonly pixelFormat: 'yuv420p' | 'yuv422p10le';
  readonly bits: 8 | 10;
  readonly chromaRows: 1 | 2;
}

export const EIGHT_BIT: Layout = { pixelFormat: 'yuv420p', bits: 8, chromaRows: 2 };
export const TEN_BIT: Layout = { pixelFormat: 'yuv422p10le', bits: 10, chromaRows: 1 };

/** A letter that looks different in each of the four ways round. */
const LETTER = ['#####', '#....', '####.', '#....', '#....'];
const LETTER_AT = { left: 8, top: 16, scale: 4 };
/** Patches of black and of white, of the lowest and the highest code. */
const PATCH = { top: 40, height: 16, black: 8, white: 32, width: 16 };
const NUMBER_AT = { left: 48, top: 12, block: 8, height: 26 };
const DIGITS = 6;

function lumaAt(x: number, y: number, number: number, levels: number): number {
  const unit = levels / 256;
  // All code values of 8 bits stand in the first three rows, all of 10 bits in the first eleven.
  if (y < 11) return (y * WIDTH + x + number) % levels;
  const letterX = Math.floor((x - LETTER_AT.left) / LETTER_AT.scale);
  const letterY = Math.floor((y - LETTER_AT.top) / LETTER_AT.scale);
  if (LETTER[letterY]?.[letterX] === '#') return 210 * unit;
  const inPatch = y >= PATCH.top && y < PATCH.top + PATCH.height;
  if (inPatch && x >= PATCH.black && x < PATCH.black + PATCH.width) return 0;
  if (inPatch && x >= PATCH.white && x < PATCH.white + PATCH.width) return levels - 1;
  const digit = Math.floor((x - NUMBER_AT.left) / NUMBER_AT.block);
  if (digit >= 0 && digit < DIGITS && y >= NUMBER_AT.top && y < NUMBER_AT.top + NUMBER_AT.height) {
    return (((number >> digit) & 1) === 1 ? 200 : 40) * unit;
  }
  return 110 * unit;
}

function plane(width: number, height: number, at: (x: number, y: number) => number): Plane {
  const values = new Uint16Array(width * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) values[y * width + x] = at(x, y);
  }
  return { width, height, values };
}

/** The film picture of one number, the right way round. */
export function drawPicture(number: number, layout: Layout): Picture {
  const levels = 2 ** layout.bits;
  const middle = levels / 2;
  const rows = HEIGHT / layout.chromaRows;
  // Colour at the top only, so that the patches below stay grey.
  const colour = (sign: number) =>
    plane(WIDTH / 2, rows, (x, y) =>
      y < rows / 6 ? (middle + sign * (y * (WIDTH / 2) + x + number) + levels) % levels : middle,
    );
  return [plane(WIDTH, HEIGHT, (x, y) => lumaAt(x, y, number, levels)), colour(1), colour(-1)];
}

/** The number in a luma plane; undefined when a pixel of it is off by more than a tolerance. */
export function readNumber(luma: Plane, bits: 8 | 10, tolerance = 0): number | undefined {
  const unit = 2 ** bits / 256;
  let number = 0;
  for (let digit = 0; digit < DIGITS; digit += 1) {
    const x = NUMBER_AT.left + digit * NUMBER_AT.block + NUMBER_AT.block / 2;
    const y = NUMBER_AT.top + NUMBER_AT.height / 2;
    if (luma.values[y * luma.width + x]! > 120 * unit) number += 1 << digit;
  }
  for (let y = NUMBER_AT.top + 2; y < NUMBER_AT.top + NUMBER_AT.height - 2; y += 1) {
    for (let digit = 0; digit < DIGITS; digit += 1) {
      const x = NUMBER_AT.left + digit * NUMBER_AT.block + NUMBER_AT.block / 2;
      const wanted = (((number >> digit) & 1) === 1 ? 200 : 40) * unit;
      if (Math.abs(luma.values[y * luma.width + x]! - wanted) > tolerance * unit) return undefined;
    }
  }
  return number;
}

/** A picture with top and bottom changed, left and right changed, or both: by moving single pixels. */
export function turned(picture: Picture, isUpsideDown: boolean, isLeftRight: boolean): Picture {
  return picture.map(({ width, height, values }) =>
    plane(width, height, (x, y) => {
      const fromX = isLeftRight ? width - 1 - x : x;
      const fromY = isUpsideDown ? height - 1 - y : y;
      return values[fromY * width + fromX]!;
    }),
  );
}

/** Picture of two fields: even rows of the first, odd rows of the second. */
export function woven(first: Picture, second: Picture): Picture {
  return first.map(({ width, height, values }, at) =>
    plane(width, height, (x, y) => (y % 2 === 0 ? values : second[at]!.values)[y * width + x]!),
  );
}

/** The bytes of a picture as a file without a wrapper holds them, plane after plane. */
export function packed(picture: Picture, bits: 8 | 10): Buffer {
  return Buffer.concat(
    picture.map(({ values }) =>
      bits === 8
        ? Buffer.from(Uint8Array.from(values))
        : Buffer.from(Uint16Array.from(values).buffer),
    ),
  );
}

/** What a camera records. */
export interface Clip {
  readonly fileName: string;
  readonly layout: Layout;
  readonly pictures: readonly Picture[];
  readonly fps: string;
  /** More options of the coder. */
  readonly options: readonly string[];
}

/**
 * Writes pictures as a camera would, without loss, so that every code value is known. All clips are
 * written by one run of the program.
 */
export function writeClips(folder: string, clips: readonly Clip[]): void {
  const coded = clips.map(({ fileName, layout, pictures, fps, options }) => {
    const isFull = options.includes('pc');
    const pixelFormat = isFull && layout.bits === 8 ? 'yuvj420p' : layout.pixelFormat;
    const size = `${WIDTH}x${HEIGHT}`;
    return {
      fileName,
      reading: ['-f', 'rawvideo', '-pix_fmt', pixelFormat, '-s', size, '-r', fps],
      coding: ['-c:v', 'libx264', '-qp', '0', ...options],
      bytes: Buffer.concat(pictures.map((picture) => packed(picture, layout.bits))),
    };
  });
  const files = coded.map(({ fileName, reading, coding, bytes }) => ({
    path: join(folder, fileName),
    from: [...reading, ...coding, bytes],
  }));
  makeAllOnce(files, (missing) => {
    const unwrapped = mkdtempSync(join(tmpdir(), 'unwrapped-'));
    try {
      const inputs = missing.flatMap((at) => {
        const path = join(unwrapped, String(at));
        writeFileSync(path, coded[at]!.bytes);
        return [...coded[at]!.reading, '-i', path];
      });
      const outputs = missing.flatMap((at, input) => {
        const { coding, fileName } = coded[at]!;
        return ['-map', `${input}:v`, ...coding, fileName];
      });
      runFfmpeg([...inputs, ...outputs], folder);
    } finally {
      rmSync(unwrapped, { recursive: true, force: true });
    }
  });
}

/** The same for one clip. */
export function writeClip(
  folder: string,
  fileName: string,
  layout: Layout,
  pictures: readonly Picture[],
  fps: string,
  options: readonly string[],
): void {
  writeClips(folder, [{ fileName, layout, pictures, fps, options }]);
}

/**
 * Every picture of a file as stored, or in an 8-bit layout where one is asked for.
 *
 * @param further  options of one more output of the same run, such as the sound of the file
 */
export function readClip(
  folder: string,
  fileName: string,
  layout: Layout,
  width = WIDTH,
  height = HEIGHT,
  further: readonly string[] = [],
): readonly Picture[] {
  const raw = runFfmpeg(
    ['-i', fileName, '-map', '0:v:0', ...AS_STORED, '-f', 'rawvideo', '-', ...further],
    folder,
  );
  const bytes = layout.bits === 8 ? 1 : 2;
  const sizes = [
    [width, height],
    [width / 2, height / layout.chromaRows],
    [width / 2, height / layout.chromaRows],
  ] as const;
  const pictures: Picture[] = [];
  let at = 0;
  while (at < raw.length) {
    pictures.push(
      sizes.map(([planeWidth, planeHeight]) => {
        const start = at;
        at += planeWidth * planeHeight * bytes;
        return plane(planeWidth, planeHeight, (x, y) => {
          const place = start + (y * planeWidth + x) * bytes;
          return bytes === 1 ? raw[place]! : raw.readUInt16LE(place);
        });
      }),
    );
  }
  return pictures;
}

/** One sum over the sizes and every code value of each picture: alike where two pictures are the same. */
export const pictureSums = (pictures: readonly Picture[]): readonly string[] =>
  pictures.map((picture) => {
    const sum = createHash('sha256');
    for (const { width, height, values } of picture)
      sum.update(`${width} ${height} `).update(Uint16Array.from(values));
    return sum.digest('hex');
  });

/** Mean of a luma plane inside the patch of the lowest or of the highest code. */
export function patchLevel(luma: Plane, which: 'black' | 'white', left = 0, top = 0): number {
  let sum = 0;
  let count = 0;
  for (let y = PATCH.top + 4; y < PATCH.top + PATCH.height - 4; y += 1) {
    for (let x = PATCH[which] + 4; x < PATCH[which] + PATCH.width - 4; x += 1) {
      sum += luma.values[(y - top) * luma.width + (x - left)]!;
      count += 1;
    }
  }
  return sum / count;
}

/** Different code values in the luma of a picture. */
export function levelCount(picture: Picture): number {
  return new Set(picture[0]!.values).size;
}
