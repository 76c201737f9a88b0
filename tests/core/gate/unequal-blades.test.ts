import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lightBetween, makeGateLight } from '../../../src/core/gate/gate-light.ts';
import { exposureRipple } from '../../../src/core/gate/ripple.ts';
import { shutterOpenFraction } from '../../../src/core/gate/shutter.ts';
import { shutterFromArcs, slowPulsations } from '../../../src/core/gate/unequal-blades.ts';

const arcs = fc
  .array(fc.tuple(fc.integer({ min: 20, max: 120 }), fc.integer({ min: 20, max: 120 })), {
    minLength: 1,
    maxLength: 4,
  })
  .map((pairs) => ({
    blades: pairs.map(([blade]) => blade),
    opens: pairs.map(([, open]) => open),
  }));

describe('shutter from measured arcs', () => {
  test('scales the arcs to a turn, so lengths along the rim do as well as degrees', () => {
    const degrees = shutterFromArcs([72, 48, 60], [60, 60, 60], 1);
    const lengths = shutterFromArcs([36, 24, 30], [30, 30, 30], 1);
    expect(lengths).toEqual(degrees);
    expect(shutterOpenFraction(degrees)).toBeCloseTo(0.5, 12);
  });

  test('repeats the turn as often as the shutter turns in one film frame', () => {
    expect(shutterFromArcs([180], [180], 3).sectors).toHaveLength(3);
  });

  test('asks for an opening before each blade', () => {
    expect(() => shutterFromArcs([60, 60], [60], 1)).toThrow(/openDegrees: 1 openings.*2 of them/u);
  });
});

describe('unequal blades', () => {
  test('leave no ripple at one turn of the pattern, whatever they are', () => {
    fc.assert(
      fc.property(arcs, fc.integer({ min: 1, max: 3 }), ({ blades, opens }, turns) => {
        const light = makeGateLight(18, shutterFromArcs(blades, opens, turns));
        expect(exposureRipple(light, 1 / (18 * turns)).percent).toBeCloseTo(0, 9);
      }),
    );
  });

  test('the ripple of one component is what filtering the sampled exposures gives', () => {
    fc.assert(
      fc.property(arcs, ({ blades, opens }) => {
        const light = makeGateLight(18, shutterFromArcs(blades, opens, 1));
        const exposure = 1 / (18 * blades.length);
        const found = slowPulsations(light, 18, 1, blades.length, 25, exposure);
        expect(found).toHaveLength(blades.length - 1);
        const samples = 720;
        found.forEach(({ ripplePercent }, index) => {
          let real = 0;
          let imaginary = 0;
          for (let step = 0; step < samples; step += 1) {
            const at = step / samples / 18;
            const turns = 2 * Math.PI * (index + 1) * (step / samples);
            const light1 = lightBetween(light, at, at + exposure);
            real += (light1 * Math.cos(turns)) / samples;
            imaginary += (light1 * Math.sin(turns)) / samples;
          }
          const mean = light.meanLevel * exposure;
          expect(ripplePercent).toBeCloseTo((Math.hypot(real, imaginary) / mean) * 400, 1);
        });
      }),
      { numRuns: 50 },
    );
  });

  test('pulse at the beat of the film rate with the camera rate: 18 at 25 with 7 Hz', () => {
    const light = makeGateLight(18, shutterFromArcs([72, 48, 60], [60, 60, 60], 1));
    const [first] = slowPulsations(light, 18, 1, 3, 25, 1 / 54);
    expect(first?.lightHz).toBe(18);
    expect(first?.shownHz).toBeCloseTo(7, 12);
    expect(first?.ripplePercent).toBeGreaterThan(1);
  });

  test('equal blades leave no slow component', () => {
    const light = makeGateLight(18, shutterFromArcs([60, 60, 60], [60, 60, 60], 1));
    for (const { ripplePercent } of slowPulsations(light, 18, 1, 3, 25, 1 / 54)) {
      expect(ripplePercent).toBeCloseTo(0, 9);
    }
  });
});
