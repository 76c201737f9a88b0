import { describe, expect, test } from 'vitest';
import {
  framesOnLength,
  lengthMillimetresOf,
  runningSeconds,
} from '../../src/core/reel/film-length.ts';
import { convertUnit } from '../../src/quantity/units.ts';
import { woundLengthMillimetres } from '../../src/core/reel/reel-length.ts';

const inches = (value: number): number => convertUnit(value, 'in', 'mm');
const feet = (value: number): number => convertUnit(value, 'ft', 'mm');

describe('Theatre Catalog 1953–54', () => {
  test('two hours of 35 mm film are 10,800 ft, nearly two miles', () => {
    const millimetres = lengthMillimetresOf(2 * 3600 * 24, '35mm', 'frames-per-foot');
    expect(convertUnit(millimetres, 'mm', 'ft')).toBeCloseTo(10_800, 9);
    expect(convertUnit(millimetres, 'mm', 'ft')).toBeGreaterThan(1.95 * 5280);
    expect(runningSeconds(framesOnLength(feet(10_800), '35mm', 'frames-per-foot'), 24)).toBe(7200);
  });

  // Film thickness without air from another source, International Projectionist of 1958.
  test.each([
    ['colour', 5000, 0.0065],
    ['black and white', 5500, 0.006],
  ])(
    'a 24 in reel with a 5 in hub holds about as much %s film as printed: %i ft',
    (_film, capacityFeet, filmInches) => {
      const airless = woundLengthMillimetres(inches(24), inches(5), inches(filmInches));
      // The printed capacities are round and leave air between the turns and a margin at the rim.
      expect(feet(capacityFeet) / airless).toBeLessThan(1);
      expect(feet(capacityFeet) / airless).toBeGreaterThan(0.88);
    },
  );
});
