// Blades that are not alike or not sharp, for the worksheets in which the pulldown blade counts.
import { makeProjectorShutter, type Shutter } from '../../core/gate/shutter.ts';

/** The entries that describe a shutter. */
export interface ShutterEntries {
  readonly flashesPerFrame: number;
  readonly openPercent: number;
  /** Undefined when all blades are alike. */
  readonly pulldownBladeDegrees: number | undefined;
  /** Undefined for hard edges. */
  readonly edgeWipeDegrees: number | undefined;
}

/**
 * The shutter that the entries describe.
 *
 * @throws {OutOfRangeError} for `pulldownBladeDegrees` or `edgeWipeDegrees`
 */
export function shutterOf(entries: ShutterEntries): Shutter {
  const { flashesPerFrame, openPercent, pulldownBladeDegrees, edgeWipeDegrees } = entries;
  return makeProjectorShutter(
    flashesPerFrame,
    openPercent / 100,
    pulldownBladeDegrees,
    edgeWipeDegrees,
  );
}

/** What the numbers stand on, for the model of a sheet. */
export const BLADES_MODEL =
  'Blades are alike and equally spaced with hard edges unless a pulldown blade or an edge wipe is given; then the other blades are alike, and the fully dark part of the pulldown blade counts.';
