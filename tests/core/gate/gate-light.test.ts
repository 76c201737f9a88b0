import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  harmonicShare,
  lightBetween,
  lightLevel,
  makeGateLight,
} from '../../../src/core/gate/gate-light.ts';
import { makeEqualShutter, makeShutter } from '../../../src/core/gate/shutter.ts';
import { isLit, sumLight } from '../brute-light.ts';

const time = fc.double({ min: -0.5, max: 1, noNaN: true });

describe('gate light', () => {
  test('has the open fraction as its mean, with hard and with soft edges', () => {
    expect(makeGateLight(18, makeEqualShutter(3, 0.45)).meanLevel).toBeCloseTo(0.45, 12);
    expect(makeGateLight(18, makeEqualShutter(3, 0.45, 0.1)).meanLevel).toBeCloseTo(0.45, 12);
  });

  test('is dark in the middle of the pulldown blade and lit in the middle of an opening', () => {
    const light = makeGateLight(18, makeEqualShutter(3, 0.5));
    expect(lightLevel(light, 0)).toBe(0);
    expect(lightLevel(light, 1 / 108)).toBe(1);
    expect(lightLevel(light, -1 / 108)).toBe(1);
  });

  test('half way through a wipe half of the light passes', () => {
    const light = makeGateLight(1, makeEqualShutter(1, 0.5, 0.2));
    expect(lightLevel(light, 0.25)).toBeCloseTo(0.5, 12);
    expect(lightLevel(light, 0.3)).toBeCloseTo(0.75, 12);
  });

  test('the light between two times is what a count of small steps gives', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 30, noNaN: true }),
        fc.integer({ min: 1, max: 4 }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        time,
        fc.double({ min: 0.001, max: 0.2, noNaN: true }),
        (filmFps, flashes, open, start, length) => {
          const light = makeGateLight(filmFps, makeEqualShutter(flashes, open));
          const steps = 4000;
          const counted = sumLight(
            (seconds) => (isLit(seconds, filmFps, flashes, open) ? 1 : 0),
            start,
            start + length,
            steps,
          );
          const edges = 2 + 2 * length * filmFps * flashes;
          const exact = lightBetween(light, start, start + length);
          expect(Math.abs(exact - counted)).toBeLessThan((length / steps) * edges);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('soft edges: the light between two times is the sum of its levels', () => {
    fc.assert(
      fc.property(time, fc.double({ min: 0.001, max: 0.2, noNaN: true }), (start, length) => {
        const light = makeGateLight(
          20,
          makeShutter(
            [
              { openFraction: 0.3, closedFraction: 0.15 },
              { openFraction: 0.25, closedFraction: 0.3 },
            ],
            0.12,
          ),
        );
        const counted = sumLight((at) => lightLevel(light, at), start, start + length, 4000);
        expect(lightBetween(light, start, start + length)).toBeCloseTo(counted, 6);
      }),
      { numRuns: 60 },
    );
  });

  test('adds up: two stretches in a row hold what the whole holds', () => {
    const light = makeGateLight(18, makeEqualShutter(2, 0.6, 0.05));
    fc.assert(
      fc.property(time, time, time, (a, b, c) => {
        expect(lightBetween(light, a, b) + lightBetween(light, b, c)).toBeCloseTo(
          lightBetween(light, a, c),
          12,
        );
      }),
    );
  });
});

describe('harmonics of the gate light', () => {
  test('equal hard blades have only multiples of the flashes, |sinc(m·d)|', () => {
    const light = makeGateLight(18, makeEqualShutter(3, 0.4));
    for (const harmonic of [1, 2, 4, 5, 7])
      expect(harmonicShare(light, harmonic)).toBeLessThan(1e-12);
    for (const m of [1, 2, 3]) {
      const sinc = Math.abs(Math.sin(Math.PI * m * 0.4) / (Math.PI * m * 0.4));
      expect(harmonicShare(light, 3 * m)).toBeCloseTo(sinc, 12);
    }
  });

  test('agree with a sum over small steps, soft and unequal blades', () => {
    const light = makeGateLight(
      10,
      makeShutter(
        [
          { openFraction: 0.3, closedFraction: 0.15 },
          { openFraction: 0.25, closedFraction: 0.3 },
        ],
        0.1,
      ),
    );
    for (const harmonic of [1, 2, 3, 6]) {
      const wave = (at: number) => 2 * Math.PI * harmonic * 10 * at;
      const real = sumLight((at) => lightLevel(light, at) * Math.cos(wave(at)), 0, 0.1, 20_000);
      const imaginary = sumLight(
        (at) => lightLevel(light, at) * Math.sin(wave(at)),
        0,
        0.1,
        20_000,
      );
      const all = sumLight((at) => lightLevel(light, at), 0, 0.1, 20_000);
      expect(harmonicShare(light, harmonic)).toBeCloseTo(Math.hypot(real, imaginary) / all, 6);
    }
  });
});
