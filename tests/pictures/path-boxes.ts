import type { HTMLElement } from 'node-html-parser';

/** A box of a path that is made of boxes, with rounded corners or square ones. */
export interface PathBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const MOVE_AND_BOX = /([Mm])([\d.-]+) ([\d.-]+)h([\d.]+)(?:q([\d.]+) 0 [\d.]+ [\d.]+)?v([\d.]+)/gu;

/**
 * The boxes of a path, in order. Each starts with a move to its upper edge, right of the corner; a
 * small m counts from the start of the box before.
 */
export function pathBoxes(path: HTMLElement | null): readonly PathBox[] {
  const start = { x: 0, y: 0 };
  return [...(path?.getAttribute('d') ?? '').matchAll(MOVE_AND_BOX)].map(
    ([, move, x, y, across, corner = '0', down]) => {
      start.x = Number(x) + (move === 'm' ? start.x : 0);
      start.y = Number(y) + (move === 'm' ? start.y : 0);
      return {
        x: start.x - Number(corner),
        y: start.y,
        width: Number(across) + 2 * Number(corner),
        height: Number(down) + 2 * Number(corner),
      };
    },
  );
}
