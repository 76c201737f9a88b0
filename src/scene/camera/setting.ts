import Fraction from 'fraction.js';
import { makeGateLight, type GateLight } from '../../core/gate/gate-light.ts';
import { makeProjectorShutter, makeShutter, type Shutter } from '../../core/gate/shutter.ts';
import { lampWave } from './lamp-wave.ts';

/** Projector, lamp and camera as plain numbers, as a page hands them over. */
export interface BenchNumbers {
  readonly filmFps: number;
  readonly flashesPerFrame: number;
  /** Share of the cycle with light, 0.01–0.99. */
  readonly openFraction: number;
  readonly pulldownBladeDegrees?: number | undefined;
  readonly edgeWipeDegrees?: number | undefined;
  /** Openings and blades of a shutter whose blades differ, ° of the cycle; then flashes and open share do not count. */
  readonly bladeDegrees?: readonly (readonly [open: number, closed: number])[] | undefined;
  /** Flicker of the lamp while the shutter is held open and the film stands. */
  readonly lampFlicker?: { readonly lampHz: number; readonly depth: number } | undefined;
  readonly cameraFps: number;
  readonly exposureSeconds: number;
  readonly readoutSeconds: number;
  /** Start of camera frame 0 after the middle of the pulldown blade, film frames. */
  readonly phase?: number | undefined;
  /** Odd rows are exposed half a camera frame later. */
  readonly isInterlaced?: boolean | undefined;
}

/** The bench ready for the camera. */
export interface Setting {
  readonly light: GateLight;
  readonly filmRate: Fraction;
  readonly cameraRate: Fraction;
  readonly filmFps: number;
  readonly cameraFps: number;
  readonly exposureSeconds: number;
  readonly readoutSeconds: number;
  readonly phase: number;
  readonly isInterlaced: boolean;
  /** True where the film does not run: every exposure sees the same film frame. */
  readonly doesFilmStand: boolean;
}

/** Camera frame 0 starts a little after the pulldown, as if someone pressed the button by hand. */
const BY_HAND = 0.1;

/** Film frame that is shown while the film stands: the skiff in the middle, the child waving. */
export const STANDING_FILM_FRAME = 60;

/** The shutter of a bench. */
export function shutterOf(numbers: BenchNumbers): Shutter {
  const { flashesPerFrame, openFraction, pulldownBladeDegrees, edgeWipeDegrees = 0 } = numbers;
  if (numbers.bladeDegrees === undefined) {
    return makeProjectorShutter(
      flashesPerFrame,
      openFraction,
      pulldownBladeDegrees,
      edgeWipeDegrees,
    );
  }
  return makeShutter(
    numbers.bladeDegrees.map(([open, closed]) => ({
      openFraction: open / 360,
      closedFraction: closed / 360,
    })),
  );
}

/**
 * Makes a setting from plain numbers.
 *
 * @throws {OutOfRangeError} from the core, for a bench that it refuses
 */
export function makeSetting(numbers: BenchNumbers): Setting {
  const { filmFps, cameraFps, exposureSeconds, readoutSeconds, lampFlicker } = numbers;
  const light =
    lampFlicker === undefined
      ? makeGateLight(filmFps, shutterOf(numbers))
      : lampWave(lampFlicker.lampHz, lampFlicker.depth);
  return {
    light,
    filmRate: new Fraction(filmFps),
    cameraRate: new Fraction(cameraFps),
    filmFps,
    cameraFps,
    exposureSeconds,
    readoutSeconds,
    phase: numbers.phase ?? BY_HAND,
    isInterlaced: numbers.isInterlaced ?? false,
    doesFilmStand: lampFlicker !== undefined,
  };
}
