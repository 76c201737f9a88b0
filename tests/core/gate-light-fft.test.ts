import { abs, fft, type Complex } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { harmonicShare, lightLevel, makeGateLight } from '../../src/core/gate/gate-light.ts';
import { makeEqualShutter, makeShutter, type Shutter } from '../../src/core/gate/shutter.ts';

// The harmonics of the gate light against a general-purpose fast Fourier transform (mathjs).

const SAMPLES = 4096;

/** Share of each harmonic of the film rate, from the transform of the sampled light. */
function sharesByTransform(shutter: Shutter): readonly number[] {
  const light = makeGateLight(1, shutter);
  const samples = Array.from({ length: SAMPLES }, (_, index) =>
    lightLevel(light, (index + 0.5) / SAMPLES),
  );
  const coefficients = fft(samples) as unknown as readonly Complex[];
  const sizes = coefficients.map((coefficient) => Number(abs(coefficient)));
  return sizes.map((size) => size / (sizes[0] ?? 1));
}

describe('harmonics of the gate light, against a fast Fourier transform', () => {
  test.each([
    ['two equal blades', makeEqualShutter(2, 0.5)],
    ['three equal blades', makeEqualShutter(3, 0.45)],
    ['three equal blades with soft edges', makeEqualShutter(3, 0.5, 0.1)],
    [
      'one wide blade and two narrow ones',
      makeShutter([
        { openFraction: 1 / 6, closedFraction: 0.15 },
        { openFraction: 1 / 6, closedFraction: 0.15 },
        { openFraction: 1 / 6, closedFraction: 0.2 },
      ]),
    ],
  ])('agree for %s', (_name, shutter) => {
    const light = makeGateLight(1, shutter);
    const shares = sharesByTransform(shutter);
    let strongest = 0;
    for (let harmonic = 1; harmonic <= 24; harmonic += 1) {
      const share = harmonicShare(light, harmonic);
      strongest = Math.max(strongest, share);
      // A hard edge falls between two samples: each of at most six edges errs by half a sample.
      expect(Math.abs(share - (shares[harmonic] ?? Number.NaN))).toBeLessThan(6 / SAMPLES);
    }
    expect(strongest).toBeGreaterThan(0.1);
  });
});
