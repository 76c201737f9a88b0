import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';
import {
  apertureStops,
  balancingFNumber,
  lightChange,
  ratioStops,
  settableFNumber,
  stopsRatio,
  type LightSetting,
} from '../../../src/core/gate/light-stops.ts';
import { expectRelative } from '../relative.ts';

/** Signal of a pixel by plain optics: area of the opening × time × lamp × filter × gain. */
function signal(setting: LightSetting): number {
  const openingRadius = 1 / (2 * setting.fNumber);
  const openingArea = Math.PI * openingRadius * openingRadius;
  const passed = setting.lampRatio / 10 ** setting.filterDensity;
  return openingArea * setting.exposureSeconds * passed * (setting.sensitivity / 100);
}

const setting: fc.Arbitrary<LightSetting> = fc.record({
  exposureSeconds: fc.double({ min: 1e-4, max: 2, noNaN: true }),
  fNumber: fc.double({ min: 0.9, max: 45, noNaN: true }),
  sensitivity: fc.double({ min: 25, max: 25_600, noNaN: true }),
  filterDensity: fc.double({ min: 0, max: 4, noNaN: true }),
  lampRatio: fc.double({ min: 0.01, max: 1, noNaN: true }),
});

describe('the change between two settings', () => {
  test('doubles the signal with each stop, whatever is changed', () => {
    fc.assert(
      fc.property(setting, setting, (from, to) => {
        const { totalStops } = lightChange(from, to);
        expectRelative(signal(to), signal(from) * 2 ** totalStops, 1e-9);
      }),
    );
  });

  test('is undone by going back', () => {
    fc.assert(
      fc.property(setting, setting, (from, to) => {
        const there = lightChange(from, to).totalStops;
        expect(lightChange(to, from).totalStops).toBeCloseTo(-there, 9);
      }),
    );
  });

  test('names each part with its own sign', () => {
    const from: LightSetting = {
      exposureSeconds: 1 / 50,
      fNumber: 8,
      sensitivity: 100,
      filterDensity: 0.6,
      lampRatio: 0.5,
    };
    const to: LightSetting = {
      exposureSeconds: 1 / 100,
      fNumber: 4,
      sensitivity: 400,
      filterDensity: 0.3,
      lampRatio: 1,
    };
    const change = lightChange(from, to);
    expect(change.exposureStops).toBeCloseTo(-1, 12);
    expect(change.apertureStops).toBeCloseTo(2, 12);
    expect(change.sensitivityStops).toBeCloseTo(2, 12);
    expect(change.filterStops).toBeCloseTo(0.3 * 3.321928, 5);
    expect(change.lampStops).toBeCloseTo(1, 12);
  });

  test('is given back by the balancing f-number', () => {
    fc.assert(
      fc.property(setting, setting, (from, to) => {
        const { totalStops } = lightChange(from, to);
        const balanced = { ...to, fNumber: balancingFNumber(to.fNumber, totalStops) };
        expect(lightChange(from, balanced).totalStops).toBeCloseTo(0, 9);
      }),
    );
  });

  test('names the setting that is not accepted', () => {
    const good: LightSetting = {
      exposureSeconds: 0.02,
      fNumber: 4,
      sensitivity: 100,
      filterDensity: 0,
      lampRatio: 1,
    };
    expect(() => lightChange({ ...good, exposureSeconds: 0 }, good)).toThrow(/exposureSeconds/u);
    expect(() => lightChange(good, { ...good, fNumber: -4 })).toThrow(OutOfRangeError);
    expect(() => lightChange(good, { ...good, lampRatio: Number.NaN })).toThrow(/lampRatio/u);
  });
});

describe('stops', () => {
  test('are the inverse of ratios', () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 40, noNaN: true }), (stops) => {
        expect(ratioStops(stopsRatio(stops))).toBeCloseTo(stops, 9);
      }),
    );
  });

  test('of the marked f-numbers miss whole stops by no more than the docstring says', () => {
    const marked = [1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32];
    const misses = marked
      .slice(1)
      .map((fNumber, index) => Math.abs(apertureStops(fNumber, marked[0]!) - (index + 1)));
    expect(Math.max(...misses)).toBeLessThan(0.085);
    expect(Math.max(...misses)).toBeGreaterThan(0.05);
  });
});

describe('the opening that a lens can be set to', () => {
  const engraved = (steps: 'third' | 'half' | 'whole'): readonly number[] => {
    const found = new Set<number>();
    for (let sixths = -12; sixths <= 84; sixths += 1) {
      found.add(settableFNumber(2 ** (sixths / 12), steps));
    }
    return [...found].toSorted((a, b) => a - b);
  };

  test.each([
    ['third', 3],
    ['half', 2],
    ['whole', 1],
  ] as const)('in steps of %s stops lies near the true series', (steps, perStop) => {
    const series = engraved(steps);
    expect(series.length).toBeGreaterThan(8 * perStop);
    series.forEach((fNumber) => {
      const places = 2 * perStop * Math.log2(fNumber);
      // Engraved numbers are rounded: up to a fifth of a stop at f/1.2, a tenth elsewhere.
      expect(Math.abs(places - Math.round(places)) / perStop, String(fNumber)).toBeLessThan(0.17);
    });
  });

  test('is never further off than half a step and the rounding of the ring', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 90, noNaN: true }),
        fc.constantFrom('third' as const, 'half' as const, 'whole' as const),
        (wanted, steps) => {
          const half = { third: 1 / 6, half: 1 / 4, whole: 1 / 2 }[steps];
          const off = Math.abs(apertureStops(wanted, settableFNumber(wanted, steps)));
          expect(off).toBeLessThan(half + 0.13);
        },
      ),
    );
  });

  test('takes the number that everyone knows', () => {
    expect([5.44, 5.7, 7.62, 1.45].map((wanted) => settableFNumber(wanted, 'third'))).toEqual([
      5.6, 5.6, 8, 1.4,
    ]);
    expect(settableFNumber(4.7, 'half')).toBe(4.8);
    expect(settableFNumber(4.7, 'whole')).toBe(4);
    expect(settableFNumber(4.7, 'free')).toBe(4.7);
  });
});
