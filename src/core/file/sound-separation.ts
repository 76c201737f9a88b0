import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';
import { frameStepMillimetres, GAUGE_IDS, GAUGES } from '../reel/gauges.ts';
import type { GaugeId, Provenance } from '../reel/gauges/gauge.ts';

/** A way of putting sound on film: how far ahead of its picture the sound lies, and how sure that is. */
export interface SoundSystem extends Provenance {
  /** Gauge and kind of record, for instance `16mm-optical`. */
  readonly name: string;
  readonly label: string;
  readonly gauge: GaugeId;
  /** Frames by which the sound precedes its picture. */
  readonly framesAhead: number;
  /** Distance from one frame to the next on new film, mm. */
  readonly stepMillimetres: number;
}

/**
 * Every sound system whose separation is known well enough to compute with. On all of them the sound
 * lies ahead of its picture, because the sound head comes after the gate.
 */
export const SOUND_SYSTEMS: readonly SoundSystem[] = GAUGE_IDS.flatMap((gauge) =>
  GAUGES[gauge].soundTracks.map(({ system, framesAhead, source, status, note }) => ({
    name: `${gauge}-${system}`,
    label: `${GAUGES[gauge].name}, ${system} sound`,
    gauge,
    framesAhead,
    stepMillimetres: frameStepMillimetres(gauge, 'long'),
    source,
    status,
    ...(note === undefined ? {} : { note }),
  })),
);

/**
 * A sound system by name.
 *
 * @param system  name of a system, for instance `16mm-optical`
 * @returns the system
 * @throws {OutOfRangeError} naming the known systems
 * @source smpte-41
 * @source hobby-sound-article
 * @source from-memory
 * @example findSoundSystem('16mm-optical') // { framesAhead: 26 }
 */
export function findSoundSystem(system: string): SoundSystem {
  const found = SOUND_SYSTEMS.find(({ name }) => name === system);
  if (found === undefined) {
    const known = SOUND_SYSTEMS.map(({ name }) => name).join(', ');
    throw new OutOfRangeError('system', system, `one of ${known}`);
  }
  return found;
}

const FPS = { above: 0, maximum: 240, unit: 'frames/s' } as const;
const FRAMES = { minimum: -1000, maximum: 1000, unit: 'frames' } as const;

/**
 * Length of film that a number of frames takes.
 *
 * Model: frames × pitch, exact for new film; shrunken film is shorter in proportion.
 *
 * @param separationFrames   frames; −1000 to 1000
 * @param pitchMillimetres   distance from frame to frame, mm; > 0, at most 100
 * @returns length, mm
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example framesMillimetres(28, 7.62) // ≈ 213.36
 */
export function framesMillimetres(separationFrames: number, pitchMillimetres: number): number {
  requireInterval('separationFrames', separationFrames, FRAMES);
  requireInterval('pitchMillimetres', pitchMillimetres, { above: 0, maximum: 100, unit: 'mm' });
  return separationFrames * pitchMillimetres;
}

/**
 * Time that a number of frames takes to pass.
 *
 * Model: frames ÷ film rate, exact.
 *
 * @param separationFrames  frames; −1000 to 1000
 * @param filmFps           film rate, frames/s; > 0, at most 240
 * @returns time, s; same sign as the frames
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example framesSeconds(18, 24) // 0.75
 */
export function framesSeconds(separationFrames: number, filmFps: number): number {
  requireInterval('separationFrames', separationFrames, FRAMES);
  return separationFrames / requireInterval('filmFps', filmFps, FPS);
}

/**
 * How late the sound comes after its picture, for a track read by the projector's own head or read
 * beside the frame in the gate.
 *
 * Model: at the projector's head the threading path makes up for the separation, and a lower loop
 * that is too long by k frames makes the sound late by k frames. Beside the frame in the gate lies
 * the sound of a picture that comes `separation` frames later, so the sound is early by that much.
 * Exact.
 *
 * @param separationFrames  frames by which the sound precedes its picture; 0–1000
 * @param loopErrorFrames   frames by which the path from gate to head is too long (negative: too
 * short); −100 to 100
 * @param isReadBesideFrame true when the track was taken beside the frame in the gate
 * @returns frames by which the sound is late (negative: early)
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source common practice, no source
 * @example soundLateFrames(26, 2, false) // 2
 */
export function soundLateFrames(
  separationFrames: number,
  loopErrorFrames: number,
  isReadBesideFrame: boolean,
): number {
  requireInterval('separationFrames', separationFrames, { minimum: 0, maximum: 1000 });
  requireInterval('loopErrorFrames', loopErrorFrames, { minimum: -100, maximum: 100 });
  return isReadBesideFrame ? -separationFrames : loopErrorFrames;
}
