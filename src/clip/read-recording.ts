import type { ReadOutcome, ReadProgress, ReadRequest } from './read/reading.ts';
import type { SoundFound } from './read/sound.ts';
import { readRefusal, type ReadRefusal } from './read/read-refusals.ts';
import type { ReadingAnswer, ReadingTask } from './reading-messages.ts';

export interface ReadOptions extends ReadRequest {
  /** Stops at once, and frees everything. */
  readonly signal?: AbortSignal;
  readonly onProgress?: (progress: ReadProgress) => void;
}

const STOPPED = readRefusal('stopped', 'Reading was stopped.');
const GAVE_UP = readRefusal(
  'damaged',
  'Reading this file broke off: it is damaged, or it needs more memory than there is.',
);

const NOT_LOADED = readRefusal(
  'not-loaded',
  'The part of this book that reads recordings could not be loaded.',
);

/** A worker of its own for reading; ending it frees everything, whatever a file does to it. */
export function startReadingWorker(): Worker {
  return new Worker(new URL('./reading-worker.ts', import.meta.url), { type: 'module' });
}

/** Asks a worker of its own one thing, and ends it. */
function askOnce<Result>(
  task: ReadingTask,
  signal: AbortSignal | undefined,
  take: (answer: ReadingAnswer) => Result | undefined,
  refused: (refusal: ReadRefusal) => Result,
): Promise<Result> {
  return new Promise((resolve) => {
    if (signal?.aborted === true) {
      resolve(refused(STOPPED));
      return;
    }
    const worker = startReadingWorker();
    const end = (result: Result): void => {
      worker.terminate();
      signal?.removeEventListener('abort', stop);
      resolve(result);
    };
    const stop = (): void => {
      end(refused(STOPPED));
    };
    signal?.addEventListener('abort', stop);
    worker.addEventListener('error', (event) => {
      // What cannot be loaded tells nothing of itself; what breaks off has words.
      end(refused(event.message ? GAVE_UP : NOT_LOADED));
    });
    worker.addEventListener('message', ({ data }: MessageEvent<ReadingAnswer>) => {
      if (data.answer === 'refused') {
        end(refused(data.refusal));
        return;
      }
      const result = take(data);
      if (result !== undefined) end(result);
    });
    worker.postMessage(task);
  });
}

/**
 * Reads a recording of the gate in a worker: the time of each camera frame, and what the core needs of
 * its pictures. Nothing leaves the device; memory does not grow with the size of the pictures, and by
 * 0.1 kB (gate) or 0.3 kB (film) with each frame.
 *
 * @param file  what the reader chose, dropped or pasted
 * @param options  which part, for what, and how to stop
 * @returns `gate`: light of twelve bands for each frame. `film`: motion of twelve bands. `refused`: the
 * reason with its own sentence, advice, and a command where one helps. Never rejects because of a file.
 */
export function readRecording(file: Blob, options: ReadOptions): Promise<ReadOutcome> {
  const { signal, onProgress, ...request } = options;
  return askOnce<ReadOutcome>(
    { task: 'read', file, request },
    signal,
    (answer) => {
      if (answer.answer === 'progress') onProgress?.(answer.progress);
      return answer.answer === 'read' ? answer.outcome : undefined;
    },
    (refusal) => ({ kind: 'refused', refusal }),
  );
}

/** Sound of a recording, its absence, or why it cannot be read. */
export type SoundOutcome = SoundFound | { readonly kind: 'refused'; readonly refusal: ReadRefusal };

/**
 * Decodes the sound of a part of a recording to one channel, for a second reading of the film rate.
 *
 * @param fromSeconds  beginning, s from the first frame
 * @param seconds  length, s; at most a minute is given
 */
export function readSound(
  file: Blob,
  fromSeconds: number,
  seconds: number,
  signal?: AbortSignal,
): Promise<SoundOutcome> {
  return askOnce<SoundOutcome>(
    { task: 'sound', file, fromSeconds, seconds },
    signal,
    (answer) => (answer.answer === 'sound' ? answer.found : undefined),
    (refusal) => ({ kind: 'refused', refusal }),
  );
}
