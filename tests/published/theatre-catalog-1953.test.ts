import { describe, expect, test } from 'vitest';
import { framesOnLength, lengthMillimetresOf, runningSeconds } from '../../src/core/film-length.ts';
import { convertUnit } from '../../src/core/quantity/units.ts';
import {
  woundLengthMillimetres,
  woundThicknessMillimetres,
  WOUND_THICKNESS,
} from '../../src/core/reel-length.ts';

const inches = (value: number): number => convertUnit(value, 'in', 'mm');
const feet = (value: number): number => convertUnit(value, 'ft', 'mm');

describe('Theatre Catalog 1953–54', () => {
  test('two hours of 35 mm film are 10,800 ft, nearly two miles', () => {
    const millimetres = lengthMillimetresOf(2 * 3600 * 24, '35mm', 'frames-per-foot');
    expect(convertUnit(millimetres, 'mm', 'ft')).toBeCloseTo(10_800, 9);
    expect(convertUnit(millimetres, 'mm', 'ft')).toBeGreaterThan(1.95 * 5280);
    expect(runningSeconds(framesOnLength(feet(10_800), '35mm', 'frames-per-foot'), 24)).toBe(7200);
  });

  test.each([
    ['colour', 5000, 0.00721, 'acetate-colour'],
    ['black and white', 5500, 0.00656, 'acetate-black-and-white'],
  ] as const)(
    'a 24 in reel with a 5 in hub holds about %s: %i ft, wound %d in thick',
    (_film, capacityFeet, thicknessInches, kind) => {
      const outer = inches(24);
      const core = inches(5);
      const thickness = woundThicknessMillimetres(outer, core, feet(capacityFeet));
      expect(convertUnit(thickness, 'mm', 'in').toFixed(5)).toBe(thicknessInches.toFixed(5));
      expect(woundLengthMillimetres(outer, core, thickness)).toBeCloseTo(feet(capacityFeet), 6);
      // The loose end of our range is this winding, thicker than the film by its air.
      const { minimumMillimetres, maximumMillimetres } = WOUND_THICKNESS[kind];
      expect(maximumMillimetres).toBeCloseTo(thickness, 3);
      expect(thickness / minimumMillimetres).toBeGreaterThan(1.08);
      expect(thickness / minimumMillimetres).toBeLessThan(1.12);
    },
  );
});
