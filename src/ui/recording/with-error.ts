import { roundToUncertainty } from '../../quantity/round-to-uncertainty.ts';

/** A value with how far it may be off, both to the digits that mean something. */
export function withError(value: number, error: number, unit: 'fps' | 'ms'): string {
  const decimals = Math.max(0, -Math.floor(Math.log10(error / 2)));
  const shown = roundToUncertainty(value, error).toFixed(decimals);
  // The error is an end of a range: rounded up, it stays true.
  const around = roundToUncertainty(error, error, 'up').toFixed(decimals);
  return `${shown} ± ${around} ${unit === 'fps' ? 'frames/s' : 'ms'}`;
}
