import { describe, expect, test } from 'vitest';
import { convertUnit } from '../../src/quantity/units.ts';
import {
  outerDiameterMillimetres,
  woundLengthMillimetres,
} from '../../src/core/reel/reel-length.ts';

const inches = (value: number): number => convertUnit(value, 'in', 'mm');
const feet = (value: number): number => convertUnit(value, 'ft', 'mm');

/** Thickness of black-and-white film as printed, without the air between the turns. */
const FILM_INCHES = 0.006;

describe('International Projectionist, December 1958', () => {
  // Cores are not printed; those of the time measure 2 in (35 mm) and 2 1/2 in (16 mm), from memory.
  test.each([
    ['16 mm', 7, 400, 2.5],
    ['35 mm', 10, 1000, 2],
  ])('a %s reel of %i in holds %i ft on a core of %d in', (_gauge, reel, capacity, core) => {
    const outer = outerDiameterMillimetres(feet(capacity), inches(core), inches(FILM_INCHES));
    expect(outer).toBeLessThan(inches(reel));
    // And not much more: full to the rim it would hold less than a third more.
    const full = woundLengthMillimetres(inches(reel), inches(core), inches(FILM_INCHES));
    expect(full / feet(capacity)).toBeGreaterThan(1);
    expect(full / feet(capacity)).toBeLessThan(1.2);
  });
});
