import Fraction from 'fraction.js';

/**
 * Camera rates that cameras usually offer, exact, slowest first. Rates with the divisor 1001 belong to
 * countries with 30/60 television. 48 frames/s is left out: few cameras have it.
 *
 * Values: common practice, no source; the 1001 rates are television practice.
 */
export const USUAL_CAMERA_RATES: readonly Fraction[] = [
  new Fraction(24_000, 1001),
  new Fraction(24),
  new Fraction(25),
  new Fraction(30_000, 1001),
  new Fraction(30),
  new Fraction(50),
  new Fraction(60_000, 1001),
  new Fraction(60),
  new Fraction(100),
  new Fraction(120_000, 1001),
  new Fraction(120),
];

/**
 * The slowest usual camera rate that is at least as fast as asked and still leaves room in its camera
 * frame for the exposure and for the readout.
 *
 * @param atLeastFps       smallest sufficient rate, frames/s
 * @param exposureSeconds  exposure time that must fit into the camera frame, s
 * @param readoutSeconds   readout time that must fit into the camera frame, s
 * @returns the rate; undefined when no usual rate will do
 */
export function slowestUsualRate(
  atLeastFps: number,
  exposureSeconds: number,
  readoutSeconds: number,
): Fraction | undefined {
  const slack = 1 + 1e-9;
  return USUAL_CAMERA_RATES.find((rate) => {
    const fps = rate.valueOf();
    return fps * slack >= atLeastFps && fps * Math.max(exposureSeconds, readoutSeconds) <= slack;
  });
}
