import { describe, expect, test } from 'vitest';
import { convertUnit } from '../../src/core/quantity/units.ts';
import {
  outerDiameterMillimetres,
  woundLengthMillimetres,
  WOUND_THICKNESS,
} from '../../src/core/reel-length.ts';

const inches = (value: number): number => convertUnit(value, 'in', 'mm');
const feet = (value: number): number => convertUnit(value, 'ft', 'mm');

describe('International Projectionist, December 1958', () => {
  test.each([
    ['acetate-black-and-white', 0.006],
    ['acetate-colour', 0.0065],
  ] as const)('%s film is %d in thick', (kind, inch) => {
    expect(WOUND_THICKNESS[kind].minimumMillimetres).toBeCloseTo(inches(inch), 9);
  });

  test('a stripe that adds 10 % to the roll leaves 1,440 ft of 1,600', () => {
    const { 'acetate-striped': striped, 'acetate-unsure': plain } = WOUND_THICKNESS;
    const share = plain.minimumMillimetres / striped.minimumMillimetres;
    expect(1600 * share).toBeCloseTo(1440, 0);
    // Dividing by 1.1, as 10 % more thickness would have it, leaves 1,454.5 ft.
    expect(1600 / 1.1 - 1600 * share).toBeCloseTo(14.5, 0);
  });

  test.each([
    ['16 mm', 7, 400, 2.5],
    ['35 mm', 10, 1000, 2],
  ])('a %s reel of %i in holds %i ft', (_gauge, reelInches, capacityFeet, hubInches) => {
    const { minimumMillimetres } = WOUND_THICKNESS['acetate-black-and-white'];
    const outer = outerDiameterMillimetres(
      feet(capacityFeet),
      inches(hubInches),
      minimumMillimetres,
    );
    expect(outer).toBeLessThan(inches(reelInches));
    // And not much more: the full flange would hold less than a fifth more.
    const full = woundLengthMillimetres(inches(reelInches), inches(hubInches), minimumMillimetres);
    expect(full / feet(capacityFeet)).toBeLessThan(1.2);
  });
});
