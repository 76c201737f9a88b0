/** The clock of a recording: its camera rate, and which frame of that clock each picture is. */
export interface FrameClock {
  /** Camera rate, frames/s, from all the times together. */
  readonly cameraFps: number;
  /** Time of camera frame 0 on the file's clock, s. */
  readonly firstSeconds: number;
  /** Number of each picture on the clock, from 0; a gap skips the numbers that are missing. */
  readonly frameNumbers: Int32Array;
  /** Frames that the clock counts and the file does not hold. */
  readonly missingFrames: number;
}

/** Where the times of a file leave the clock. */
export interface IrregularTimes {
  /** The first picture that is off the clock, counted from 0. */
  readonly frame: number;
  readonly seconds: number;
}

/** A picture may lie so far off the clock, in camera frames: files round their times. */
const LARGEST_OFFSET = 0.15;

/** Pictures that lie farther off, at most, as a share; a file may round one time badly. */
const LARGEST_OFF_SHARE = 0.01;

/** Beyond this no rounding explains a picture, in camera frames. */
const HOPELESS_OFFSET = 0.3;

/**
 * Camera rate and gaps of a recording from the times of its pictures. Every sum on the recording needs
 * a clock that ticks evenly; times that are whole multiples of one frame are even with gaps.
 *
 * Model: one frame is the shortest step that pictures usually take; each time is rounded to whole
 * frames, and a straight line through times over numbers gives rate and start. Exact for even times;
 * rounded times average out.
 *
 * @param frameSeconds  presentation times, s, in order
 * @returns the clock; or the first picture off it; undefined for fewer than three pictures
 */
export function readFrameClock(
  frameSeconds: Float64Array,
): FrameClock | { readonly irregular: IrregularTimes } | undefined {
  const count = frameSeconds.length;
  if (count < 3) return undefined;
  const timeOf = (index: number): number => frameSeconds[index] ?? 0;
  const steps = Array.from({ length: count - 1 }, (_, index) => timeOf(index + 1) - timeOf(index));
  const backwards = steps.findIndex((step) => !(step > 0));
  if (backwards >= 0)
    return { irregular: { frame: backwards + 1, seconds: timeOf(backwards + 1) } };
  const ordered = [...steps].sort((a, b) => a - b);
  const shortest = ordered[Math.floor(ordered.length * 0.1)] ?? 0;
  // Rounded times make single steps too short or too long: the mean of those of about one frame holds.
  const single = ordered.filter((step) => step < 1.5 * shortest);
  let period = single.reduce((sum, step) => sum + step, 0) / single.length;

  const frameNumbers = new Int32Array(count);
  let start = timeOf(0);
  for (let round = 0; round < 3; round += 1) {
    // Numbers run on from picture to picture first, because the period is not yet known well.
    let [sum, sumNumber, sumTime, sumSquare, sumProduct] = [0, 0, 0, 0, 0];
    for (let index = 0; index < count; index += 1) {
      frameNumbers[index] =
        round === 0 && index > 0
          ? (frameNumbers[index - 1] ?? 0) +
            Math.max(1, Math.round((steps[index - 1] ?? 0) / period))
          : Math.round((timeOf(index) - start) / period);
      const number = frameNumbers[index] ?? 0;
      const time = timeOf(index) - timeOf(0);
      sum += 1;
      sumNumber += number;
      sumTime += time;
      sumSquare += number * number;
      sumProduct += number * time;
    }
    period = (sum * sumProduct - sumNumber * sumTime) / (sum * sumSquare - sumNumber ** 2);
    start = timeOf(0) + (sumTime - period * sumNumber) / sum;
  }

  let off = 0;
  let firstOff = -1;
  let isHopeless = false;
  for (let index = 0; index < count; index += 1) {
    const offset = Math.abs((timeOf(index) - start) / period - (frameNumbers[index] ?? 0));
    const isRepeat = index > 0 && frameNumbers[index] === frameNumbers[index - 1];
    if (offset <= LARGEST_OFFSET && !isRepeat) continue;
    off += 1;
    if (firstOff < 0) firstOff = index;
    if (offset > HOPELESS_OFFSET || isRepeat) isHopeless = true;
  }
  if (isHopeless || off > LARGEST_OFF_SHARE * count) {
    // The line runs through bad times too, so the place is looked for in the steps themselves.
    const usual = ordered[Math.floor(ordered.length / 2)] ?? period;
    const jump = steps.findIndex((step) => {
      const frames = step / usual;
      return Math.abs(frames - Math.max(1, Math.round(frames))) > LARGEST_OFFSET;
    });
    const frame = jump >= 0 ? jump + 1 : firstOff;
    return { irregular: { frame, seconds: timeOf(frame) } };
  }
  const first = frameNumbers[0] ?? 0;
  const numbers = frameNumbers.map((number) => number - first);
  const last = numbers[count - 1] ?? 0;
  return {
    cameraFps: 1 / period,
    firstSeconds: start + first * period,
    frameNumbers: numbers,
    missingFrames: last + 1 - count,
  };
}
