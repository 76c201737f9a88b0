import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';
import { beatHz } from './beat.ts';
import { harmonicShare, type GateLight } from './gate-light.ts';
import { makeShutter, type Shutter } from './shutter.ts';

/**
 * Shutter from arcs measured on the disc. Only their proportion counts, so degrees and lengths along
 * one circle serve alike; they are scaled to a full turn.
 *
 * @param bladeDegrees   blades in the order they pass, the pulldown blade last; each > 0
 * @param openDegrees    the opening before each blade, as many; each > 0
 * @param turnsPerFrame  turns of the shutter for one film frame; whole, 1–3
 * @param wipeDegrees    arc in which an edge crosses the gate, in the same measure; ≥ 0, at most the
 *                       narrowest arc
 * @returns the shutter over one film-frame cycle
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function shutterFromArcs(
  bladeDegrees: readonly number[],
  openDegrees: readonly number[],
  turnsPerFrame: number,
  wipeDegrees = 0,
): Shutter {
  requireInterval('turnsPerFrame', turnsPerFrame, { minimum: 1, maximum: 3, whole: true });
  if (openDegrees.length !== bladeDegrees.length || bladeDegrees.length === 0) {
    const count = bladeDegrees.length;
    throw new OutOfRangeError(
      'openDegrees',
      `${openDegrees.length} openings`,
      `one opening before each blade, so ${count} of them`,
    );
  }
  for (const degrees of bladeDegrees) requireInterval('bladeDegrees', degrees, { above: 0 });
  for (const degrees of openDegrees) requireInterval('openDegrees', degrees, { above: 0 });
  const turn = sumOf(bladeDegrees) + sumOf(openDegrees);
  const oneTurn = bladeDegrees.map((blade, index) => ({
    openFraction: (openDegrees[index] ?? 0) / turn / turnsPerFrame,
    closedFraction: blade / turn / turnsPerFrame,
  }));
  const narrowest = Math.min(...bladeDegrees, ...openDegrees);
  requireInterval('edgeWipeDegrees', wipeDegrees, { minimum: 0, maximum: narrowest });
  return makeShutter(
    Array.from({ length: turnsPerFrame }, () => oneTurn).flat(),
    wipeDegrees / turn / turnsPerFrame,
  );
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/** One component of the light that an exposure of one flash leaves in the recording. */
export interface Pulsation {
  /** Rate of the component in the gate, Hz. */
  readonly lightHz: number;
  /** Rate at which it shows in the recording, Hz; 0 is standing. */
  readonly shownHz: number;
  /** Its ripple alone, %, peak to peak. */
  readonly ripplePercent: number;
}

/**
 * The components of the gate light below the flash rate and how an exposure time shows them: the slow
 * pulsation that unequal blades leave at every exposure time near one flash.
 *
 * Model: component h of the pattern rate p has the ripple 4·|c_h ÷ c_0|·|sinc(h·p·T)| and shows at the
 * beat of h·p with the camera rate. Exact for each component by itself; only their sum is the ripple.
 *
 * @param light            gate light
 * @param filmFps          film rate, frames/s; > 0, at most 240
 * @param patternsPerFrame repeats of the blade pattern in one film frame (shutter turns); whole, 1–3
 * @param flashesPerFrame  flashes in one film-frame cycle; whole, 1–12
 * @param cameraFps        camera rate, frames/s; 0.1–1000
 * @param exposureSeconds  exposure time, s; > 0, at most 60
 * @returns components from slow to fast in the gate; none when every turn has one flash
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function slowPulsations(
  light: GateLight,
  filmFps: number,
  patternsPerFrame: number,
  flashesPerFrame: number,
  cameraFps: number,
  exposureSeconds: number,
): readonly Pulsation[] {
  requireInterval('exposureSeconds', exposureSeconds, { above: 0, maximum: 60, unit: 's' });
  requireInterval('patternsPerFrame', patternsPerFrame, { minimum: 1, maximum: 3, whole: true });
  requireInterval('flashesPerFrame', flashesPerFrame, { minimum: 1, maximum: 12, whole: true });
  const flashesPerPattern = Math.round(flashesPerFrame / patternsPerFrame);
  return Array.from({ length: flashesPerPattern - 1 }, (_, index): Pulsation => {
    const harmonic = (index + 1) * patternsPerFrame;
    const lightHz = harmonic * filmFps;
    const turns = Math.PI * lightHz * exposureSeconds;
    return {
      lightHz,
      shownHz: Math.abs(beatHz(lightHz, cameraFps)),
      ripplePercent: 400 * harmonicShare(light, harmonic) * Math.abs(Math.sin(turns) / turns),
    };
  });
}
