import type Fraction from 'fraction.js';
import { OutOfRangeError, requireInterval } from '../../../quantity/errors.ts';
import type { CropRectangle } from '../../gate/picture-crop.ts';
import { commandRate } from '../command-rate.ts';
import { keepRulesOf, type KeepReel } from '../keep-ties.ts';
import type { KeepRule } from '../keep-list.ts';
import type { RecordedPicture } from '../recorded-picture.ts';
import { requireFileName } from './shell-quoting.ts';

/**
 * Which camera frames are kept: by ties counted in the recording, by its measured pictures, or by the
 * filter file of a measured list that lies beside the recording.
 */
export type ScriptKeep =
  | { readonly by: 'ties'; readonly reel: KeepReel }
  | {
      readonly by: 'measured';
      /** Camera frames, counted from 0; whole, ascending. */
      readonly cameraFrames: readonly number[];
    }
  | {
      readonly by: 'file';
      /** Film frames that the file has to name. */
      readonly filmFrames: number;
    };

/** The sound of a reel, as it was taken. */
export interface ScriptSound {
  readonly fileName: string;
  /** Film rate while it was taken, frames/s. */
  readonly takenFps: Fraction;
  /** Sample rate of the file, Hz. */
  readonly sampleRateHz: number;
  /**
   * Time by which the sound, once at its right speed, comes after its picture in the master, s;
   * negative where it comes before.
   */
  readonly lateSeconds: number;
}

/** What a script has to know of one reel. */
export interface ReelScriptEntries {
  /** What the reel is called, in any writing. */
  readonly reelName: string;
  readonly recordingName: string;
  /** Rate of the recording, frames/s; 0.5–1000. */
  readonly cameraFps: Fraction;
  /** Native rate, frames/s; 0.5–1000. */
  readonly nativeFps: Fraction;
  /** Rate of the copy to watch, frames/s; not below the native rate. */
  readonly deliveryFps: Fraction;
  readonly keep: ScriptKeep;
  readonly recorded: RecordedPicture;
  /** Part that the copy to watch shows, px in the turned picture; all of it when undefined. */
  readonly crop: CropRectangle | undefined;
  /** Undefined for a silent reel. */
  readonly sound: ScriptSound | undefined;
}

/** Which frames the script picks, and how many there must be. */
export interface PlannedKeep {
  /** Undefined where no rule gives the list. */
  readonly rules: readonly KeepRule[] | undefined;
  readonly filmFrames: number;
  /** First and last camera frame that are taken; undefined where only the file beside the script knows. */
  readonly ends: { readonly first: number; readonly last: number } | undefined;
}

/**
 * How many frames are picked and between which.
 *
 * @throws {OutOfRangeError} names `cameraFrames` for an empty list, `cameraFps` for a camera slower
 * than the film
 */
export function plannedKeep({ keep, cameraFps }: ReelScriptEntries): PlannedKeep {
  if (keep.by === 'file') {
    const { filmFrames } = keep;
    requireInterval('filmFrames', filmFrames, { minimum: 1, maximum: 1e6, whole: true });
    return { rules: undefined, filmFrames, ends: undefined };
  }
  if (keep.by === 'measured') {
    const { cameraFrames } = keep;
    const [first, last] = [cameraFrames[0], cameraFrames.at(-1)];
    if (first === undefined || last === undefined) {
      throw new OutOfRangeError('cameraFrames', 'none', 'at least one');
    }
    return {
      rules: undefined,
      filmFrames: cameraFrames.length,
      ends: { first, last },
    };
  }
  const rules = keepRulesOf(keep.reel);
  if (rules === undefined) {
    throw new OutOfRangeError('cameraFps', cameraFps.valueOf(), 'a camera faster than the film');
  }
  return {
    rules,
    filmFrames: keep.reel.filmFrames,
    ends: {
      first: Math.min(...rules.map(({ first }) => first)),
      last: Math.max(...rules.map(({ last }) => last)),
    },
  };
}

/**
 * Checks what no command of the chain checks by itself.
 *
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 */
export function requireScriptEntries(entries: ReelScriptEntries): void {
  requireFileName('recordingName', entries.recordingName);
  commandRate('cameraFps', entries.cameraFps);
  commandRate('nativeFps', entries.nativeFps);
  // A slower copy would leave film frames out.
  requireInterval('deliveryFps', entries.deliveryFps.valueOf(), {
    minimum: entries.nativeFps.valueOf(),
    unit: 'frames/s',
  });
  if (entries.sound !== undefined) requireFileName('soundName', entries.sound.fileName);
}
