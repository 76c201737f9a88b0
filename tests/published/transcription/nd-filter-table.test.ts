import { describe, expect, test } from 'vitest';
import { densityStops, densityTransmittance } from '../../../src/core/density.ts';
import { stopsRatio } from '../../../src/core/light-stops.ts';

// Stops, density, factor and transmittance in %, as printed. The table counts 0.3 as one stop; the
// true density of a stop is 0.30103, so density and stops agree to 0.35 %.
const rows = [
  [1, 0.3, 2, 50],
  [2, 0.6, 4, 25],
  [3, 0.9, 8, 12.5],
  [4, 1.2, 16, 6.25],
  [5, 1.5, 32, 3.125],
  [6, 1.8, 64, 1.5625],
  [7, 2.1, 128, 0.78125],
  [8, 2.4, 256, 0.390625],
  [9, 2.7, 512, 0.1953125],
  [10, 3.0, 1024, 0.09765625],
  [11, 3.3, 2048, 0.048828125],
  [12, 3.6, 4096, 0.0244140625],
  [13 + 1 / 3, 4.0, 10_000, 0.01],
  [16 + 2 / 3, 5.0, 100_000, 0.001],
] as const;

describe('the table of neutral filters', () => {
  test.each(rows)('%d stops: density %d', (stops, density) => {
    expect(Math.abs(densityStops(density) / stops - 1)).toBeLessThan(0.0035);
  });

  test.each(rows.slice(0, 12))('%d stops (density %d) are a factor of %d', (stops, _d, factor) => {
    expect(stopsRatio(stops)).toBe(factor);
  });

  test.each(rows.slice(12))(
    '%d stops (density %d): exact powers of ten',
    (_s, density, factor, percent) => {
      expect(1 / densityTransmittance(density)).toBeCloseTo(factor, 6);
      expect(100 * densityTransmittance(density)).toBeCloseTo(percent, 9);
    },
  );
});
