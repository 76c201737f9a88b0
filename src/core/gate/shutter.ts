import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';
import { MOST_FLASHES_PER_FRAME } from './flash-rate.ts';

/** One opening of the shutter and the blade that ends it, as shares of the film-frame cycle. */
export interface ShutterSector {
  readonly openFraction: number;
  readonly closedFraction: number;
}

/**
 * The shutter over one film-frame cycle. Sectors come in the order in which they pass the gate once
 * the film has come to rest, so the blade of the last sector is the pulldown blade.
 */
export interface Shutter {
  readonly sectors: readonly ShutterSector[];
  /** Time a blade edge takes to cross the gate, as a share of the cycle; 0 for a hard edge. */
  readonly wipeFraction: number;
}

/** Light shares nearer to 0 or 1 than this are no shutter. */
const OPEN_FRACTION = { minimum: 0.01, maximum: 0.99 };

function requireWipe(sectors: readonly ShutterSector[], wipeFraction: number): void {
  const narrowest = Math.min(
    ...sectors.flatMap(({ openFraction, closedFraction }) => [openFraction, closedFraction]),
  );
  // The slack lets a wipe that is meant to equal the narrowest sector pass despite rounding.
  requireInterval('wipeFraction', wipeFraction, { minimum: 0, maximum: narrowest * (1 + 1e-9) });
}

/**
 * Shutter whose blades are all alike and equally spaced, which is what most projectors have.
 *
 * Model: n sectors of 1/n cycle, each open for the share d. A wipe leaves the mean light unchanged,
 * because each edge starts to cover the gate as much earlier as it ends later.
 *
 * @param flashesPerFrame  flashes in one film-frame cycle; whole, 1–12
 * @param openFraction     share of the cycle with light; 0.01–0.99
 * @param wipeFraction     edge wipe as a share of the cycle; 0 up to the narrowest sector
 * @returns the shutter
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source common practice, no source
 */
export function makeEqualShutter(
  flashesPerFrame: number,
  openFraction: number,
  wipeFraction = 0,
): Shutter {
  requireInterval('flashesPerFrame', flashesPerFrame, {
    minimum: 1,
    maximum: MOST_FLASHES_PER_FRAME,
    whole: true,
  });
  requireInterval('openFraction', openFraction, OPEN_FRACTION);
  const sector = {
    openFraction: openFraction / flashesPerFrame,
    closedFraction: (1 - openFraction) / flashesPerFrame,
  };
  const sectors = Array.from({ length: flashesPerFrame }, () => sector);
  requireWipe(sectors, wipeFraction);
  return { sectors, wipeFraction };
}

/**
 * Shutter from its own list of openings and blades, for blades of unequal width or spacing.
 *
 * @param sectors       shares of the cycle, each above 0, that together make 1 (within 1e-9)
 * @param wipeFraction  edge wipe as a share of the cycle; 0 up to the narrowest sector
 * @returns the shutter
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 */
export function makeShutter(sectors: readonly ShutterSector[], wipeFraction = 0): Shutter {
  requireInterval('flashesPerFrame', sectors.length, {
    minimum: 1,
    maximum: MOST_FLASHES_PER_FRAME,
    whole: true,
  });
  let sum = 0;
  for (const { openFraction, closedFraction } of sectors) {
    requireInterval('openFraction', openFraction, { above: 0, below: 1 });
    requireInterval('closedFraction', closedFraction, { above: 0, below: 1 });
    sum += openFraction + closedFraction;
  }
  if (Math.abs(sum - 1) > 1e-9) {
    throw new OutOfRangeError('sectors', sum, 'open and closed shares that add up to 1');
  }
  requireWipe(sectors, wipeFraction);
  return { sectors, wipeFraction };
}

