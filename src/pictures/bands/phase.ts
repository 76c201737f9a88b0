import type { BandsData } from '../../worksheets/machine/picture-data.ts';

/** One recorded frame: where in the light pattern its first row lies. */
export interface BandsFrame {
  /** Phase at the top of the picture, pattern periods, 0 up to but not including 1. */
  readonly phaseAtTop: number;
}

function fraction(value: number): number {
  const rest = value - Math.floor(value);
  return rest < 1 ? rest : 0;
}

/**
 * The recorded frame of a given number; a pure function, so that the moving picture and the test
 * draw the same. A positive phase step moves the bands up the picture, a negative one down, because
 * each row then meets a later part of the pattern than in the frame before.
 *
 * @param frameNumber  camera frame, whole, from 0
 */
export function bandsFrame(picture: BandsData, frameNumber: number): BandsFrame {
  return { phaseAtTop: fraction(frameNumber * picture.phaseStepPerFrame) };
}

/** Exposure at a phase of the pattern, mean 1, straight between the equal steps given. */
export function exposureAtPhase(picture: BandsData, phase: number): number {
  const { exposureByPhase } = picture;
  const place = fraction(phase) * exposureByPhase.length;
  const index = Math.floor(place);
  const before = exposureByPhase[index] ?? 1;
  const after = exposureByPhase[(index + 1) % exposureByPhase.length] ?? before;
  return before + (place - index) * (after - before);
}

/**
 * Camera frame that stands on the screen after so many seconds of play.
 *
 * @param speed  1 for true speed, 1/4 for slow motion
 */
export function frameAfter(elapsedSeconds: number, cameraFps: number, speed: number): number {
  return Math.max(0, Math.floor(elapsedSeconds * cameraFps * speed + 1e-6));
}
