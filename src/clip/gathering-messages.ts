import type { ByteRange } from './save/copy-plan.ts';

/** What a gathering worker is asked; it answers once, and ends. */
export interface GatheringTask {
  readonly file: Blob;
  readonly ranges: readonly ByteRange[];
}

/** The stretches as one file; `unreadable` where the recording can no longer be read. */
export type GatheringAnswer =
  | { readonly answer: 'gathered'; readonly part: Blob }
  | { readonly answer: 'unreadable' };