/**
 * Shutter of a projector as the reader describes it: so many openings alike, one blade of its own
 * width for the pulldown, and the others sharing what is left of the dark.
 *
 * Model: n openings of d/n cycle; the pulldown blade takes its angle, each other blade
 * ((1 − d) − angle ÷ 360) ÷ (n − 1). Without an angle all blades are alike.
 *
 * @param flashesPerFrame       flashes in one film-frame cycle; whole, 1–12
 * @param openFraction          share of the cycle with light; 0.01–0.99
 * @param pulldownBladeDegrees  pulldown blade, ° of the film-frame cycle; less than all the dark;
 *                              undefined for blades alike
 * @param edgeWipeDegrees       wipe of an edge, ° of the cycle; 0 up to the narrowest sector
 * @returns the shutter
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function makeProjectorShutter(
  flashesPerFrame: number,
  openFraction: number,
  pulldownBladeDegrees?: number,
  edgeWipeDegrees = 0,
): Shutter {
  const alike = makeEqualShutter(flashesPerFrame, openFraction);
  const sectors =
    pulldownBladeDegrees === undefined || flashesPerFrame === 1
      ? alike.sectors
      : withPulldownBlade(alike.sectors, 1 - openFraction, pulldownBladeDegrees);
  const darkDegrees = 360 * (1 - openFraction);
  const isOnlyBlade = flashesPerFrame === 1 && pulldownBladeDegrees !== undefined;
  if (isOnlyBlade && Math.abs(pulldownBladeDegrees - darkDegrees) > 0.5) {
    throw new OutOfRangeError(
      'pulldownBladeDegrees',
      pulldownBladeDegrees,
      `${Number(darkDegrees.toPrecision(4))}°, all the dark there is, because one flash has one blade`,
    );
  }
  const narrowest = Math.min(
    ...sectors.flatMap(({ openFraction: open, closedFraction }) => [open, closedFraction]),
  );
  requireInterval('edgeWipeDegrees', edgeWipeDegrees, {
    minimum: 0,
    maximum: Number((360 * narrowest).toPrecision(9)),
    unit: '°',
  });
  return makeShutter(sectors, Math.min(edgeWipeDegrees / 360, narrowest));
}

function withPulldownBlade(
  sectors: readonly ShutterSector[],
  closedFraction: number,
  pulldownBladeDegrees: number,
): readonly ShutterSector[] {
  // At least a degree must be left for each of the other blades, or they are none.
  requireInterval('pulldownBladeDegrees', pulldownBladeDegrees, {
    above: 0,
    maximum: Number((360 * closedFraction - (sectors.length - 1)).toPrecision(6)),
    unit: '°',
  });
  const blade = pulldownBladeDegrees / 360;
  const other = (closedFraction - blade) / (sectors.length - 1);
  return sectors.map(({ openFraction }, index) => ({
    openFraction,
    closedFraction: index === sectors.length - 1 ? blade : other,
  }));
}

/**
 * Share of the cycle in which the widest blade keeps the gate fully dark. A row whose exposure is no
 * longer than this can fall into it whole and stay dark.
 */
export function longestDarkFraction(shutter: Shutter): number {
  const widest = Math.max(...shutter.sectors.map(({ closedFraction }) => closedFraction));
  return Math.max(0, widest - shutter.wipeFraction);
}

/** Whether blades and openings are all alike, so that one flash is like every other. */
export function hasEqualBlades(shutter: Shutter): boolean {
  const [first] = shutter.sectors;
  return shutter.sectors.every(
    ({ openFraction, closedFraction }) =>
      Math.abs(openFraction - (first?.openFraction ?? 0)) < 1e-9 &&
      Math.abs(closedFraction - (first?.closedFraction ?? 0)) < 1e-9,
  );
}

/** Share of the film-frame cycle with light, 0–1; the wipe does not change it. */
export function shutterOpenFraction(shutter: Shutter): number {
  return shutter.sectors.reduce((sum, sector) => sum + sector.openFraction, 0);
}

/**
 * Share of the cycle in which the pulldown blade keeps the gate fully dark: its closed share less one
 * wipe, since half a wipe goes off at each edge.
 */
export function pulldownDarkFraction(shutter: Shutter): number {
  const blade = shutter.sectors.at(-1)?.closedFraction ?? 0;
  return Math.max(0, blade - shutter.wipeFraction);
}

/**
 * Closed time of the pulldown blade for equal blades, s: how long the gate stays dark while the film
 * moves. No light of either neighbour falls in it, so whole frames depend on it.
 *
 * Model: c = (1 − d) ÷ (n · f), exact for hard edges.
 *
 * @param filmFps          film rate, frames/s; > 0, at most 240
 * @param flashesPerFrame  flashes in one film-frame cycle; whole, 1–12
 * @param openFraction     share of the cycle with light; 0.01–0.99
 * @returns closed time, s; > 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example closedSeconds(18, 3, 0.5) // ≈ 0.009259 (1/108)
 */
export function closedSeconds(
  filmFps: number,
  flashesPerFrame: number,
  openFraction: number,
): number {
  requireInterval('filmFps', filmFps, { above: 0, maximum: 240, unit: 'frames/s' });
  return pulldownDarkFraction(makeEqualShutter(flashesPerFrame, openFraction)) / filmFps;
}
