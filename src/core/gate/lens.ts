import { requireInterval } from '../../quantity/errors.ts';

/** Wavelength of green light, where eye and camera see best, µm. */
export const GREEN_MICROMETRES = 0.55;

const positive = (argument: string, value: number): number =>
  requireInterval(argument, value, { above: 0 });

/**
 * Magnification at which a picture of one width fills another.
 *
 * Model: m = width on the sensor ÷ width in the gate, exact.
 *
 * @param imageWidthMillimetres    width on the sensor, mm; > 0
 * @param pictureWidthMillimetres  width of the film picture, mm; > 0
 * @returns magnification; above 1 the image is larger than the film
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example magnification(10.62, 5.31) // 2
 */
export function magnification(
  imageWidthMillimetres: number,
  pictureWidthMillimetres: number,
): number {
  return (
    positive('imageWidthMillimetres', imageWidthMillimetres) /
    positive('pictureWidthMillimetres', pictureWidthMillimetres)
  );
}

/**
 * How much farther from the sensor the lens must sit than when it is set to infinity: the length of
 * the rings or bellows.
 *
 * Model: x = f × m, thin lens; exact for any lens when counted from its infinity setting and f is the
 * true focal length at that distance (internal focusing changes it).
 *
 * @param focalLengthMillimetres  focal length, mm; > 0
 * @param magnification           magnification; > 0
 * @returns extension, mm; > 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source photomacrography-effective-aperture
 * @example lensExtensionMillimetres(100, 0.01) // 1
 */
export function lensExtensionMillimetres(
  focalLengthMillimetres: number,
  magnification: number,
): number {
  return (
    positive('focalLengthMillimetres', focalLengthMillimetres) *
    positive('magnification', magnification)
  );
}

/**
 * Distance from lens to sensor.
 *
 * Model: f × (1 + m), thin lens.
 *
 * @param focalLengthMillimetres  focal length, mm; > 0
 * @param magnification           magnification; > 0
 * @returns distance from the lens's rear principal plane, mm
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source photomacrography-effective-aperture
 * @example sensorDistanceMillimetres(100, 1) // 200
 */
export function sensorDistanceMillimetres(
  focalLengthMillimetres: number,
  magnification: number,
): number {
  return focalLengthMillimetres + lensExtensionMillimetres(focalLengthMillimetres, magnification);
}

/**
 * Distance from film to lens.
 *
 * Model: f × (1 + 1 ÷ m), thin lens.
 *
 * @param focalLengthMillimetres  focal length, mm; > 0
 * @param magnification           magnification; > 0
 * @returns distance to the lens's front principal plane, mm; the free space before the front glass
 * is smaller
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example filmDistanceMillimetres(50, 2) // 75
 */
export function filmDistanceMillimetres(
  focalLengthMillimetres: number,
  magnification: number,
): number {
  const focal = positive('focalLengthMillimetres', focalLengthMillimetres);
  return focal * (1 + 1 / positive('magnification', magnification));
}

/**
 * f-number as the sensor sees it: light, diffraction and depth all go with this one, not with the
 * number on the ring.
 *
 * Model: N_e = N × (1 + m ÷ p), exact for a lens focused by extension.
 *
 * @param fNumber        f-number on the ring; > 0
 * @param magnification  magnification; > 0
 * @param pupilRatio     width of the rear pupil ÷ width of the front pupil; > 0; 1 when left out
 * @returns effective f-number; above the f-number
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source savazzi-depth-of-field-table
 * @source grayheron-macro
 * @example effectiveFNumber(4, 2) // 12
 */
export function effectiveFNumber(fNumber: number, magnification: number, pupilRatio = 1): number {
  const bellows = positive('magnification', magnification) / positive('pupilRatio', pupilRatio);
  return positive('fNumber', fNumber) * (1 + bellows);
}

/**
 * Stops of light lost to the extension.
 *
 * Model: 2 × log2(1 + m ÷ p), exact for a lens focused by extension.
 *
 * @param magnification  magnification; > 0
 * @param pupilRatio     width of the rear pupil ÷ width of the front pupil; > 0; 1 when left out
 * @returns stops; > 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example extensionLossStops(1) // 2
 */
export function extensionLossStops(magnification: number, pupilRatio = 1): number {
  return 2 * Math.log2(effectiveFNumber(1, magnification, pupilRatio));
}

