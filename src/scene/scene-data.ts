import type { Side } from './side.ts';

/** What a scene on a page shows, as plain data: its markup carries it, script and build read it. */
export interface SceneData {
  /** One picture, or two either side of the divider. */
  readonly sides: readonly Side[];
  /** What each side is called. */
  readonly labels: readonly string[];
  /** Whether it starts as thirteen pictures in strips, or as one picture. */
  readonly starts: 'strips' | 'picture';
}
