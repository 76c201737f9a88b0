import { describe, expect, test } from 'vitest';
import { convertUnit } from '../../src/quantity/units.ts';

// 16 mm silent raw stock, as reproduced in Offenhauser, page 106: inches and mm as printed.
describe('American Standard Z22.5-1947', () => {
  test.each([
    ['A, width', 0.629, 15.98, 2],
    ['tolerance of A', 0.001, 0.03, 2],
    ['B, pitch', 0.3, 7.62, 3],
    ['tolerance of B', 0.0005, 0.013, 3],
    ['C, hole width', 0.072, 1.83, 2],
    ['D, hole height', 0.05, 1.27, 2],
    ['E, edge to hole', 0.036, 0.91, 2],
    ['G, transverse pitch', 0.413, 10.49, 3],
    ['L, 100 pitches', 30, 762, 2],
    ['tolerance of L', 0.03, 0.76, 2],
    ['R, corner', 0.01, 0.25, 2],
  ])('%s: %d in are %d mm', (_name, inch, millimetre, decimals) => {
    expect(Number(convertUnit(inch, 'in', 'mm').toFixed(decimals))).toBeCloseTo(millimetre, 9);
  });
});
