import type { Extent } from '../axis.ts';

interface Mark {
  readonly label: string;
  readonly x: number;
  readonly width: number;
}

/** A mark with the row its name is written in (0 on top), and the side of the line it stands on. */
export interface PlacedMark extends Mark {
  readonly row: number;
  readonly textX: number;
  readonly anchor: 'start' | 'end';
}

/** A name already written, with the line that runs down from it. */
interface Taken extends Extent {
  readonly row: number;
  readonly lineX: number;
}

const GAP = 6;

/** Two names collide in one row, or the line of the upper one runs through the lower. */
function collide(first: Taken, second: Taken): boolean {
  if (first.row === second.row) {
    return first.from < second.to + GAP && second.from < first.to + GAP;
  }
  const [upper, lower] = first.row < second.row ? [first, second] : [second, first];
  return upper.lineX > lower.from - GAP && upper.lineX < lower.to + GAP;
}

/**
 * Stacks the names of upright marks in as few rows as they need: right of their line, or left of it
 * near the right edge. A name that every row refuses gets a row of its own at the bottom.
 */
export function markRows(marks: readonly Mark[], page: Extent): readonly PlacedMark[] {
  const taken: Taken[] = [];
  return [...marks]
    .sort((first, second) => first.x - second.x)
    .map((mark) => {
      const fitsRight = mark.x + GAP + mark.width <= page.to;
      const from = fitsRight ? mark.x : mark.x - GAP - mark.width;
      const to = fitsRight ? mark.x + GAP + mark.width : mark.x;
      const newRow = Math.max(-1, ...taken.map(({ row }) => row)) + 1;
      let row = 0;
      while (row < newRow) {
        const wanted = { row, from, to, lineX: mark.x };
        if (!taken.some((other) => collide(other, wanted))) break;
        row += 1;
      }
      taken.push({ row, from, to, lineX: mark.x });
      return {
        ...mark,
        row,
        textX: fitsRight ? mark.x + GAP : mark.x - GAP,
        anchor: fitsRight ? 'start' : 'end',
      } as const;
    });
}
