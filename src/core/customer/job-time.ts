import { requireInterval } from '../../quantity/errors.ts';

/** What a job is made of. */
export interface JobParts {
  /** Reels on the table; whole, 1–100000. */
  readonly reelCount: number;
  /** Film frames on one reel; > 0. */
  readonly framesPerReel: number;
  /** Frames that the machine takes in a second while it runs; > 0. */
  readonly framesPerSecond: number;
  /** Inspection, cleaning, threading and rewinding of one reel, s; ≥ 0. */
  readonly handlingSeconds: number;
  /** Work on the file of one reel after the run, s; ≥ 0. */
  readonly afterWorkSeconds: number;
  /** Share of the reels that has to be run a second time, %; 0–100. */
  readonly repeatPercent: number;
}

/** Time that a job takes. */
export interface JobTime {
  /** The machine runs once over one reel, s. */
  readonly runSeconds: number;
  /** Handling, run and after-work of one reel, without repeats, s. */
  readonly reelSeconds: number;
  /** The whole job with repeats, s. */
  readonly totalSeconds: number;
  /** Part of it in which nobody needs to do anything but watch, s. */
  readonly watchSeconds: number;
}

/**
 * Time of a job: handling, run and after-work of every reel, and the repeats.
 *
 * Model: reels × (handling + frames ÷ rate) × (1 + repeats) + reels × after-work. A repeat costs
 * handling and run again, not the after-work. Exact for equal reels.
 *
 * @param parts  what the job is made of
 * @returns times, s
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source common practice, no source
 */
export function jobTime(parts: JobParts): JobTime {
  const { reelCount, framesPerReel, framesPerSecond, repeatPercent } = parts;
  requireInterval('reelCount', reelCount, { minimum: 1, maximum: 100_000, whole: true });
  requireInterval('framesPerReel', framesPerReel, { above: 0 });
  requireInterval('framesPerSecond', framesPerSecond, { above: 0 });
  requireInterval('repeatPercent', repeatPercent, { minimum: 0, maximum: 100, unit: '%' });
  const handling = requireInterval('handlingSeconds', parts.handlingSeconds, { minimum: 0 });
  const afterWork = requireInterval('afterWorkSeconds', parts.afterWorkSeconds, { minimum: 0 });
  const runSeconds = framesPerReel / framesPerSecond;
  const runs = reelCount * (1 + repeatPercent / 100);
  return {
    runSeconds,
    reelSeconds: handling + runSeconds + afterWork,
    totalSeconds: runs * (handling + runSeconds) + reelCount * afterWork,
    watchSeconds: runs * runSeconds,
  };
}

/**
 * Working days in a stretch of work, begun days counted whole.
 *
 * Model: ⌈time ÷ hours a day⌉.
 *
 * @param seconds      work, s; ≥ 0
 * @param hoursPerDay  hours worked in a day; > 0, at most 24
 * @returns days; whole
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example workingDays(90000, 5) // 5
 */
export function workingDays(seconds: number, hoursPerDay: number): number {
  requireInterval('seconds', seconds, { minimum: 0 });
  requireInterval('hoursPerDay', hoursPerDay, { above: 0, maximum: 24, unit: 'h' });
  return Math.ceil((seconds / (hoursPerDay * 3600)) * (1 - 1e-12));
}
