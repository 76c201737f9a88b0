import { keyOf } from '../../scene/gate/film-faults.ts';
import type { WorkerAnswer, WorkerSize, WorkerWish } from '../../scene/film-worker.ts';
import { keptFrames, type FilmSupply } from './kept-frames.ts';

/** Film frames from a worker that is ready. */
function fromWorker(worker: Worker, width: number, arrived: () => void): FilmSupply {
  const kept = keptFrames();
  const asked = new Set<string>();
  worker.addEventListener('message', ({ data }: MessageEvent<WorkerAnswer>) => {
    if (!('pixels' in data)) return;
    asked.delete(data.key);
    kept.put(data.key, new Uint32Array(data.pixels));
    arrived();
  });
  return {
    width,
    frame(filmFrame, faults) {
      const key = keyOf(filmFrame, faults);
      const found = kept.find(key);
      if (found === undefined && !asked.has(key)) {
        asked.add(key);
        const wish: WorkerWish = { key, filmFrame, faults };
        worker.postMessage(wish);
      }
      return found;
    },
  };
}

/** A worker that has all it draws with; rejected where the browser refuses it, or it finds no canvas. */
function startWorker(width: number): Promise<Worker> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('../../scene/film-worker.ts', import.meta.url), {
      type: 'module',
    });
    worker.addEventListener('error', reject);
    worker.addEventListener(
      'message',
      () => {
        resolve(worker);
      },
      { once: true },
    );
    const size: WorkerSize = { width };
    worker.postMessage(size);
  });
}

/**
 * Starts the supply of film frames: from a worker, or else drawn on the page itself, half as large.
 *
 * @param width    pixels in a row
 * @param arrived  called when a film frame has come
 */
export async function startFilmSupply(width: number, arrived: () => void): Promise<FilmSupply> {
  try {
    return fromWorker(await startWorker(width), width, arrived);
  } catch {
    const { supplyOnPage } = await import('./supply-on-page.ts');
    return supplyOnPage();
  }
}
