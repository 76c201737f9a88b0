// Words for how a value is known, the same on every worksheet.

import type { Provenance, SourcedMillimetres, SourceStatus } from '../../core/reel/gauges/gauge.ts';
import { formatNumber } from '../../quantity/format.ts';

/** How a value was read, in a few words. */
export const STATUS_WORDS: Readonly<Record<SourceStatus, string>> = {
  seen: 'read in the source',
  secondary: 'quoted second-hand',
  memory: 'from memory: check the standard',
  derived: 'computed from other values',
  practice: 'practice of the trade, no source',
};

/** `about` before a value that is only remembered. */
export function hedge({ status }: Provenance): string {
  return status === 'memory' ? 'about ' : '';
}

/** A length as printed, with its tolerance: `7.976 ± 0.038 mm`, `about 1.83 mm`. */
export function lengthText(length: SourcedMillimetres): string {
  const { millimetres, toleranceMillimetres } = length;
  const tolerance =
    toleranceMillimetres === undefined ? '' : ` ± ${formatNumber(toleranceMillimetres, 3)}`;
  return `${hedge(length)}${formatNumber(millimetres, 5)}${tolerance}\u00a0mm`;
}
