import type { Bitmap } from '../../scene/camera/mix.ts';
import type { FilmFaults } from '../../scene/gate/film-faults.ts';

/** Film frames that are kept at most: 1.2 MB each at the full size. */
const MOST_KEPT = 24;

/** Gives film frames as they are wanted; they may come a little later. */
export interface FilmSupply {
  /** Pixels in a row of a film frame. */
  readonly width: number;
  /** The film frame; undefined while it is on its way. */
  frame(filmFrame: number, faults: FilmFaults): Bitmap | undefined;
}

/** The film frames that were wanted last, by their keys. */
export function keptFrames() {
  const kept = new Map<string, Bitmap>();
  function put(key: string, bitmap: Bitmap): Bitmap {
    // Wanted again: it goes last of those that are thrown away.
    kept.delete(key);
    kept.set(key, bitmap);
    const [oldest] = kept.keys();
    if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
    return bitmap;
  }
  return {
    put,
    find(key: string): Bitmap | undefined {
      const found = kept.get(key);
      return found && put(key, found);
    },
  };
}
