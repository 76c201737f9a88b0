// Blades that are not alike or not sharp, for the worksheets in which the pulldown blade counts.
import { requireInterval } from '../core/errors.ts';
import { makeEqualShutter, makePulldownShutter, type Shutter } from '../core/shutter.ts';
import type { OptionalQuantityInput } from './types.ts';

export const pulldownDegreesInput = {
  kind: 'optional-quantity',
  label: 'Pulldown blade',
  unit: 'deg',
  minimum: 1,
  maximum: 180,
  default: '',
  accepted: '72 or 72°',
  help: 'Its angle, where 360° are one film frame; it is the blade that covers the gate while the claw moves the film. Empty: all blades are alike.',
} as const satisfies OptionalQuantityInput;

export const wipeDegreesInput = {
  kind: 'optional-quantity',
  label: 'Edge wipe',
  unit: 'deg',
  minimum: 0,
  maximum: 60,
  default: '',
  accepted: '12 or 12°',
  help: 'How far the shutter turns while an edge crosses the picture in the gate, where 360° are one film frame. It takes from the dark time. Empty: hard edges.',
} as const satisfies OptionalQuantityInput;

/** The entries that describe a shutter. */
export interface ShutterEntries {
  readonly flashesPerFrame: number;
  readonly openPercent: number;
  readonly pulldownDegrees: number | undefined;
  readonly wipeDegrees: number | undefined;
}

/**
 * The shutter that the entries describe.
 *
 * @throws {OutOfRangeError} for `pulldownDegrees` or `wipeDegrees`
 */
export function shutterOf(entries: ShutterEntries): Shutter {
  const { flashesPerFrame, pulldownDegrees } = entries;
  const open = entries.openPercent / 100;
  const wipe = (entries.wipeDegrees ?? 0) / 360;
  const closedDegrees = 360 * (1 - open);
  const pulldown = pulldownDegrees ?? closedDegrees / flashesPerFrame;
  if (pulldownDegrees !== undefined && flashesPerFrame > 1) {
    requireInterval('pulldownDegrees', pulldown, { below: closedDegrees, unit: '°' });
  } else if (pulldownDegrees !== undefined) {
    requireInterval('pulldownDegrees', pulldown, {
      minimum: closedDegrees - 0.5,
      maximum: closedDegrees + 0.5,
      unit: '°',
    });
  }
  const others = (closedDegrees - pulldown) / Math.max(1, flashesPerFrame - 1);
  const narrowest = Math.min(
    (360 * open) / flashesPerFrame,
    pulldown,
    flashesPerFrame > 1 ? others : Infinity,
  );
  requireInterval('wipeDegrees', wipe * 360, { minimum: 0, maximum: narrowest, unit: '°' });
  return pulldownDegrees === undefined || flashesPerFrame === 1
    ? makeEqualShutter(flashesPerFrame, open, wipe)
    : makePulldownShutter(flashesPerFrame, open, pulldown / 360, wipe);
}

/** What the numbers stand on, for the model of a sheet. */
export const BLADES_MODEL =
  'Blades are alike and equally spaced with hard edges unless a pulldown blade or an edge wipe is given; then the other blades are alike, and the fully dark part of the pulldown blade counts.';
