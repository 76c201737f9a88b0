import type { GatheringAnswer, GatheringTask } from './gathering-messages.ts';
import { gatherHere, type GatherRanges } from './save/gather-ranges.ts';
import {
  forecastCopy,
  saveCopy,
  type SavedCopy,
  type SaveForecast,
  type SaveRequest,
} from './save/save-copy.ts';
import { saveRefusal } from './save/save-refusals.ts';
import type { SavingAnswer, SavingTask } from './saving-messages.ts';
import { privateFileName, sweepPrivateFiles } from './watch/private-file.ts';
import type { WatchOutcome, WatchSettings } from './watch/watch-copy.ts';

/** Whether a file begins like Matroska. */
async function isMatroska(file: Blob): Promise<boolean> {
  const beginning = new Uint8Array(await file.slice(0, 4).arrayBuffer());
  return [0x1a, 0x45, 0xdf, 0xa3].every((byte, at) => beginning[at] === byte);
}

/** Gathers stretches in a worker that ends with them; here, should there be no worker. */
const gatherInWorker: GatherRanges = (file, ranges) =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./gathering-worker.ts', import.meta.url), {
      type: 'module',
    });
    worker.addEventListener('error', () => {
      worker.terminate();
      resolve(gatherHere(file, ranges));
    });
    worker.addEventListener('message', ({ data }: MessageEvent<GatheringAnswer>) => {
      worker.terminate();
      if (data.answer === 'gathered') resolve(data.part);
      else reject(new DOMException('The recording can no longer be read.', 'NotReadableError'));
    });
    worker.postMessage({ file, ranges } satisfies GatheringTask);
  });

/** Asks a saving worker of its own; `stopped` is the answer when the signal comes first. */
function askSaving<Result>(
  task: SavingTask,
  { signal, onProgress }: Pick<SaveRequest, 'signal' | 'onProgress'>,
  take: (answer: SavingAnswer) => Result | undefined,
  stopped: () => Promise<Result>,
): Promise<Result> {
  return new Promise((resolve, reject) => {
    if (signal?.aborted === true) {
      resolve(stopped());
      return;
    }
    const worker = new Worker(new URL('./saving-worker.ts', import.meta.url), { type: 'module' });
    const end = (): void => {
      worker.terminate();
      signal?.removeEventListener('abort', stop);
    };
    const stop = (): void => {
      end();
      resolve(stopped());
    };
    signal?.addEventListener('abort', stop);
    worker.addEventListener('error', ({ message }) => {
      end();
      reject(new Error(message));
    });
    worker.addEventListener('message', ({ data }: MessageEvent<SavingAnswer>) => {
      if (data.answer === 'progress') {
        onProgress?.(data.share);
        return;
      }
      const result = take(data);
      if (result === undefined) return;
      end();
      resolve(result);
    });
    worker.postMessage(task);
  });
}

/**
 * Saves the kept frames as a film file at the film’s rate without coding anything anew: out of MP4 and
 * MOV by a new index around the recording’s own bytes, out of Matroska packet by packet. Only where
 * every kept picture is proven to stand alone; otherwise the reason, and what to do.
 */
export async function saveFilm(file: Blob, request: SaveRequest): Promise<SavedCopy> {
  if (!(await isMatroska(file))) return saveCopy(file, request, gatherInWorker);
  return askSaving<SavedCopy>(
    {
      file,
      cameraFrames: Float64Array.from(request.cameraFrames),
      filmFps: request.filmFps.toFraction(),
    },
    request,
    (answer) => (answer.answer === 'copied' ? answer.copy : undefined),
    () =>
      Promise.resolve({
        kind: 'refused',
        refusal: saveRefusal('stopped', 'Saving was stopped; nothing was written.'),
      }),
  );
}

/**
 * How large the copy of the kept frames will be, before anything is written: to the byte where the index
 * of the recording tells it (MP4, MOV), else about, from the share of the frames that is kept.
 *
 * @param cameraFrameCount  frames of the whole recording
 */
export async function forecastFilm(
  file: Blob,
  { cameraFrames, filmFps }: Pick<SaveRequest, 'cameraFrames' | 'filmFps'>,
  cameraFrameCount: number,
): Promise<SaveForecast> {
  if (!(await isMatroska(file))) return forecastCopy(file, cameraFrames, filmFps);
  const keptShare = cameraFrames.length / Math.max(1, cameraFrameCount);
  return {
    kind: 'possible',
    totalBytes: file.size * keptShare,
    isExact: false,
    leavesSoundOut: false,
  };
}

/** What the reader chose for a copy to watch. */
export type WatchRequest = SaveRequest & Omit<WatchSettings, 'privateName'>;

/**
 * Makes a copy to watch: 8 bits, coded anew by the browser (H.264 in MP4, else VP9 in WebM). Copies that
 * an earlier visit left in the browser’s store are removed first; on stopping, nothing is left.
 */
export async function makeCopyToWatch(file: Blob, request: WatchRequest): Promise<WatchOutcome> {
  const { cameraFrames, filmFps, turn, crop, bitsPerSecond, codecs } = request;
  await sweepPrivateFiles();
  const privateName = privateFileName();
  return askSaving<WatchOutcome>(
    {
      file,
      cameraFrames: Float64Array.from(cameraFrames),
      filmFps: filmFps.toFraction(),
      watch: {
        privateName,
        turn,
        bitsPerSecond,
        ...(crop === undefined ? {} : { crop }),
        ...(codecs === undefined ? {} : { codecs }),
      },
    },
    request,
    (answer) => (answer.answer === 'watch-copy' ? answer.outcome : undefined),
    async () => {
      await removeCopyToWatch(privateName);
      return {
        kind: 'refused',
        refusal: {
          obstacle: 'stopped',
          sentence: 'Making the copy was stopped; what was written is removed.',
          advice: 'Begin again when you are ready.',
        },
      };
    },
  );
}

/** How often a file is tried that a worker just ended may still hold, and how long between. */
const TRIES = 20;
const BETWEEN_MILLISECONDS = 50;

/** Removes a copy to watch from the browser’s store, once it is downloaded or no longer wanted. */
export async function removeCopyToWatch(privateName: string): Promise<void> {
  for (let attempt = 0; attempt < TRIES; attempt += 1) {
    await sweepPrivateFiles([privateName]);
    const root = await navigator.storage.getDirectory();
    try {
      await root.getFileHandle(privateName);
    } catch {
      return;
    }
    await new Promise((resolve) => {
      setTimeout(resolve, BETWEEN_MILLISECONDS);
    });
  }
}
