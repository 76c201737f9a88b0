import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { roundToUncertainty } from '../../src/quantity/round-to-uncertainty.ts';

describe('rounding to what is known', () => {
  test.each([
    [56.123, 4.4, 56],
    [13_257, 1080, 13_300],
    [735.7, 58, 740],
    [0.16_778, 0.015, 0.168],
    [5.5678, 0.3, 5.6],
    [-3.14159, 0.05, -3.14],
    [0, 3, 0],
    [3.14159, 0, 3.14159],
  ])('%d, give or take %d, is %d', (value, uncertainty, printed) => {
    expect(roundToUncertainty(value, uncertainty)).toBe(printed);
  });

  test('keeps the ends of a range outside it', () => {
    expect(roundToUncertainty(52.6, 4.4, 'down')).toBe(52);
    expect(roundToUncertainty(60.2, 4.4, 'up')).toBe(61);
    expect(roundToUncertainty(60, 4.4, 'up')).toBe(60);
  });

  test('never moves a value by more than a quarter of its uncertainty, and drops worthless digits', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
        (value, uncertainty) => {
          const rounded = roundToUncertainty(value, uncertainty);
          expect(Math.abs(rounded - value)).toBeLessThanOrEqual(uncertainty / 4 + 1e-9);
          // Twenty steps of the last place are wider than the uncertainty: no digit beyond that.
          const place = 10 ** Math.floor(Math.log10(uncertainty / 2));
          expect(place * 20).toBeGreaterThan(uncertainty * 0.999);
        },
      ),
    );
  });
});
