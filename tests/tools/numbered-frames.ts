import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { lightBetween, type GateLight } from '../../src/core/gate/gate-light.ts';
import { ffmpeg, FFMPEG_MISSING } from './ffmpeg.ts';
import { makeOnce } from './made-once.ts';

/** Pictures that carry their own number: grey blocks side by side, one for each binary digit. */
const DIGITS = 10;
const BLOCK = 16;
export const WIDTH = DIGITS * BLOCK;
export const HEIGHT = 32;
const DARK = 30;
const BRIGHT = 220;

const levelOf = (number: number, digit: number): number =>
  ((number >> digit) & 1) === 1 ? BRIGHT : DARK;

/** The picture of one number. */
export function drawNumber(number: number): Uint8Array {
  const picture = new Uint8Array(WIDTH * HEIGHT);
  for (let at = 0; at < picture.length; at += 1) {
    picture[at] = levelOf(number, Math.floor((at % WIDTH) / BLOCK));
  }
  return picture;
}

/** The number of a picture; undefined when any pixel is neither level, as in a blend of two. */
export function readNumber(picture: Uint8Array): number | undefined {
  let number = 0;
  for (let digit = 0; digit < DIGITS; digit += 1) {
    if (picture[digit * BLOCK] === BRIGHT) number += 1 << digit;
  }
  for (let at = 0; at < picture.length; at += 1) {
    if (picture[at] !== levelOf(number, Math.floor((at % WIDTH) / BLOCK))) return undefined;
  }
  return number;
}

/** What a camera records off a gate in which film frame 0 begins at time 0. */
export interface Recording {
  readonly light: GateLight;
  readonly cameraFps: number;
  readonly exposureSeconds: number;
  readonly readoutSeconds: number;
  /** Start of the first row of camera frame 0, s. */
  readonly startSeconds: number;
}

/** Camera frame as recorded: each row gathers the light of every film frame that its exposure meets. */
export function expose(recording: Recording, cameraFrame: number): Uint8Array {
  const { light, cameraFps, exposureSeconds, readoutSeconds, startSeconds } = recording;
  const picture = new Uint8Array(WIDTH * HEIGHT);
  const full = light.meanLevel * exposureSeconds;
  for (let row = 0; row < HEIGHT; row += 1) {
    const start = startSeconds + cameraFrame / cameraFps + (readoutSeconds * row) / (HEIGHT - 1);
    const end = start + exposureSeconds;
    const sums = new Array<number>(DIGITS).fill(0);
    const first = Math.floor(start / light.periodSeconds);
    const last = Math.floor(end / light.periodSeconds);
    for (let film = first; film <= last; film += 1) {
      const from = Math.max(start, film * light.periodSeconds);
      const to = Math.min(end, (film + 1) * light.periodSeconds);
      const share = lightBetween(light, from, to) / full;
      // Before the first film frame the leader is all dark digits except the last.
      const number = film < 0 ? 2 ** (DIGITS - 1) : film;
      for (let digit = 0; digit < DIGITS; digit += 1) {
        sums[digit] = (sums[digit] ?? 0) + share * levelOf(number, digit);
      }
    }
    for (let column = 0; column < WIDTH; column += 1) {
      const level = sums[Math.floor(column / BLOCK)] ?? 0;
      picture[row * WIDTH + column] = Math.min(255, Math.round(level));
    }
  }
  return picture;
}

/** A folder for one test, gone afterwards. */
export function withFolder<Result>(work: (folder: string) => Result): Result {
  const folder = mkdtempSync(join(tmpdir(), 'numbered-frames-'));
  try {
    return work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function program(): string {
  if (ffmpeg === undefined) throw new Error(FFMPEG_MISSING);
  return ffmpeg.path;
}

/** Writes pictures as a lossless video file. */
export function writeVideo(
  folder: string,
  fileName: string,
  fps: string,
  pictures: readonly Uint8Array[],
): void {
  const size = `${WIDTH}x${HEIGHT}`;
  const raw = ['-f', 'rawvideo', '-pix_fmt', 'gray', '-s', size, '-r', fps, '-i', '-'];
  const coding = [...raw, '-c:v', 'ffv1'];
  const input = Buffer.concat(pictures);
  makeOnce(join(folder, fileName), [...coding, input], () => {
    const { status, stderr } = spawnSync(program(), ['-y', ...coding, fileName], {
      cwd: folder,
      input,
    });
    if (status !== 0) throw new Error(String(stderr));
  });
}

/** What is in a video file: the number of each picture, its time, and the rate the file states. */
export interface ReadVideo {
  readonly numbers: readonly (number | undefined)[];
  readonly seconds: readonly number[];
  readonly statedFps: number;
}

/** Reads a video file back frame by frame, exactly as stored. */
export function readVideo(folder: string, fileName: string): ReadVideo {
  // No frame may be doubled or dropped in reading; the name of that switch changed with the years.
  const readWith = (asStored: string) =>
    spawnSync(
      program(),
      [
        ...['-nostdin', '-i', fileName, '-vf', 'showinfo', asStored, 'passthrough'],
        ...['-f', 'rawvideo', '-pix_fmt', 'gray', '-'],
      ],
      { cwd: folder, maxBuffer: 2 ** 29 },
    );
  const modern = readWith('-fps_mode');
  const { status, stdout: output, stderr } = modern.status === 0 ? modern : readWith('-vsync');
  const report = String(stderr);
  if (status !== 0) throw new Error(report);
  const numbers: (number | undefined)[] = [];
  for (let at = 0; at + WIDTH * HEIGHT <= output.length; at += WIDTH * HEIGHT) {
    numbers.push(readNumber(output.subarray(at, at + WIDTH * HEIGHT)));
  }
  const seconds = [...report.matchAll(/\bpts_time:\s*(-?[\d.]+)/gu)].map(([, time]) =>
    Number(time),
  );
  const statedFps = Number(/Video: .*?, ([\d.]+) fps/u.exec(report)?.[1] ?? Number.NaN);
  return { numbers, seconds, statedFps };
}
