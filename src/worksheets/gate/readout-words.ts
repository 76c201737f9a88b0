import { formatNumber } from '../../quantity/format.ts';
import { readoutOrWorst } from '../../core/gate/readout.ts';

/**
 * What a verdict adds while the readout time is not measured, after its full stop; nothing once it is.
 */
export function readoutAssumed(readoutSeconds: number | undefined, cameraFps: number): string {
  if (readoutSeconds !== undefined) return '';
  const worst = formatNumber(readoutOrWorst(readoutSeconds, cameraFps) * 1000, 3);
  return ` The readout time is not measured: a whole camera frame, ${worst} ms, is assumed.`;
}
