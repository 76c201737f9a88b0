import { formatNumber } from '../core/quantity/format.ts';
import type { WorkingStep } from './types.ts';

interface Times {
  readonly filmFps: number;
  readonly exposureSeconds: number;
  readonly readoutSeconds: number;
}

const ms = (seconds: number): string => formatNumber(seconds * 1000, 4);

/** The step that finds the window for whole frames, in the form that fits the exposure. */
export function windowStep(settings: Times, closed: number, window: number): WorkingStep {
  const { filmFps, exposureSeconds, readoutSeconds } = settings;
  const [frame, exposure, readout] = [ms(1 / filmFps), ms(exposureSeconds), ms(readoutSeconds)];
  return exposureSeconds + readoutSeconds < closed
    ? {
        words:
          'The exposure is shorter than the dark, so starts that see only the dark do not count: film frame less closed time, plus exposure, plus readout.',
        sum: `${frame} − ${ms(closed)} + ${exposure} + ${readout} = ${ms(window)} ms`,
      }
    : {
        words:
          'A camera frame is whole when it starts inside a window: film frame plus closed time, less exposure, less readout.',
        sum: `${frame} + ${ms(closed)} − ${exposure} − ${readout} = ${ms(window)} ms`,
      };
}
