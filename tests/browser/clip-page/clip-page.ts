// What a page would do with a chosen file, one function for each thing; the tests call them by name.
import Fraction from 'fraction.js';
import { readRecording, readSound, type ReadOptions } from '../../../src/clip/read-recording.ts';
import { RecordingPictures } from '../../../src/clip/recording-pictures.ts';
import { makeCopyToWatch, removeCopyToWatch, saveFilm } from '../../../src/clip/save-film.ts';
import { forecastCopy } from '../../../src/clip/save/save-copy.ts';
import { sweepPrivateFiles } from '../../../src/clip/watch/private-file.ts';

function chosen(): File {
  const file = document.querySelector<HTMLInputElement>('#file')?.files?.[0];
  if (file === undefined) throw new Error('no file is chosen');
  return file;
}

/** Bytes as text, 32 kB at a time, to leave the page. */
async function asBase64(file: Blob): Promise<string> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  let text = '';
  for (let at = 0; at < bytes.length; at += 0x8000) {
    text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  }
  return btoa(text);
}

/** A reading with its numbers as plain lists. */
async function read(options: ReadOptions): Promise<unknown> {
  let reports = 0;
  const begin = performance.now();
  const outcome = await readRecording(chosen(), {
    ...options,
    onProgress: () => {
      reports += 1;
    },
  });
  const milliseconds = performance.now() - begin;
  if (outcome.kind === 'refused') return outcome;
  const { kind, facts, firstFrame, frameCount, bitDepth, pictureFormat, readingSeconds } = outcome;
  const told = {
    kind,
    facts,
    firstFrame,
    frameCount,
    bitDepth,
    pictureFormat,
    readingSeconds,
    reports,
    milliseconds,
  };
  return outcome.kind === 'gate'
    ? {
        ...told,
        frameSeconds: [...outcome.light.frameSeconds],
        bands: [...outcome.light.bands],
        clippedShare: outcome.light.clippedShare,
        blackShare: outcome.light.blackShare,
      }
    : {
        ...told,
        frameSeconds: [...outcome.motion.frameSeconds],
        gram: [...outcome.motion.gram],
      };
}

/** Time and facts of a reading, without its numbers: handing them over would take memory of its own. */
async function timeReading(options: ReadOptions): Promise<unknown> {
  const begin = performance.now();
  const outcome = await readRecording(chosen(), options);
  const milliseconds = performance.now() - begin;
  if (outcome.kind === 'refused') return outcome;
  const { kind, facts, frameCount, readingSeconds } = outcome;
  return { kind, facts, frameCount, readingSeconds, milliseconds };
}

/** A reading that is stopped once so many milliseconds have gone by. */
async function readStopped(milliseconds: number): Promise<unknown> {
  const stop = new AbortController();
  setTimeout(() => {
    stop.abort();
  }, milliseconds);
  return readRecording(chosen(), { want: 'film', signal: stop.signal });
}

async function sound(seconds: number): Promise<unknown> {
  const outcome = await readSound(chosen(), 0, seconds);
  if (outcome.kind !== 'sound') return outcome;
  const { sampleRate, samples, firstSeconds } = outcome.sound;
  return { kind: 'sound', sampleRate, firstSeconds, samples };
}

/** Mean red, green and blue of a picture, by way of the page’s own drawing. */
function meanColour(bitmap: ImageBitmap): readonly number[] {
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  const context = canvas.getContext('2d')!;
  context.drawImage(bitmap, 0, 0);
  const { data } = context.getImageData(0, 0, bitmap.width, bitmap.height);
  const sums = [0, 0, 0];
  for (let at = 0; at < data.length; at += 4) {
    for (let part = 0; part < 3; part += 1) sums[part] = (sums[part] ?? 0) + (data[at + part] ?? 0);
  }
  return sums.map((sum) => sum / (data.length / 4));
}

/** Some pictures of a strip, then kept frames as a player takes them. */
async function pictures(strip: readonly number[], film: readonly number[]): Promise<unknown> {
  const opened = await RecordingPictures.open(chosen(), 64);
  const told = (cameraFrame: number, bitmap: ImageBitmap): unknown => {
    const { width, height } = bitmap;
    const colour = meanColour(bitmap);
    bitmap.close();
    return { cameraFrame, width, height, colour };
  };
  const shown: unknown[] = [];
  for (const frame of strip) {
    const picture = await opened.pictureOfFrame(frame);
    shown.push(picture === undefined ? undefined : told(picture.cameraFrame, picture.bitmap));
  }
  const played: unknown[] = [];
  for await (const { cameraFrame, bitmap } of opened.film(film))
    played.push(told(cameraFrame, bitmap));
  const { frameCount } = opened;
  opened.close();
  return { frameCount, shown, played };
}

async function save(cameraFrames: readonly number[], rate: string): Promise<unknown> {
  const copy = await saveFilm(chosen(), { cameraFrames, filmFps: new Fraction(rate) });
  if (copy.kind === 'refused') return copy;
  return { ...copy, file: await asBase64(copy.file) };
}

/** Time to a saved and checked file, without its bytes. */
async function timeSaving(cameraFrames: readonly number[], rate: string): Promise<unknown> {
  const begin = performance.now();
  const { kind } = await saveFilm(chosen(), { cameraFrames, filmFps: new Fraction(rate) });
  return { kind, milliseconds: performance.now() - begin };
}

async function forecast(cameraFrames: readonly number[], rate: string): Promise<unknown> {
  return forecastCopy(chosen(), cameraFrames, new Fraction(rate));
}

interface WatchOptions {
  readonly turn: { readonly isUpsideDown: boolean; readonly isLeftRightChanged: boolean };
  readonly crop?: { left: number; top: number; width: number; height: number };
  readonly bitsPerSecond: number;
  readonly codecs?: readonly ('avc' | 'vp9')[];
  readonly stopAtShare?: number;
}

/** Names in the browser’s store for this page. */
async function stored(): Promise<readonly string[]> {
  const root = await navigator.storage.getDirectory();
  const names: string[] = [];
  for await (const name of root.keys()) names.push(name);
  return names;
}

async function watch(
  cameraFrames: readonly number[],
  rate: string,
  options: WatchOptions,
): Promise<unknown> {
  const { stopAtShare, ...settings } = options;
  const stop = new AbortController();
  const begin = performance.now();
  const outcome = await makeCopyToWatch(chosen(), {
    cameraFrames,
    filmFps: new Fraction(rate),
    ...settings,
    signal: stop.signal,
    onProgress: (share) => {
      if (stopAtShare !== undefined && share >= stopAtShare) stop.abort();
    },
  });
  const milliseconds = performance.now() - begin;
  if (outcome.kind === 'refused') return { ...outcome, stored: await stored() };
  const file = await asBase64(outcome.file);
  const storedBefore = await stored();
  await removeCopyToWatch(outcome.privateName);
  return { ...outcome, file, milliseconds, storedBefore, stored: await stored() };
}

async function leaveOldCopy(name: string): Promise<readonly string[]> {
  const root = await navigator.storage.getDirectory();
  await root.getFileHandle(name, { create: true });
  await sweepPrivateFiles();
  return stored();
}

Object.assign(globalThis, {
  clipPage: {
    read,
    timeReading,
    readStopped,
    sound,
    pictures,
    save,
    timeSaving,
    forecast,
    watch,
    stored,
    leaveOldCopy,
  },
});
