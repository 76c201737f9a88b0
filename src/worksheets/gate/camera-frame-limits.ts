import { OutOfRangeError } from '../../quantity/errors.ts';
import { fitsCameraFrame } from '../../core/gate/exposure.ts';
import { formatExposure, formatNumber, formatQuantity } from '../../quantity/format.ts';

/**
 * Refuses an exposure or readout that takes longer than one camera frame, in words for the field.
 *
 * @throws {OutOfRangeError} for `exposureSeconds` or `readoutSeconds`
 */
export function requireWithinCameraFrame(
  cameraFps: number,
  exposureSeconds: number,
  readoutSeconds = 0,
): void {
  const rate = `${formatNumber(cameraFps, 4)} frames/s`;
  if (!fitsCameraFrame(exposureSeconds, cameraFps)) {
    throw new OutOfRangeError(
      'exposureSeconds',
      formatExposure(exposureSeconds),
      `at most ${formatExposure(1 / cameraFps)}, because a camera at ${rate} has no more time for one frame`,
    );
  }
  if (!fitsCameraFrame(readoutSeconds, cameraFps)) {
    throw new OutOfRangeError(
      'readoutSeconds',
      formatQuantity(readoutSeconds * 1000, 'ms', 4),
      `at most ${formatQuantity(1000 / cameraFps, 'ms', 4)}, because a camera at ${rate} has no more time to read one frame`,
    );
  }
}
