import type { VerdictLevel } from '../worksheets/machine/types.ts';

/** Word and mark of each level; the mark is a shape, so that colour is never the only sign. */
export const LEVEL_SIGNS: Readonly<Record<VerdictLevel, { mark: string; word: string }>> = {
  good: { mark: '✓', word: 'Good' },
  care: { mark: '▲', word: 'With care' },
  stop: { mark: '✕', word: 'Stop' },
  note: { mark: '■', word: 'Result' },
};
