import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';

const DIAMETER = { above: 0, maximum: 1000, unit: 'mm' };

/**
 * Diameter of the motor's pulley that turns one film rate into another.
 *
 * Model: d₂ = d₁ × f₂ ÷ f₁ on pitch diameters (groove and one thickness of the belt). Exact without slip.
 *
 * @param pulleyMillimetres  pitch diameter of the pulley now, mm; > 0, at most 1000
 * @param fromFps            film rate now, frames/s; > 0, at most 240
 * @param toFps              film rate wanted, frames/s; > 0, at most 240
 * @returns pitch diameter, mm
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example pulleyForRateMillimetres(20, 24, 25) // ≈ 20.8333
 */
export function pulleyForRateMillimetres(
  pulleyMillimetres: number,
  fromFps: number,
  toFps: number,
): number {
  requireInterval('pulleyMillimetres', pulleyMillimetres, DIAMETER);
  requireInterval('fromFps', fromFps, { above: 0, maximum: 240 });
  requireInterval('toFps', toFps, { above: 0, maximum: 240 });
  return (pulleyMillimetres * toFps) / fromFps;
}

/**
 * Length of an open belt round two pulleys.
 *
 * Model: 2C + π(D + d)/2 + (D − d)²/(4C): the usual series, cut after its second term; short by less
 * than a thousandth when the pulleys do not nearly touch.
 *
 * @param drivenMillimetres  pitch diameter of the pulley on the machine, mm; > 0, at most 1000
 * @param pulleyMillimetres  pitch diameter of the motor's pulley, mm; > 0, at most 1000
 * @param centreMillimetres  distance of the axes, mm; more than half the sum of the diameters
 * @returns length, mm
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example openBeltMillimetres(60, 20, 120) // ≈ 368.997
 */
export function openBeltMillimetres(
  drivenMillimetres: number,
  pulleyMillimetres: number,
  centreMillimetres: number,
): number {
  requireInterval('drivenMillimetres', drivenMillimetres, DIAMETER);
  requireInterval('pulleyMillimetres', pulleyMillimetres, DIAMETER);
  const touching = (drivenMillimetres + pulleyMillimetres) / 2;
  if (!(centreMillimetres > touching) || centreMillimetres > 1e4) {
    throw new OutOfRangeError(
      'centreMillimetres',
      centreMillimetres,
      `more than ${Number(touching.toPrecision(4))} mm, or the pulleys touch`,
    );
  }
  return (
    2 * centreMillimetres +
    Math.PI * touching +
    (drivenMillimetres - pulleyMillimetres) ** 2 / (4 * centreMillimetres)
  );
}
