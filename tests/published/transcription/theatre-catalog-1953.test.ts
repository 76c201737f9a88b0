import { expect, test } from 'vitest';
import { woundLengthMillimetres, WOUND_THICKNESS } from '../../../src/core/reel/reel-length.ts';

// The loose ends of our ranges are the windings that the printed capacities mean.
test.each([
  ['colour', 5000, 0.00721, 'acetate-colour'],
  ['black and white', 5500, 0.00656, 'acetate-black-and-white'],
] as const)(
  'the loosest %s winding is that of %i ft on a 24 in reel',
  (_film, feet, inch, kind) => {
    const [outer, core, length] = [24 * 25.4, 5 * 25.4, feet * 304.8];
    // The face of the roll, shared out over the length.
    const thickness = ((Math.PI / 4) * (outer ** 2 - core ** 2)) / length;
    expect(woundLengthMillimetres(outer, core, thickness)).toBeCloseTo(length, 6);
    expect((thickness / 25.4).toFixed(5)).toBe(inch.toFixed(5));
    expect(WOUND_THICKNESS[kind].maximumMillimetres).toBeCloseTo(thickness, 3);
  },
);
