import { requireInterval } from '../../quantity/errors.ts';
import { MOST_FLASHES_PER_FRAME } from './flash-rate.ts';

/**
 * What else was seen beside the beat. `rises` and `falls`: the beat when the projector is sped up a
 * little. `bands-up` and `bands-down`: the way the bands travel in the picture as a camera delivers
 * it that reads its rows from top to bottom.
 */
export type BeatObservation = 'unknown' | 'rises' | 'falls' | 'bands-up' | 'bands-down';

/** A film rate that gives the observed beat. */
export interface BeatCandidate {
  readonly filmFps: number;
  readonly flashRateHz: number;
  /** Multiple of the camera rate that the flash rate lies next to. */
  readonly multiple: number;
  /** +1: the flash rate lies above that multiple; −1: below; 0: on it. */
  readonly side: 1 | 0 | -1;
}

/** A beat as counted by eye: so many pulses in so many seconds of the recording. */
export interface CountedBeat {
  readonly beatHz: number;
  /** Largest error of the beat, ± Hz, from a count that is out by at most the given share. */
  readonly errorHz: number;
}

/**
 * Beat from pulses counted over a time.
 *
 * Model: beat = pulses ÷ time, ± count error ÷ time.
 *
 * @param beatPulses        pulses counted; ≥ 0, at most 10 000
 * @param beatSeconds       time over which they were counted, s; > 0, at most 3600
 * @param countErrorPulses  how far the count may be out, pulses; ≥ 0
 * @returns beat and its error, Hz
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function countedBeat(
  beatPulses: number,
  beatSeconds: number,
  countErrorPulses: number,
): CountedBeat {
  requireInterval('beatPulses', beatPulses, { minimum: 0, maximum: 10_000 });
  requireInterval('beatSeconds', beatSeconds, { above: 0, maximum: 3600, unit: 's' });
  requireInterval('countErrorPulses', countErrorPulses, { minimum: 0, maximum: 10_000 });
  return { beatHz: beatPulses / beatSeconds, errorHz: countErrorPulses / beatSeconds };
}

/**
 * Side of the camera-rate multiple that an observation points to; 0 when it settles nothing.
 *
 * Above a multiple more speed takes the flash rate further away, so the beat rises; below, it falls.
 * Above, a flash comes a little earlier in each camera frame, so its band climbs towards the rows
 * that are read first: upwards, unless the picture was turned over on the way to the screen.
 *
 * @param observation   what was seen
 * @param isTurnedOver  true when the camera stood on its head or the picture was flipped top to bottom
 * @returns 1 above, −1 below, 0 not settled
 * @source arithmetic
 * @example sideOfObservation('falls') // -1
 */
export function sideOfObservation(observation: BeatObservation, isTurnedOver = false): 1 | 0 | -1 {
  switch (observation) {
    case 'rises':
      return 1;
    case 'falls':
      return -1;
    case 'bands-up':
      return isTurnedOver ? -1 : 1;
    case 'bands-down':
      return isTurnedOver ? 1 : -1;
    case 'unknown':
      return 0;
  }
}

/**
 * Film rates that give the observed beat, slowest first. A beat only tells how far the flash rate is
 * from a multiple of the camera rate: not from which one, nor on which side. A plausible window of
 * film rates and the nudge test narrow them down.
 *
 * Model: F = m·f_c ± beat, f = F ÷ n, for every whole m ≥ 0 with f in the window.
 *
 * @param beatHz           beat seen in the recording, Hz; ≥ 0, at most half the camera rate
 * @param cameraFps        camera rate, frames/s; > 0, at most 1000
 * @param flashesPerFrame  flashes in one film-frame cycle; whole, 1–12
 * @param slowestFps       slowest film rate worth considering, frames/s; > 0
 * @param fastestFps       fastest film rate worth considering, frames/s; ≥ slowest, at most 240
 * @param observation      what else was seen; 'unknown' leaves both sides in
 * @param isTurnedOver     true when the camera stood on its head or the picture was flipped top to bottom
 * @returns candidates, slowest first; none when the window holds none
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function filmRatesFromBeat(
  beatHz: number,
  cameraFps: number,
  flashesPerFrame: number,
  slowestFps: number,
  fastestFps: number,
  observation: BeatObservation,
  isTurnedOver = false,
): readonly BeatCandidate[] {
  requireInterval('cameraFps', cameraFps, { minimum: 1, maximum: 1000, unit: 'frames/s' });
  // A beat of exactly half the camera rate can come out of a division a rounding step too large.
  const halfRate = (cameraFps / 2) * (1 + 1e-12);
  requireInterval('beatHz', beatHz, { minimum: 0, maximum: halfRate, unit: 'Hz' });
  requireInterval('flashesPerFrame', flashesPerFrame, {
    minimum: 1,
    maximum: MOST_FLASHES_PER_FRAME,
    whole: true,
  });
  requireInterval('slowestFps', slowestFps, { above: 0, maximum: 240, unit: 'frames/s' });
  requireInterval('fastestFps', fastestFps, {
    minimum: slowestFps,
    maximum: 240,
    unit: 'frames/s',
  });

  const wantedSide = sideOfObservation(observation, isTurnedOver);
  const isStanding = beatHz === 0;
  const isHalfway = beatHz >= cameraFps / 2;
  const candidates: BeatCandidate[] = [];
  const lastMultiple = Math.ceil((fastestFps * flashesPerFrame + beatHz) / cameraFps);
  for (let multiple = 0; multiple <= lastMultiple; multiple += 1) {
    for (const side of [-1, 1] as const) {
      if (wantedSide !== 0 && !isStanding && side !== wantedSide) continue;
      // One candidate, not two, where both sides meet: on a multiple, and halfway between two.
      if (side === -1 && (isStanding || (isHalfway && wantedSide === 0))) continue;
      const flashRateHz = multiple * cameraFps + side * beatHz;
      const filmFps = flashRateHz / flashesPerFrame;
      if (filmFps < slowestFps || filmFps > fastestFps) continue;
      candidates.push({ filmFps, flashRateHz, multiple, side: isStanding ? 0 : side });
    }
  }
  return candidates;
}

/**
 * How far apart the film rates of one side lie, frames/s: the size of the window that leaves a single
 * candidate once the nudge test has settled the side.
 *
 * Model: f_c ÷ n.
 *
 * @param cameraFps        camera rate, frames/s; > 0
 * @param flashesPerFrame  flashes in one film-frame cycle; whole, 1–12
 * @returns spacing of candidates, frames/s; > 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example candidateSpacingFps(25, 3) // ≈ 8.33333
 */
export function candidateSpacingFps(cameraFps: number, flashesPerFrame: number): number {
  requireInterval('cameraFps', cameraFps, { above: 0, unit: 'frames/s' });
  requireInterval('flashesPerFrame', flashesPerFrame, {
    minimum: 1,
    maximum: MOST_FLASHES_PER_FRAME,
    whole: true,
  });
  return cameraFps / flashesPerFrame;
}
