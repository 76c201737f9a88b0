import { jobTime, workingDays, type JobTime } from '../../../core/customer/job-time.ts';
import { framesOnLength } from '../../../core/reel/film-length.ts';
import { OutOfRangeError } from '../../../quantity/errors.ts';
import type { Values } from './inputs.ts';

/** A job filmed as the film runs, and by a machine that stops on every frame. */
export interface BothWays {
  readonly realTime: JobTime;
  readonly single: JobTime;
}

function bothWays(values: Values, framesPerReel: number): BothWays {
  const { reelCount, handlingSeconds, afterWorkSeconds, repeatPercent } = values;
  const parts = { reelCount, framesPerReel, handlingSeconds, afterWorkSeconds, repeatPercent };
  return {
    realTime: jobTime({ ...parts, framesPerSecond: values.filmFps }),
    single: jobTime({ ...parts, framesPerSecond: values.singleFps }),
  };
}

/**
 * Frames that were counted: whole ones, however they were typed.
 *
 * @throws {OutOfRangeError} for `framesPerReel`, where a part of a frame is left over
 */
function countedFrames(frames: number): number {
  if (!Number.isInteger(frames)) {
    throw new OutOfRangeError(
      'framesPerReel',
      frames,
      'whole film frames, because nobody counts a part of one',
    );
  }
  return frames;
}

/**
 * The reader's job in both ways, and for the drawing the same with very short and long reels.
 *
 * @throws {OutOfRangeError} for `framesPerReel`, where a part of a frame is left over
 */
export function jobTimes(values: Values) {
  const { framesPerReel, gauge, lengthMetres, hoursPerDay } = values;
  // Counted frames come before those on the length of the reel.
  const frames =
    framesPerReel === undefined
      ? framesOnLength(lengthMetres * 1000, gauge, 'frames-per-foot')
      : countedFrames(framesPerReel);
  const own = bothWays(values, frames);
  return {
    frames,
    own,
    days: workingDays(own.realTime.totalSeconds, hoursPerDay),
    singleDays: workingDays(own.single.totalSeconds, hoursPerDay),
    ends: [1, 2 * frames].map((count) => ({ frames: count, ...bothWays(values, count) })),
  };
}

export type JobTimes = ReturnType<typeof jobTimes>;
