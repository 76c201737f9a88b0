import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';
import {
  outerDiameterMillimetres,
  woundLengthMillimetres,
  woundLengthRange,
  WOUND_THICKNESS,
} from '../../../src/core/reel/reel-length.ts';
import { readSources } from '../../content/read-content.ts';

/** Winds turn after turn and adds the circumferences, each at the middle of the film. */
function windTurns(core: number, thickness: number, turns: number): number {
  let length = 0;
  for (let turn = 0; turn < turns; turn += 1) {
    length += Math.PI * (core + (2 * turn + 1) * thickness);
  }
  return length;
}

const winding = fc
  .tuple(
    fc.double({ min: 10, max: 200, noNaN: true }),
    fc.double({ min: 1, max: 300, noNaN: true }),
    fc.double({ min: 0.05, max: 0.3, noNaN: true }),
  )
  .map(([core, depth, thickness]) => ({ core, outer: core + depth, thickness }));

describe('length on a reel', () => {
  test('is the sum of the turns', () => {
    for (const [core, thickness, turns] of [
      [32, 0.15, 300],
      [63.5, 0.1651, 327],
      [127, 0.18, 1340],
    ] as const) {
      const outer = core + 2 * turns * thickness;
      const length = woundLengthMillimetres(outer, core, thickness);
      expect(length / windTurns(core, thickness, turns)).toBeCloseTo(1, 9);
    }
  });

  test('matches the length of a spiral integrated in small steps', () => {
    const [core, outer, thickness] = [50, 120, 0.16];
    const turns = (outer - core) / (2 * thickness);
    const steps = 200_000;
    let length = 0;
    for (let step = 0; step < steps; step += 1) {
      const radius = core / 2 + ((step + 0.5) / steps) * turns * thickness;
      length += Math.hypot(radius * 2 * Math.PI, thickness) * (turns / steps);
    }
    expect(woundLengthMillimetres(outer, core, thickness) / length).toBeCloseTo(1, 5);
  });

  test('turns round: the diameter comes back from the length', () => {
    fc.assert(
      fc.property(winding, ({ core, outer, thickness }) => {
        const length = woundLengthMillimetres(outer, core, thickness);
        expect(outerDiameterMillimetres(length, core, thickness) / outer).toBeCloseTo(1, 9);
      }),
    );
  });

  test('keeps the likely length between least and most, and both bounds are reached', () => {
    fc.assert(
      fc.property(winding, fc.double({ min: 0, max: 0.4, noNaN: true }), (roll, share) => {
        const { core, outer, thickness } = roll;
        const error = Math.min(50, share * Math.min(core, outer - core));
        const span = { minimumMillimetres: thickness, maximumMillimetres: thickness * 1.1 };
        const range = woundLengthRange(outer, core, error, span);
        expect(range.leastMillimetres).toBeLessThanOrEqual(range.likelyMillimetres);
        expect(range.likelyMillimetres).toBeLessThanOrEqual(range.mostMillimetres);
        for (const [dOuter, dCore, t] of [
          [-error, error, thickness * 1.1],
          [error, -error, thickness],
          [0, 0, thickness * 1.05],
        ] as const) {
          const length = woundLengthMillimetres(outer + dOuter, core + dCore, t);
          expect(length).toBeGreaterThanOrEqual(range.leastMillimetres * (1 - 1e-12));
          expect(length).toBeLessThanOrEqual(range.mostMillimetres * (1 + 1e-12));
        }
      }),
    );
  });

  test('names a known source for every thickness and puts striped film above plain film', () => {
    const known = new Set(readSources().map(({ id }) => id));
    const kinds = Object.values(WOUND_THICKNESS);
    expect(kinds).toHaveLength(7);
    for (const kind of kinds) {
      expect(known.has(kind.source)).toBe(true);
      expect(kind.minimumMillimetres).toBeLessThan(kind.maximumMillimetres);
    }
    const { 'acetate-striped': striped, 'acetate-unsure': plain } = WOUND_THICKNESS;
    expect(striped.minimumMillimetres).toBeCloseTo(plain.minimumMillimetres / 0.9, 3);
    expect(striped.maximumMillimetres).toBeCloseTo(plain.maximumMillimetres / 0.9, 3);
  });

  test('refuses a roll smaller than its core and a reading error larger than the winding', () => {
    expect(() => woundLengthMillimetres(50, 60, 0.15)).toThrow(OutOfRangeError);
    expect(() => woundLengthMillimetres(60, 50, 0)).toThrow(OutOfRangeError);
    const span = { minimumMillimetres: 0.15, maximumMillimetres: 0.17 };
    expect(() => woundLengthRange(60, 56, 3, span)).toThrow(/at most 2 mm/u);
  });
});
