import Fraction from 'fraction.js';
import type { Setting } from '../../core/gate/complete-setting.ts';
import { formatExposure, formatNumber, formatQuantity, formatRate } from '../../quantity/format.ts';

/** A rate as a reader knows it: 16 2/3 and 30000/1001 rather than their decimals. */
export function rateWords(fps: number, withUnit = false): string {
  for (const denominator of [1, 3, 1001]) {
    const top = Math.round(fps * denominator);
    if (Math.abs(top / denominator / fps - 1) < 1e-9) {
      return formatRate(new Fraction(top, denominator), withUnit);
    }
  }
  return withUnit ? formatQuantity(fps, 'fps', 5) : formatNumber(fps, 5);
}

/** The three settings in one breath. */
export function settingWords({ filmFps, cameraFps, exposureSeconds }: Setting): string {
  return `film ${rateWords(filmFps)}, camera ${rateWords(cameraFps)}, exposure ${formatExposure(exposureSeconds)}`;
}

/** How far one film rate lies from another: “4.17 % faster”. */
export function changeWords(toFps: number, fromFps: number): string {
  const percent = (toFps / fromFps - 1) * 100;
  return `${formatQuantity(Math.abs(percent), 'percent', 3)} ${percent > 0 ? 'faster' : 'slower'}`;
}

/** A readout time that must not be passed, ms, rounded down. */
export function readoutLimitWords(readoutSeconds: number): string {
  const milliseconds = Math.floor(readoutSeconds * 1e5 + 1e-6) / 100;
  return milliseconds === 0
    ? 'with a global shutter'
    : `with a readout of at most ${formatQuantity(milliseconds, 'ms', 4)}`;
}
