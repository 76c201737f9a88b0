import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lightBetween, makeGateLight } from '../../../src/core/gate/gate-light.ts';
import { rollingLight } from '../../../src/core/gate/rolling-light.ts';
import { makeEqualShutter } from '../../../src/core/gate/shutter.ts';

const light = makeGateLight(18, makeEqualShutter(3, 0.45, 0.05));

describe('light of a rolling picture', () => {
  test('is the mean over the rows', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.06, noNaN: true }),
        fc.double({ min: 0.002, max: 0.04, noNaN: true }),
        fc.double({ min: 0.001, max: 0.04, noNaN: true }),
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        fc.double({ min: 0.001, max: 0.1, noNaN: true }),
        (start, exposure, readout, from, length) => {
          const rows = 3000;
          let sum = 0;
          for (let row = 0; row < rows; row += 1) {
            const rowStart = start + ((row + 0.5) / rows) * readout;
            const a = Math.max(rowStart, from);
            const b = Math.min(rowStart + exposure, from + length);
            if (b > a) sum += lightBetween(light, a, b);
          }
          expect(rollingLight(light, start, exposure, readout, from, from + length)).toBeCloseTo(
            sum / rows,
            6,
          );
        },
      ),
      { numRuns: 100 },
    );
  });

  test('without readout time it is the light of one row', () => {
    expect(rollingLight(light, 0.01, 0.02, 0, 0, 1)).toBeCloseTo(
      lightBetween(light, 0.01, 0.03),
      12,
    );
  });
});
