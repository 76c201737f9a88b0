import { BAND_COUNT } from '../band-light.ts';
import { bandDelay } from './line-columns.ts';
import { lineHz, type LightLine } from './light-lines.ts';
import type { RefinedMotion } from './refine-motion.ts';
import { SAMPLES_PER_WITNESS } from './speed-track.ts';

/** The readout time with what is known of it. */
export interface MeasuredReadout {
  readonly readoutSeconds: number;
  /** The true readout time lies within this, either way, s, in at least 95 of 100 clips. */
  readonly errorSeconds: number;
}

/** Deviations that the stated error spans, with ten bands to tell the deviation from. */
const STATED_DEVIATIONS = 2.6;

/**
 * A lens that darkens by half towards the top and the bottom of the picture moves the middle of the
 * light in every band inwards, and the readout time seems shorter by this share.
 */
const FALL_OFF_SHARE = 0.003;

/**
 * A motor that swings makes the flicker stronger and weaker as it goes, and beside a slow beat that looks
 * like a film that wavers: with a swing as large as the beat the readout time is out by this share.
 */
const SWING_SHARE = 0.01;

/**
 * Readout time from the delay of each band after the one above it. The first and the last band are left
 * out: where the edge of the gate lies in one of them, the middle of its light is not the middle of the
 * band.
 *
 * Model: the residual of each band against the slope of its light gives how much later than assumed the
 * band was read; a straight line through those delays corrects the readout time. Its error is the larger
 * of what the noise of the samples and what the scatter of the bands about the line make of it, with a
 * share for the fall-off of the lens and one for the swing of the motor.
 *
 * @param lines    the lines that were fitted
 * @param refined  the fit
 * @param swing    half the spread of the flash rate over the clip ÷ beat
 * @returns the readout time and its error; an error without bounds where nothing moves down the picture
 */
export function measuredReadout(
  lines: readonly LightLine[],
  refined: RefinedMotion,
  swing: number,
): MeasuredReadout {
  const { fit, columns, motion, meanFilmFps } = refined;
  const slopes = new Float64Array(BAND_COUNT);
  const products = new Float64Array(BAND_COUNT);
  const rates = lines.map((line) => 2 * Math.PI * lineHz(line, meanFilmFps, motion.lampHz));
  for (let at = 0; at < fit.residual.length; at += 1) {
    let slope = 0;
    for (const [index, rate] of rates.entries()) {
      slope +=
        rate *
        ((fit.factors[2 * index + 1] ?? 0) * (columns[2 * index]?.[at] ?? 0) -
          (fit.factors[2 * index] ?? 0) * (columns[2 * index + 1]?.[at] ?? 0));
    }
    const band = at % BAND_COUNT;
    slopes[band] = (slopes[band] ?? 0) + slope * slope;
    products[band] = (products[band] ?? 0) + slope * (fit.residual[at] ?? 0);
  }
  const noise = (fit.residualSquares / fit.residual.length) * SAMPLES_PER_WITNESS;
  const inner = Array.from({ length: BAND_COUNT - 2 }, (_, index) => {
    const band = index + 1;
    const slope = slopes[band] ?? 0;
    return { place: bandDelay(band), late: (products[band] ?? 0) / slope, weight: slope };
  });
  const total = inner.reduce((sum, { weight }) => sum + weight, 0);
  if (!(total > 0)) {
    return { readoutSeconds: motion.readoutSeconds, errorSeconds: Number.POSITIVE_INFINITY };
  }
  const mean = (of: (band: (typeof inner)[number]) => number): number =>
    inner.reduce((sum, band) => sum + (band.weight * of(band)) / total, 0);
  const middle = mean(({ place }) => place);
  const usualLate = mean(({ late }) => late);
  const spread = total * mean(({ place }) => (place - middle) ** 2);
  const tilt = (total * mean(({ place, late }) => (place - middle) * (late - usualLate))) / spread;
  const scatter =
    (total * mean(({ place, late }) => (late - usualLate - tilt * (place - middle)) ** 2)) /
    (inner.length - 2);
  const readoutSeconds = Math.max(0, motion.readoutSeconds + tilt);
  const deviation = Math.sqrt(Math.max(noise, scatter) / spread);
  return {
    readoutSeconds,
    errorSeconds:
      STATED_DEVIATIONS * deviation +
      (FALL_OFF_SHARE + SWING_SHARE * Math.min(1, swing) ** 2) * readoutSeconds,
  };
}
