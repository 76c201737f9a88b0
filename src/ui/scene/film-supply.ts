import type { Bitmap } from '../../scene/camera/mix.ts';
import type { MakeSheet } from '../../scene/drawing/sheet.ts';
import type { WorkerFrame, WorkerSize, WorkerWish } from '../../scene/film-worker.ts';
import type { FilmFaults } from '../../scene/gate/film-faults.ts';

/** Film frames that are kept at most: 1.2 MB each at the full size. */
const MOST_KEPT = 24;

/** Gives film frames as they are wanted; they come a little later. */
export interface FilmSupply {
  /** Pixels in a row of a film frame. */
  readonly width: number;
  /** The film frame; undefined while it is on its way. */
  frame(filmFrame: number, faults: FilmFaults): Bitmap | undefined;
}

const keyOf = (filmFrame: number, faults: FilmFaults): string =>
  `${filmFrame} ${JSON.stringify(faults)}`;

/** Film frames from a worker, the last ones wanted kept. */
function fromWorker(worker: Worker, width: number, arrived: () => void): FilmSupply {
  const kept = new Map<string, Bitmap>();
  const asked = new Set<string>();
  const size: WorkerSize = { width };
  worker.postMessage(size);
  worker.addEventListener('message', ({ data }: MessageEvent<WorkerFrame>) => {
    asked.delete(data.key);
    kept.set(data.key, new Uint32Array(data.pixels));
    const [oldest] = kept.keys();
    if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
    arrived();
  });
  return {
    width,
    frame(filmFrame, faults) {
      const key = keyOf(filmFrame, faults);
      const found = kept.get(key);
      if (found !== undefined) {
        // Wanted again: it goes last of those that are thrown away.
        kept.delete(key);
        kept.set(key, found);
      } else if (!asked.has(key)) {
        asked.add(key);
        const wish: WorkerWish = { key, filmFrame, faults };
        worker.postMessage(wish);
      }
      return found;
    },
  };
}

const makeSheet: MakeSheet = (width, height, willReadFrequently) => {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext('2d', { willReadFrequently });
  if (pen === null) throw new Error('this browser draws no canvas');
  return { width, height, pen, image: canvas };
};

/** Film frames drawn on the page itself, half as large, where a worker has no canvas. */
async function onPage(): Promise<FilmSupply> {
  const { makeAnyFilmInGate } = await import('../../scene/gate/any-film-in-gate.ts');
  const width = 320;
  const filmInGate = makeAnyFilmInGate(makeSheet, width);
  const kept = new Map<string, Bitmap>();
  return {
    width,
    frame(filmFrame, faults) {
      const key = keyOf(filmFrame, faults);
      const found = kept.get(key) ?? new Uint32Array(filmInGate(filmFrame, faults).buffer);
      kept.delete(key);
      kept.set(key, found);
      const [oldest] = kept.keys();
      if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
      return found;
    },
  };
}

/**
 * Starts the supply of film frames.
 *
 * @param width    pixels in a row
 * @param arrived  called when a film frame has come
 */
export async function startFilmSupply(width: number, arrived: () => void): Promise<FilmSupply> {
  const hasCanvas =
    typeof OffscreenCanvas === 'function' &&
    typeof OffscreenCanvasRenderingContext2D === 'function';
  if (!hasCanvas || typeof Worker !== 'function') return onPage();
  const worker = new Worker(new URL('../../scene/film-worker.ts', import.meta.url), {
    type: 'module',
  });
  return fromWorker(worker, width, arrived);
}
