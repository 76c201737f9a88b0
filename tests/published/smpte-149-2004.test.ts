import { describe, expect, test } from 'vitest';
import { convertUnit } from '../../src/quantity/units.ts';

// Table 1, 8 mm type S perforated along one edge: inches and millimetres as printed.
const inches = (value: number): number => convertUnit(value, 'in', 'mm');

describe('SMPTE 149, Table 1', () => {
  test.each([
    ['film width', 0.314, 7.976, 3],
    ['tolerance of the width', 0.0015, 0.038, 3],
    ['perforation pitch, long', 0.1667, 4.234, 3],
    ['perforation pitch, short', 0.1664, 4.227, 3],
    ['tolerance of the pitch', 0.0004, 0.01, 3],
    ['perforation width', 0.036, 0.914, 3],
    ['perforation height', 0.045, 1.143, 3],
    ['edge to perforation', 0.02, 0.51, 2],
    ['tolerance of the edge distance', 0.002, 0.05, 2],
    ['radius of the perforation', 0.005, 0.13, 2],
    ['100 pitches, long', 16.67, 423.42, 2],
    ['100 pitches, short', 16.64, 422.66, 2],
    ['tolerance of 100 pitches', 0.017, 0.43, 2],
  ])('%s: %d in are %d mm', (_name, inch, millimetre, decimals) => {
    expect(inches(inch).toFixed(decimals)).toBe(millimetre.toFixed(decimals));
  });
});
