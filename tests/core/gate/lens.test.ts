import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';
import {
  airyDiameterMicrometres,
  depthOfFieldMillimetres,
  effectiveFNumber,
  extensionLossStops,
  filmDistanceMillimetres,
  largestSharpFNumber,
  lensExtensionMillimetres,
  magnification,
  sensorDistanceMillimetres,
  waveDepthOfFieldMillimetres,
} from '../../../src/core/gate/lens.ts';
import { expectRelative } from '../relative.ts';

/** Where a thin lens brings an object point to a focus, found by following two rays. */
function imageDistanceByRays(focalLength: number, objectDistance: number): number {
  const height = 1e-3;
  // From the point on the axis through the rim: bent by height ÷ focal length.
  const slopeBefore = height / objectDistance;
  const slopeAfter = slopeBefore - height / focalLength;
  return -height / slopeAfter;
}

/** Blur on a fixed sensor when the object moves, from the cone of rays. */
function blurByRays(
  focalLength: number,
  opening: number,
  sensorDistance: number,
  objectDistance: number,
): number {
  const focus = imageDistanceByRays(focalLength, objectDistance);
  return (opening * Math.abs(focus - sensorDistance)) / focus;
}

/** Whole depth in which the blur stays below a limit, by moving the object in halving steps. */
function depthByRays(focalLength: number, fNumber: number, m: number, blur: number): number {
  const sensor = focalLength * (1 + m);
  const object = focalLength * (1 + 1 / m);
  const reach = (direction: number): number => {
    let low = 0;
    let high = (object - focalLength) / 2;
    for (let step = 0; step < 200; step += 1) {
      const middle = (low + high) / 2;
      const isSharp =
        blurByRays(focalLength, focalLength / fNumber, sensor, object + direction * middle) <= blur;
      if (isSharp) low = middle;
      else high = middle;
    }
    return low;
  };
  return reach(1) + reach(-1);
}

/** Light in the image of a point behind a round opening, by adding wavelets over the opening. */
function diffractionAmplitude(v: number): number {
  const rings = 400;
  const spokes = 200;
  let sum = 0;
  for (let ring = 0; ring < rings; ring += 1) {
    const radius = (ring + 0.5) / rings;
    for (let spoke = 0; spoke < spokes; spoke += 1) {
      const angle = (2 * Math.PI * (spoke + 0.5)) / spokes;
      sum += radius * Math.cos(v * radius * Math.cos(angle));
    }
  }
  return sum / (rings * spokes);
}

const f = fc.double({ min: 10, max: 150, noNaN: true });
const m = fc.double({ min: 0.05, max: 5, noNaN: true });
const n = fc.double({ min: 1, max: 32, noNaN: true });
const pupil = fc.double({ min: 0.3, max: 3, noNaN: true });

describe('a thin lens', () => {
  test('focuses the film on the sensor at the distances given', () => {
    fc.assert(
      fc.property(f, m, (focal, scale) => {
        const image = imageDistanceByRays(focal, filmDistanceMillimetres(focal, scale));
        expectRelative(image, sensorDistanceMillimetres(focal, scale), 1e-9);
        expectRelative(image - focal, lensExtensionMillimetres(focal, scale), 1e-6);
        expectRelative(image / filmDistanceMillimetres(focal, scale), scale, 1e-9);
      }),
    );
  });

  test('has the effective f-number of its cone of light', () => {
    fc.assert(
      fc.property(f, m, n, (focal, scale, fNumber) => {
        const opening = focal / fNumber;
        const cone = sensorDistanceMillimetres(focal, scale) / opening;
        expectRelative(effectiveFNumber(fNumber, scale), cone, 1e-12);
      }),
    );
  });

  test('keeps points sharp within the depth given, for small blur', () => {
    for (const [focal, fNumber, scale, blur] of [
      [50, 5.6, 2, 0.002],
      [50, 4, 1, 0.002],
      [25, 8, 0.5, 0.001],
      [100, 2.8, 1.5, 0.003],
    ] as const) {
      const depth = depthOfFieldMillimetres(effectiveFNumber(fNumber, scale), blur, scale);
      expectRelative(depth, depthByRays(focal, fNumber, scale, blur), 2e-3);
    }
  });
});

describe('the effective f-number', () => {
  test('counts the pupils: a wide rear pupil loses less', () => {
    fc.assert(
      fc.property(n, m, pupil, (fNumber, scale, ratio) => {
        const effective = effectiveFNumber(fNumber, scale, ratio);
        expect(effective).toBeGreaterThan(fNumber);
        expect(effectiveFNumber(fNumber, scale, ratio * 1.1)).toBeLessThan(effective);
      }),
    );
  });

  test('loses the stops that its ratio says', () => {
    fc.assert(
      fc.property(n, m, pupil, (fNumber, scale, ratio) => {
        const loss = extensionLossStops(scale, ratio);
        expectRelative((effectiveFNumber(fNumber, scale, ratio) / fNumber) ** 2, 2 ** loss, 1e-9);
      }),
    );
  });
});

describe('diffraction', () => {
  test('has its first dark ring where the wavelets cancel', () => {
    let low = 3;
    let high = 4.5;
    for (let step = 0; step < 40; step += 1) {
      const middle = (low + high) / 2;
      if (diffractionAmplitude(middle) > 0) low = middle;
      else high = middle;
    }
    // The argument of the sum is v = π × diameter ÷ (2 × λ × N).
    const diameter = (2 * low * 0.55 * 8) / Math.PI;
    expectRelative(airyDiameterMicrometres(8), diameter, 1e-3);
  });

  test.each([
    [8, 10.7],
    [11, 14.8],
    [16, 21.5],
  ])('at effective f-number %d makes discs of %d µm in green light', (effective, micrometres) => {
    expect(airyDiameterMicrometres(effective)).toBeCloseTo(micrometres, 1);
  });

  test('reaches the blur circle at the largest sharp f-number', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.002, max: 0.05, noNaN: true }), m, pupil, (blur, scale, p) => {
        const fNumber = largestSharpFNumber(blur, scale, p);
        const disc = airyDiameterMicrometres(effectiveFNumber(fNumber, scale, p));
        expectRelative(disc, blur * 1000, 1e-9);
      }),
    );
  });

  test('allows the depth at whose ends the rim is a quarter wave off', () => {
    // Error at the rim for a small defocus d: d × sin² ÷ 2, with sin the half angle at the film.
    for (const [effective, scale] of [
      [32, 1],
      [20, 10],
      [12, 2],
    ] as const) {
      const sine = scale / (2 * effective);
      const defocusMicrometres = 0.55 / 4 / (sine ** 2 / 2);
      expectRelative(
        waveDepthOfFieldMillimetres(effective, scale),
        (2 * defocusMicrometres) / 1000,
        1e-9,
      );
    }
  });
});

test('magnification undoes itself', () => {
  fc.assert(
    fc.property(m, (scale) => {
      expectRelative(magnification(scale, 1) * magnification(1, scale), 1);
    }),
  );
});

test('the lens functions name what they do not accept', () => {
  expect(() => magnification(10, 0)).toThrow(/pictureWidthMillimetres/u);
  expect(() => effectiveFNumber(4, 1, 0)).toThrow(/pupilRatio/u);
  expect(() => airyDiameterMicrometres(8, 5)).toThrow(/wavelengthMicrometres/u);
  expect(() => depthOfFieldMillimetres(8, -1, 1)).toThrow(OutOfRangeError);
});
