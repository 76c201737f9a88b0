import { OutOfRangeError } from '../../../quantity/errors.ts';
import { offsetCommands } from '../../../core/file/sound-commands.ts';
import {
  findSoundSystem,
  framesMillimetres,
  framesSeconds,
  soundLateFrames,
  type SoundSystem,
} from '../../../core/file/sound-separation.ts';
import type { OffsetEntries } from './inputs.ts';

/** The system chosen, and the separation typed or known; an offset found by eye does without. */
function separationOf({ system, separationFrames: typed, taken }: OffsetEntries): {
  readonly frames: number | undefined;
  readonly known: SoundSystem | undefined;
} {
  const known = system === 'other' ? undefined : findSoundSystem(system);
  const frames = typed ?? known?.framesAhead;
  if (frames === undefined && taken !== 'found') {
    throw new OutOfRangeError(
      'separationFrames',
      'nothing',
      'the separation in frames, such as 26',
    );
  }
  return { frames, known };
}

/** Film frames by which the sound is late, from threading or as it was found. */
function lateFramesOf(entries: OffsetEntries, separation = 0): number {
  if (entries.taken === 'found') {
    const late = entries.foundWay === 'early' ? -entries.foundFrames : entries.foundFrames;
    return (late / entries.deliveryFps) * entries.filmFps;
  }
  const isReadInGate = entries.taken === 'beside-frame';
  return soundLateFrames(separation, entries.loopErrorFrames, isReadInGate);
}

/** Separation on film and in time, how late the sound is and the commands that move it. */
export function findOffset(entries: OffsetEntries) {
  const { filmFps, deliveryFps, separationFrames, soundFile } = entries;
  const { frames, known } = separationOf(entries);
  const lateFrames = lateFramesOf(entries, frames);
  const lateSeconds = lateFrames / filmFps;
  return {
    /** Undefined for an offset found by eye on a system that is not known. */
    separationFrames: frames,
    /** How the separation is known; undefined for one that was typed. */
    status: separationFrames === undefined ? known?.status : undefined,
    /** Undefined for a system whose frame step is not known. */
    separationMillimetres:
      known === undefined || frames === undefined
        ? undefined
        : framesMillimetres(frames, known.stepMillimetres),
    separationSeconds: frames === undefined ? undefined : framesSeconds(frames, filmFps),
    frameSeconds: framesSeconds(1, filmFps),
    /** Negative where the sound comes early, here and below. */
    lateFrames,
    lateSeconds,
    timelineFrames: lateSeconds * deliveryFps,
    /** Undefined where nothing is to be moved. */
    commands: lateSeconds === 0 ? undefined : offsetCommands(soundFile, lateSeconds),
  };
}

export type OffsetFindings = ReturnType<typeof findOffset>;