/**
 * Diameter of the diffraction disc on the sensor, to its first dark ring. No lens, however good,
 * draws a smaller point.
 *
 * Model: 2.44 × λ × N_e, exact for a round opening and a perfect lens.
 *
 * @param effectiveFNumber        effective f-number; > 0
 * @param wavelengthMicrometres   wavelength, µm; 0.2–2; green 0.55 when left out
 * @returns diameter, µm; > 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source savazzi-depth-of-field-table
 * @example airyDiameterMicrometres(8) // ≈ 10.736
 */
export function airyDiameterMicrometres(
  effectiveFNumber: number,
  wavelengthMicrometres: number = GREEN_MICROMETRES,
): number {
  requireInterval('wavelengthMicrometres', wavelengthMicrometres, { minimum: 0.2, maximum: 2 });
  return 2.44 * wavelengthMicrometres * positive('effectiveFNumber', effectiveFNumber);
}

/**
 * Depth at the film within which a point stays smaller than a blur circle on the sensor. The film
 * must stay flat within it.
 *
 * Model: 2 × N_e × c ÷ m², the same as 2 × N × c × (1 + m) ÷ m² at pupil ratio 1. Geometry only: it
 * leaves diffraction out, so it is too hopeful at small openings.
 *
 * @param effectiveFNumber        effective f-number; > 0
 * @param blurCircleMillimetres   largest acceptable blur on the sensor, mm; > 0
 * @param magnification           magnification; > 0
 * @returns whole depth, front to back, mm; > 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source savazzi-depth-of-field-table
 * @example depthOfFieldMillimetres(8, 0.019, 1) // ≈ 0.304
 */
export function depthOfFieldMillimetres(
  effectiveFNumber: number,
  blurCircleMillimetres: number,
  magnification: number,
): number {
  return (
    (2 *
      positive('effectiveFNumber', effectiveFNumber) *
      positive('blurCircleMillimetres', blurCircleMillimetres)) /
    positive('magnification', magnification) ** 2
  );
}

/**
 * Depth at the film within which a perfect lens loses nothing that can be seen, by wave optics.
 *
 * Model: 4 × λ × N_e² ÷ m² (a quarter wave of error at the rim at either end). Approximate: a
 * convention, not a sharp limit.
 *
 * @param effectiveFNumber        effective f-number; > 0
 * @param magnification           magnification; > 0
 * @param wavelengthMicrometres   wavelength, µm; 0.2–2; green 0.55 when left out
 * @returns whole depth, front to back, mm; > 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source photomacrography-wave-depth
 * @example waveDepthOfFieldMillimetres(20, 10) // ≈ 0.0088
 */
export function waveDepthOfFieldMillimetres(
  effectiveFNumber: number,
  magnification: number,
  wavelengthMicrometres: number = GREEN_MICROMETRES,
): number {
  requireInterval('wavelengthMicrometres', wavelengthMicrometres, { minimum: 0.2, maximum: 2 });
  const ratio =
    positive('effectiveFNumber', effectiveFNumber) / positive('magnification', magnification);
  return ((4 * wavelengthMicrometres) / 1000) * ratio ** 2;
}

/**
 * Largest f-number to set before the diffraction disc grows wider than a blur circle. Beyond it
 * stopping down adds depth and takes sharpness everywhere.
 *
 * Model: N = c ÷ (2.44 × λ × (1 + m ÷ p)), exact.
 *
 * @param blurCircleMillimetres   largest acceptable blur on the sensor, mm; > 0
 * @param magnification           magnification; > 0
 * @param pupilRatio              width of the rear pupil ÷ width of the front pupil; > 0
 * @param wavelengthMicrometres   wavelength, µm; 0.2–2; green 0.55 when left out
 * @returns f-number on the ring; > 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example largestSharpFNumber(0.021472, 1, 1) // ≈ 8
 */
export function largestSharpFNumber(
  blurCircleMillimetres: number,
  magnification: number,
  pupilRatio = 1,
  wavelengthMicrometres: number = GREEN_MICROMETRES,
): number {
  const perFNumber = airyDiameterMicrometres(
    effectiveFNumber(1, magnification, pupilRatio),
    wavelengthMicrometres,
  );
  return (1000 * positive('blurCircleMillimetres', blurCircleMillimetres)) / perFNumber;
}
