import type { SavedCopy } from './save/save-copy.ts';
import type { WatchOutcome, WatchSettings } from './watch/watch-copy.ts';

/** What the saving worker is asked; it answers once. */
export interface SavingTask {
  readonly file: Blob;
  readonly cameraFrames: Float64Array;
  /** Exact rate of the film as text, for instance `24000/1001`. */
  readonly filmFps: string;
  /** How a copy to watch is made; left out for a copy of coded pictures. */
  readonly watch?: WatchSettings;
}

/** What the saving worker says. */
export type SavingAnswer =
  | { readonly answer: 'progress'; readonly share: number }
  | { readonly answer: 'copied'; readonly copy: SavedCopy }
  | { readonly answer: 'watch-copy'; readonly outcome: WatchOutcome };
