import { requireInterval } from '../../quantity/errors.ts';
import { GREEN_MICROMETRES } from './lens.ts';

/** What keeps fine detail of the film out of the file. */
export type ResolutionLimit = 'pixels' | 'diffraction' | 'film';

const positive = (argument: string, value: number): number =>
  requireInterval(argument, value, { above: 0 });

/**
 * Pixels that lie across the film picture when it fills a share of the sensor's width.
 *
 * Model: pixels across the sensor × share, exact.
 *
 * @param pixelsAcross  pixels across the sensor; > 0
 * @param fillFraction  width of the picture ÷ width of the sensor; > 0, at most 1
 * @returns pixels across the picture; > 0, not rounded
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example pixelsOnPicture(1920, 0.75) // 1440
 */
export function pixelsOnPicture(pixelsAcross: number, fillFraction: number): number {
  requireInterval('fillFraction', fillFraction, { above: 0, maximum: 1 });
  return positive('pixelsAcross', pixelsAcross) * fillFraction;
}

/**
 * Finest pattern that the pixels can carry, in line pairs per millimetre at the film.
 *
 * Model: two pixels for one line pair (the sampling limit), exact; a camera with a colour mosaic
 * stays below it.
 *
 * @param pictureWidthMillimetres  width of the film picture, mm; > 0
 * @param pictureAcrossPixels      pixels across it; > 0
 * @returns line pairs per millimetre at the film; > 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example samplingLimitPerMillimetre(10.26, 2052) // ≈ 100
 */
export function samplingLimitPerMillimetre(
  pictureWidthMillimetres: number,
  pictureAcrossPixels: number,
): number {
  return (
    positive('pictureAcrossPixels', pictureAcrossPixels) /
    (2 * positive('pictureWidthMillimetres', pictureWidthMillimetres))
  );
}

/**
 * Pixels across the picture that a fineness of detail asks for.
 *
 * Model: 2 × line pairs per millimetre × width, rounded up to whole pixels.
 *
 * @param pictureWidthMillimetres  width of the film picture, mm; > 0
 * @param linePairsPerMillimetre   line pairs per millimetre at the film; > 0
 * @returns pixels; whole
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example pixelsForDetail(5.31, 63) // 670
 */
export function pixelsForDetail(
  pictureWidthMillimetres: number,
  linePairsPerMillimetre: number,
): number {
  const pixels =
    2 *
    positive('linePairsPerMillimetre', linePairsPerMillimetre) *
    positive('pictureWidthMillimetres', pictureWidthMillimetres);
  return Math.ceil(pixels * (1 - 1e-12));
}

/**
 * Size of one pixel measured on the film.
 *
 * Model: width ÷ pixels, exact.
 *
 * @param pictureWidthMillimetres  width of the film picture, mm; > 0
 * @param pictureAcrossPixels      pixels across it; > 0
 * @returns pitch at the film, µm; > 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example filmPixelMicrometres(5.31, 1062) // ≈ 5
 */
export function filmPixelMicrometres(
  pictureWidthMillimetres: number,
  pictureAcrossPixels: number,
): number {
  return (
    (1000 * positive('pictureWidthMillimetres', pictureWidthMillimetres)) /
    positive('pictureAcrossPixels', pictureAcrossPixels)
  );
}

/**
 * Finest pattern that a perfect lens still shows, in line pairs per millimetre at the film.
 *
 * Model: m ÷ (1.22 × λ × N_e), Rayleigh's rule: two points whose discs overlap to the centre. About
 * a tenth of the contrast is left there; a real lens stays below.
 *
 * @param effectiveFNumber        effective f-number; > 0
 * @param magnification           magnification; > 0
 * @param wavelengthMicrometres   wavelength, µm; 0.2–2; green 0.55 when left out
 * @returns line pairs per millimetre at the film; > 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source from-memory
 * @example diffractionLimitPerMillimetre(10, 1) // ≈ 149.03
 */
export function diffractionLimitPerMillimetre(
  effectiveFNumber: number,
  magnification: number,
  wavelengthMicrometres: number = GREEN_MICROMETRES,
): number {
  requireInterval('wavelengthMicrometres', wavelengthMicrometres, { minimum: 0.2, maximum: 2 });
  return (
    (1000 * positive('magnification', magnification)) /
    (1.22 * wavelengthMicrometres * positive('effectiveFNumber', effectiveFNumber))
  );
}

/**
 * Which of the three sets the limit: the lowest does.
 *
 * @param samplingLimit     line pairs per millimetre the pixels carry; > 0
 * @param diffractionLimit  line pairs per millimetre the lens shows at best; > 0
 * @param filmLimit         line pairs per millimetre the film holds; > 0
 * @returns the name of the lowest; the film when it ties
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example resolutionLimit(120, 90, 60) // 'film'
 */
export function resolutionLimit(
  samplingLimit: number,
  diffractionLimit: number,
  filmLimit: number,
): ResolutionLimit {
  positive('samplingLimit', samplingLimit);
  positive('diffractionLimit', diffractionLimit);
  positive('filmLimit', filmLimit);
  if (filmLimit <= samplingLimit && filmLimit <= diffractionLimit) return 'film';
  return samplingLimit <= diffractionLimit ? 'pixels' : 'diffraction';
}
