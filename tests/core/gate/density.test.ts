import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { densityStops, densityTransmittance } from '../../../src/core/gate/density.ts';
import { expectRelative } from '../relative.ts';

/** Halves the light, counting, until it is as weak as the film lets through; finer steps at the end. */
function stopsByHalving(transmittance: number): number {
  let light = 1;
  let stops = 0;
  for (let step = 1; step > 1e-12; step /= 2) {
    while (light * 2 ** -step >= transmittance) {
      light *= 2 ** -step;
      stops += step;
    }
  }
  return stops;
}

describe('density', () => {
  test('gives as many stops as halvings of the light are needed', () => {
    for (const density of [0.05, 0.3, 1, 2, 3.3, 4]) {
      expect(densityStops(density)).toBeCloseTo(stopsByHalving(10 ** -density), 9);
    }
  });

  test.each([
    [0.3, 1.0],
    [1, 3.32],
    [2, 6.64],
    [3, 9.97],
    [3.3, 10.96],
    [3.6, 11.96],
    [4, 13.29],
  ])('of %d is %d stops, to the second decimal', (density, stops) => {
    expect(densityStops(density)).toBeCloseTo(stops, 2);
  });

  test('goes to stops and back, and to transmittance and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 15, noNaN: true }), (density) => {
        expectRelative(densityStops(density) * Math.log10(2), density);
        expectRelative(-Math.log10(densityTransmittance(density)), density, 1e-11);
      }),
    );
  });

  test('adds up: two filters behind each other let through the product', () => {
    const density = fc.double({ min: 0, max: 4, noNaN: true });
    fc.assert(
      fc.property(density, density, (first, second) => {
        expectRelative(
          densityTransmittance(first + second),
          densityTransmittance(first) * densityTransmittance(second),
        );
      }),
    );
  });

  test('is all of the light for clear film, and refuses what is no number', () => {
    expect(densityTransmittance(0)).toBe(1);
    expect(() => densityStops(Number.NaN)).toThrow(/density/u);
  });
});
