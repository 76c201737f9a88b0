import { describe, expect, test } from 'vitest';
import { depthOfFieldMillimetres, effectiveFNumber } from '../../src/core/gate/lens.ts';

// Table 1 of the spreadsheet: depth of field in mm and effective f-number, as printed, by
// magnification and nominal f-number. Its circle of confusion follows from the table: 0.019 mm.
const BLUR = 0.019;
const fNumbers = [1, 1.2, 1.4, 2, 2.8, 4];
const table: readonly (readonly [number, readonly string[]])[] = [
  [0.1, ['4.2 1.1', '5 1.3', '5.9 1.5', '8.4 2.2', '12 3.1', '17 4.4']],
  [0.2, ['1.1 1.2', '1.4 1.4', '1.6 1.7', '2.3 2.4', '3.2 3.4', '4.6 4.8']],
  [0.3, ['0.55 1.3', '0.66 1.6', '0.77 1.8', '1.1 2.6', '1.5 3.6', '2.2 5.2']],
  [0.5, ['0.23 1.5', '0.27 1.8', '0.32 2.1', '0.46 3', '0.64 4.2', '0.91 6']],
  [1, ['0.076 2', '0.091 2.4', '0.11 2.8', '0.15 4', '0.21 5.6', '0.3 8']],
  [1.5, ['0.042 2.5', '0.051 3', '0.059 3.5', '0.084 5', '0.12 7', '0.17 10']],
  [2, ['0.029 3', '0.034 3.6', '0.04 4.2', '0.057 6', '0.08 8.4', '0.11 12']],
  [3, ['0.017 4', '0.02 4.8', '0.024 5.6', '0.034 8', '0.047 11', '0.068 16']],
  [5, ['0.0091 6', '0.011 7.2', '0.013 8.4', '0.018 12', '0.026 17', '0.036 24']],
  [10, ['0.0042 11', '0.005 13', '0.0059 15', '0.0084 22', '0.012 31', '0.017 44']],
];

/** Half of the last printed digit of a number with two significant digits. */
function halfStep(printed: string): number {
  const value = Number(printed);
  return 0.5000001 * 10 ** (Math.floor(Math.log10(value)) - 1);
}

const cells = table.flatMap(([scale, row]) =>
  row.map((cell, column) => {
    const [depth = '', effective = ''] = cell.split(' ');
    return { scale, fNumber: fNumbers[column]!, depth, effective };
  }),
);

describe('table 1 of the depth-of-field spreadsheet', () => {
  test('is read whole', () => {
    expect(cells).toHaveLength(60);
  });

  test.each(cells)('m $scale, N $fNumber: effective $effective', (cell) => {
    const computed = effectiveFNumber(cell.fNumber, cell.scale);
    expect(Math.abs(computed - Number(cell.effective))).toBeLessThanOrEqual(
      halfStep(cell.effective),
    );
  });

  test.each(cells)('m $scale, N $fNumber: depth of field $depth mm', (cell) => {
    const effective = effectiveFNumber(cell.fNumber, cell.scale);
    const computed = depthOfFieldMillimetres(effective, BLUR, cell.scale);
    expect(Math.abs(computed - Number(cell.depth))).toBeLessThanOrEqual(halfStep(cell.depth));
  });
});
