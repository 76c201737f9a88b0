import { formatNumber } from '../../quantity/format.ts';
import { DARK_ROWS } from './dark-rows-words.ts';
import type { WorkingStep } from '../machine/types.ts';

interface Times {
  readonly filmFps: number;
  readonly exposureSeconds: number;
  readonly readoutSeconds: number;
}

/** A short time in ms, without the unit. */
export const ms = (seconds: number): string => formatNumber(seconds * 1000, 4);

/** The step that finds the window for whole frames, or says why there is none. */
export function windowStep(
  settings: Times,
  closed: number,
  window: number | undefined,
  longestDark = closed,
): WorkingStep {
  const { filmFps, exposureSeconds, readoutSeconds } = settings;
  const [frame, exposure, readout] = [ms(1 / filmFps), ms(exposureSeconds), ms(readoutSeconds)];
  return window === undefined
    ? {
        words: `The exposure T is not longer than the longest dark gap of the shutter, so ${DARK_ROWS}.`,
        sum: `T = ${exposure} ms, dark for ${ms(longestDark)} ms`,
      }
    : {
        words:
          'A camera frame is whole when it starts inside a window W: film frame P plus closed time c, less exposure T, less readout R.',
        sum: `W = ${frame} + ${ms(closed)} − ${exposure} − ${readout} = ${ms(window)} ms`,
      };
}

/** The step from the window to the camera rate; none where there is no window. */
export function smallestRateStep(
  window: number | undefined,
  smallestText: string,
): readonly WorkingStep[] {
  if (window === undefined) return [];
  return [
    {
      words:
        'The camera must start at least once in each window, so one divided by it is the rate.',
      sum: `1 ÷ ${ms(window)} ms: ${smallestText}`,
    },
  ];
}
