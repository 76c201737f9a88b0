import type { HTMLElement } from 'node-html-parser';

/** A box of a path that is made of boxes. */
export interface PathBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const MOVE_AND_BOX = /([Mm])([\d.-]+) ([\d.-]+)h([\d.]+)v([\d.]+)/gu;

/**
 * The boxes of a path, in order. Each starts with a move to its upper left corner; a small m counts
 * from the start of the box before.
 */
export function pathBoxes(path: HTMLElement | null): readonly PathBox[] {
  const start = { x: 0, y: 0 };
  return [...(path?.getAttribute('d') ?? '').matchAll(MOVE_AND_BOX)].map(
    ([, move, x, y, across, down]) => {
      start.x = Number(x) + (move === 'm' ? start.x : 0);
      start.y = Number(y) + (move === 'm' ? start.y : 0);
      return { ...start, width: Number(across), height: Number(down) };
    },
  );
}
