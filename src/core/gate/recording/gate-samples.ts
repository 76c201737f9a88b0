import { BAND_COUNT, type BandLight } from '../band-light.ts';
import type { FrameClock } from './frame-times.ts';

/** A recording of the gate as the sums want it: its changes only, on an even clock. */
export interface GateSamples {
  readonly count: number;
  readonly cameraFps: number;
  readonly frameNumbers: Int32Array;
  /** Start of each camera frame after the first, s. */
  readonly frameSeconds: Float64Array;
  /** From the first frame to the end of the last, s. */
  readonly durationSeconds: number;
  /**
   * Light ÷ mean of its band over the clip − 1, index frame × BAND_COUNT + band. What stands still in
   * the picture, such as uneven lighting, is gone.
   */
  readonly changes: Float64Array;
}

/** The changes of light of a recording; undefined when a band has no light. */
export function gateSamples(light: BandLight, clock: FrameClock): GateSamples | undefined {
  const count = light.frameSeconds.length;
  const changes = new Float64Array(count * BAND_COUNT);
  for (let band = 0; band < BAND_COUNT; band += 1) {
    let sum = 0;
    for (let at = band; at < changes.length; at += BAND_COUNT) sum += light.bands[at] ?? 0;
    const mean = sum / count;
    if (!(mean > 0)) return undefined;
    for (let at = band; at < changes.length; at += BAND_COUNT) {
      changes[at] = (light.bands[at] ?? 0) / mean - 1;
    }
  }
  const { cameraFps, frameNumbers } = clock;
  const frameSeconds = Float64Array.from(frameNumbers, (number) => number / cameraFps);
  const last = frameNumbers[count - 1] ?? 0;
  return {
    count,
    cameraFps,
    frameNumbers,
    frameSeconds,
    durationSeconds: (last + 1) / cameraFps,
    changes,
  };
}

/** Takes from every band its mean over the clip, in place. */
export function centreBands(values: Float64Array): Float64Array {
  const count = values.length / BAND_COUNT;
  for (let band = 0; band < BAND_COUNT; band += 1) {
    let sum = 0;
    for (let at = band; at < values.length; at += BAND_COUNT) sum += values[at] ?? 0;
    const mean = sum / count;
    for (let at = band; at < values.length; at += BAND_COUNT) {
      values[at] = (values[at] ?? 0) - mean;
    }
  }
  return values;
}

/** Every so many frames only: enough to compare guesses by. */
export function thinnedSamples(samples: GateSamples, every: number): GateSamples {
  const kept = Array.from(
    { length: Math.ceil(samples.count / every) },
    (_, index) => index * every,
  );
  const changes = new Float64Array(kept.length * BAND_COUNT);
  for (const [index, frame] of kept.entries()) {
    const from = frame * BAND_COUNT;
    changes.set(samples.changes.subarray(from, from + BAND_COUNT), index * BAND_COUNT);
  }
  return {
    ...samples,
    count: kept.length,
    frameNumbers: Int32Array.from(kept, (frame) => samples.frameNumbers[frame] ?? 0),
    frameSeconds: Float64Array.from(kept, (frame) => samples.frameSeconds[frame] ?? 0),
    changes,
  };
}
