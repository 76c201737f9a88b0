import type { FilmFaults, FilmInGate } from './gate/film-faults.ts';
import { hasRareFaults, makeFilmInGate } from './gate/film-in-gate.ts';
import type { RareFaults } from './gate/rare-faults.ts';
import type { MakeSheet } from './drawing/sheet.ts';

// Draws film frames away from the page, so that nothing on it waits for them.

/** First message: the size. */
export interface WorkerSize {
  readonly width: number;
}

/** Every other one: a film frame that is wanted. */
export interface WorkerWish {
  /** Comes back with the frame. */
  readonly key: string;
  readonly filmFrame: number;
  readonly faults: FilmFaults;
}

/** A film frame; the pixels are handed over, not copied. */
interface WorkerFrame {
  readonly key: string;
  readonly pixels: ArrayBuffer;
}

/** What comes back: once that all is ready, then film frames. */
export type WorkerAnswer = WorkerFrame | { readonly isReady: true };

const makeSheet: MakeSheet = (width, height, isRead) => {
  const canvas = new OffscreenCanvas(width, height);
  const pen = canvas.getContext('2d', { willReadFrequently: isRead });
  if (pen === null) throw new Error('no canvas');
  return { width, height, pen, image: canvas };
};

/** The part of a worker's own world that is used here; the page's types do not know it. */
interface WorkerSelf {
  onmessage: ((event: MessageEvent<WorkerSize | WorkerWish>) => void) | null;
  postMessage(answer: WorkerAnswer, handedOver?: readonly ArrayBuffer[]): void;
}
const worker = globalThis as unknown as WorkerSelf;

let filmInGate: FilmInGate | undefined;
let rare: RareFaults | undefined;

async function answer({ key, filmFrame, faults }: WorkerWish): Promise<void> {
  if (rare === undefined && hasRareFaults(faults)) {
    rare = (await import('./gate/rare-faults.ts')).rareFaults;
  }
  if (filmInGate === undefined) return;
  const { buffer } = filmInGate(filmFrame, faults);
  worker.postMessage({ key, pixels: buffer }, [buffer]);
}

worker.onmessage = ({ data }) => {
  if (!('width' in data)) {
    void answer(data);
    return;
  }
  filmInGate = makeFilmInGate(makeSheet, data.width, () => rare);
  worker.postMessage({ isReady: true });
};
