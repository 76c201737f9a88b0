import { inUnit, wander } from '../drawing/noise.ts';
import { inLoop } from '../drawing/reel.ts';
import type { FilmFaults } from './film-faults.ts';
import type { PlaceInGate } from './place-in-gate.ts';

/** Film frames between the torn holes, and how a frame jumps at each of them, page units. */
const TORN_EVERY = 24;
const TORN_JUMPS = [22, -12, 30] as const;

/** A lost loop lets the strip slide by this share of a frame in a film frame. */
const SLIDE = 0.13;

/** Which of the torn holes a film frame is at; undefined for a sound one. */
export function tornHole(filmFrame: number): number | undefined {
  const place = inLoop(filmFrame) % TORN_EVERY;
  return place < TORN_JUMPS.length ? place : undefined;
}

/** How far a film frame lies from its place. */
export interface Displaced extends PlaceInGate {
  /** Share of a frame by which the strip has slid up, 0 to less than 1. */
  readonly slid: number;
}

/** How far torn holes, a lost loop, wrong framing or a crooked path leave a film frame from its place. */
export function displaced(
  filmFrame: number,
  { torn, slip, misframe, aside }: FilmFaults,
): Displaced {
  const hole = tornHole(filmFrame);
  const jump = hole === undefined ? 0 : (TORN_JUMPS[hole] ?? 0) * torn;
  const slid = slip * (filmFrame * SLIDE + 0.3 * wander(filmFrame / 2, 211)) + misframe;
  return { x: aside * 62, y: jump, slid: inUnit(slid) };
}
