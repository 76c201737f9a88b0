import type { SweptTable } from './sweep.ts';

/** Cells of a table with the unit that they share taken out, to stand once over them. */
export interface BareCells {
  readonly unit: string;
  readonly cells: readonly string[];
}

/** A number and one unit after a no-break space: `21.6 frames/s`, `±0.18 Hz`, `1/54 s`. */
const NUMBER_AND_UNIT = /^([±−]?[\d\u202f.,/]+)\u00a0([^\s\d]+)$/u;

/** Units that are words and change with the number. */
const PLURALS: Readonly<Record<string, string>> = {
  stop: 'stops',
  semitone: 'semitones',
  frame: 'frames',
};

/**
 * Takes the unit out of cells that all have the same one; words such as “none” may stand between them.
 * Undefined when units differ, or when fewer than two cells have one.
 */
export function bareCells(cells: readonly string[]): BareCells | undefined {
  const read = cells.map((cell) => NUMBER_AND_UNIT.exec(cell));
  const units = new Set(
    read.flatMap((match) => (match?.[2] === undefined ? [] : [PLURALS[match[2]] ?? match[2]])),
  );
  const [unit] = units;
  const hasOtherNumbers = cells.some((cell, index) => read[index] === null && /\d/u.test(cell));
  const withUnit = read.filter((match) => match !== null).length;
  if (unit === undefined || units.size > 1 || hasOtherNumbers || withUnit < 2) return undefined;
  return { unit, cells: cells.map((cell, index) => read[index]?.[1] ?? cell) };
}

/** A swept table as a page prints it: each shared unit once, over its cells. */
export interface PrintedTable {
  readonly caption: string;
  readonly columns: readonly string[];
  /** Cells right of the row heads, row by row. */
  readonly bodies: readonly (readonly string[])[];
}

/** A few words in a cell stay in one line. */
const FEW_LETTERS = 14;

/** Units taken out of the cells, since a narrow screen has no room to repeat them. */
export function printedTable(caption: string, swept: SweptTable): PrintedTable {
  const { columns, headCount, rows, across } = swept;
  const bodies = rows.map((cells) => cells.slice(headCount));
  const inOneLine = (text: string): string =>
    text.length <= FEW_LETTERS ? text.replaceAll(' ', '\u00a0') : text;
  if (across !== undefined) {
    const bare = bareCells(bodies.flat());
    const width = columns.length - headCount;
    return {
      caption: bare === undefined ? caption : `${caption}, in\u00a0${bare.unit}`,
      columns,
      bodies: bodies.map((cells, row) =>
        cells.map((cell, column) => inOneLine(bare?.cells[row * width + column] ?? cell)),
      ),
    };
  }
  const byColumn = columns
    .slice(headCount)
    .map((_, column) => bareCells(bodies.map((cells) => cells[column] ?? '')));
  return {
    caption,
    columns: columns.map((column, index) => {
      const unit = byColumn[index - headCount]?.unit;
      return unit === undefined ? column : `${column} (${unit})`;
    }),
    bodies: bodies.map((cells, row) =>
      cells.map((cell, column) => inOneLine(byColumn[column]?.cells[row] ?? cell)),
    ),
  };
}
