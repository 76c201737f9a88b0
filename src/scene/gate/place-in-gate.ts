import { wander } from '../drawing/noise.ts';
import { inLoop, REEL, sinceSplice } from '../drawing/reel.ts';
import type { FilmFaults } from './film-faults.ts';

/** From one frame to the next on the strip, frame heights: the line between them is the rest. */
export const PITCH = 1.045;

/** Where a film frame lies in the gate. */
export interface PlaceInGate {
  /** To the right and down, page units. */
  readonly x: number;
  readonly y: number;
}

/** Jumps of the first two film frames after a splice. */
const SPLICE_JUMPS = [16, -6] as const;

/** True for the film frames just before and just after a splice. */
export function besideSplice(filmFrame: number): 'before' | 'after' | undefined {
  if (sinceSplice(filmFrame) === 0) return 'after';
  const next = inLoop(filmFrame + 1);
  return next === 0 || next === REEL.splice ? 'before' : undefined;
}

/** Where the claw leaves a film frame of a sound film. */
export function placeInGate(filmFrame: number, { weave, spliceJump }: FilmFaults): PlaceInGate {
  const sideways = wander(filmFrame / 3, 201) * 5 + wander(filmFrame, 202) * 2.2;
  const upright = wander(filmFrame / 2.4, 203) * 4 + wander(filmFrame, 204) * 3;
  const jump = (SPLICE_JUMPS[sinceSplice(filmFrame)] ?? 0) * spliceJump;
  return { x: weave * sideways, y: weave * upright + jump };
}
