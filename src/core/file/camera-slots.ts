import { requireInterval } from '../../quantity/errors.ts';

/**
 * Camera frames on an even grid. A camera that drops a frame leaves its slot empty, and the film goes
 * on meanwhile; so film positions are counted in slots, not in frames.
 */
export interface CameraSlots {
  /** Camera rate, frames/s, from the times of the file. */
  readonly cameraFps: number;
  /** Slot of each camera frame; ascending, the first is 0. */
  readonly slotOfFrame: Int32Array;
  /** Slots from the first camera frame to the last, both counted. */
  readonly slots: number;
  /** Farthest that a time of the file lies from its slot, camera frames. */
  readonly worstMissFrames: number;
  /** Time of the first camera frame, s. */
  readonly firstSeconds: number;
}

/** Why the times of a file cannot be laid on an even grid, and where. */
export interface IrregularTimes {
  readonly irregularSeconds: number;
}

/** A time may miss its slot by this share of a frame: files round times to a millisecond. */
const LARGEST_MISS = 0.2;

function middleOf(values: Float64Array): number {
  return Float64Array.from(values).sort()[Math.floor(values.length / 2)] ?? 0;
}

/** Slots by counting steps from frame to frame, then the straight line that fits them best. */
function fittedSlots(
  frameSeconds: Float64Array,
  stepSeconds: number,
): { readonly slotOfFrame: Int32Array; readonly step: number; readonly first: number } {
  const count = frameSeconds.length;
  const slotOfFrame = new Int32Array(count);
  for (let frame = 1; frame < count; frame += 1) {
    const gap = (frameSeconds[frame] ?? 0) - (frameSeconds[frame - 1] ?? 0);
    slotOfFrame[frame] = (slotOfFrame[frame - 1] ?? 0) + Math.max(1, Math.round(gap / stepSeconds));
  }
  const meanSlot = slotOfFrame.reduce((sum, slot) => sum + slot, 0) / count;
  const meanSeconds = frameSeconds.reduce((sum, seconds) => sum + seconds, 0) / count;
  let both = 0;
  let squares = 0;
  for (let frame = 0; frame < count; frame += 1) {
    const away = (slotOfFrame[frame] ?? 0) - meanSlot;
    both += away * ((frameSeconds[frame] ?? 0) - meanSeconds);
    squares += away * away;
  }
  const step = both / squares;
  return { slotOfFrame, step, first: meanSeconds - step * meanSlot };
}

/**
 * Lays the frames of a recording on an even grid by the times of the file.
 *
 * Model: the middle one of the steps from frame to frame is the camera's; each gap is the nearest whole
 * number of steps; the rate is the slope of the straight line through all times.
 *
 * @param frameSeconds  presentation time of each camera frame, s; ascending, at least 3
 * @returns the slots; or the first time that lies more than a fifth of a frame beside its slot
 * @throws {RangeError} fewer than 3 frames
 * @source arithmetic
 */
export function cameraSlots(frameSeconds: Float64Array): CameraSlots | IrregularTimes {
  const count = frameSeconds.length;
  requireInterval('frames', count, { minimum: 3 });
  const gaps = new Float64Array(count - 1);
  for (let frame = 1; frame < count; frame += 1) {
    gaps[frame - 1] = (frameSeconds[frame] ?? 0) - (frameSeconds[frame - 1] ?? 0);
    if (!((gaps[frame - 1] ?? 0) > 0)) return { irregularSeconds: frameSeconds[frame] ?? 0 };
  }
  const { slotOfFrame, step, first } = fittedSlots(frameSeconds, middleOf(gaps));
  let worstMissFrames = 0;
  for (let frame = 0; frame < count; frame += 1) {
    const seconds = frameSeconds[frame] ?? 0;
    const miss = Math.abs((seconds - first) / step - (slotOfFrame[frame] ?? 0));
    if (!(miss <= LARGEST_MISS)) return { irregularSeconds: seconds };
    worstMissFrames = Math.max(worstMissFrames, miss);
  }
  return {
    cameraFps: 1 / step,
    slotOfFrame,
    slots: (slotOfFrame[count - 1] ?? 0) + 1,
    worstMissFrames,
    firstSeconds: first,
  };
}
