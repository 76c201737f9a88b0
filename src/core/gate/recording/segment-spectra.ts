import { BAND_COUNT } from '../band-light.ts';
import type { GateSamples } from './gate-samples.ts';
import { lineHz, type LightLine } from './light-lines.ts';

/** Pieces of a clip and the frequencies looked at in each. */
export interface SegmentPlan {
  readonly lengthSeconds: number;
  readonly spacingSeconds: number;
  readonly spacingHz: number;
}

/** Short pieces follow a motor that wanders; long ones part slow beats and hear weak lines. */
export const SHORT_SEGMENTS: SegmentPlan = {
  lengthSeconds: 1.2,
  spacingSeconds: 0.5,
  spacingHz: 0.2,
};
export const LONG_SEGMENTS: SegmentPlan = { lengthSeconds: 4, spacingSeconds: 1, spacingHz: 0.08 };

/** One piece of a clip: its frames with their weights. */
interface Segment {
  readonly frames: Int32Array;
  readonly shares: Float64Array;
  /** Weighted number of samples, and sum of their squares. */
  readonly weight: number;
  readonly squares: number;
}

/** Sums of the bands at one frequency, and of the weights at twice it. */
interface BandSums {
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
  readonly doubleReal: number;
  readonly doubleImaginary: number;
}

/**
 * The spectrum of each band in pieces of the clip, summed when it is asked for. Every frequency above
 * half the camera rate is one below it by another name; the delay from band to band tells which is meant.
 */
export class SegmentSpectra {
  readonly plan: SegmentPlan;
  readonly cameraFps: number;
  readonly segments: readonly Segment[];
  readonly #samples: GateSamples;
  readonly #frequencies: number;
  readonly #cosines: Float64Array;
  readonly #sines: Float64Array;
  readonly #sums: (BandSums | undefined)[];

  constructor(samples: GateSamples, plan: SegmentPlan) {
    this.plan = plan;
    this.cameraFps = samples.cameraFps;
    this.#samples = samples;
    const frequencies = 2 * Math.ceil(samples.cameraFps / plan.spacingHz / 2);
    const angles = Float64Array.from(
      { length: frequencies },
      (_, index) => (2 * Math.PI * index) / frequencies,
    );
    this.#frequencies = frequencies;
    this.#cosines = angles.map((angle) => Math.cos(angle));
    this.#sines = angles.map((angle) => Math.sin(angle));
    const count = Math.floor(samples.durationSeconds / plan.spacingSeconds) + 1;
    this.segments = Array.from({ length: count }, (_, index) =>
      makeSegment(samples, index * plan.spacingSeconds, plan.lengthSeconds / 2),
    );
    this.#sums = new Array<BandSums | undefined>(count * (frequencies / 2 + 1)).fill(undefined);
  }

  /**
   * Share of the change of light in a piece that one line at its true rate explains, 0–1, if the rows
   * are read in a given time.
   */
  lineShare(
    index: number,
    line: LightLine,
    filmFps: number,
    lampHz: number,
    readoutSeconds: number,
  ): number {
    const segment = this.segments[index];
    if (segment === undefined || segment.squares === 0) return 0;
    const hz = lineHz(line, filmFps, lampHz);
    const turns = hz / this.cameraFps;
    const within = Math.round((turns - Math.floor(turns)) * this.#frequencies) % this.#frequencies;
    const isMirrored = within > this.#frequencies / 2;
    const sign = isMirrored ? -1 : 1;
    const sums = this.#bandSums(index, segment, isMirrored ? this.#frequencies - within : within);
    const angle = (-2 * Math.PI * hz * readoutSeconds) / BAND_COUNT;
    const [stepReal, stepImaginary] = [Math.cos(angle), Math.sin(angle)];
    let [turnReal, turnImaginary] = [1, 0];
    let [sumReal, sumImaginary, twiceReal, twiceImaginary] = [0, 0, 0, 0];
    for (let band = 0; band < BAND_COUNT; band += 1) {
      const x = sums.real[band] ?? 0;
      const y = sign * (sums.imaginary[band] ?? 0);
      sumReal += x * turnReal - y * turnImaginary;
      sumImaginary += x * turnImaginary + y * turnReal;
      twiceReal += turnReal * turnReal - turnImaginary * turnImaginary;
      twiceImaginary += 2 * turnReal * turnImaginary;
      const next = turnReal * stepReal - turnImaginary * stepImaginary;
      turnImaginary = turnReal * stepImaginary + turnImaginary * stepReal;
      turnReal = next;
    }
    // A line is a cosine and a sine; where the camera hardly parts the two they are taken together.
    const [x, y] = [sums.doubleReal, sign * sums.doubleImaginary];
    const bothReal = x * twiceReal - y * twiceImaginary;
    const bothImaginary = x * twiceImaginary + y * twiceReal;
    const weight = segment.weight * RIDGE;
    const squareReal = sumReal * sumReal - sumImaginary * sumImaginary;
    const squareImaginary = 2 * sumReal * sumImaginary;
    const explained =
      (2 *
        (weight * (sumReal * sumReal + sumImaginary * sumImaginary) -
          (squareReal * bothReal + squareImaginary * bothImaginary))) /
      (weight * weight - bothReal * bothReal - bothImaginary * bothImaginary);
    return Math.min(1, Math.max(0, explained / segment.squares));
  }

  #bandSums(index: number, segment: Segment, frequency: number): BandSums {
    const key = index * (this.#frequencies / 2 + 1) + frequency;
    const known = this.#sums[key];
    if (known !== undefined) return known;
    const { changes, frameNumbers } = this.#samples;
    const real = new Float64Array(BAND_COUNT);
    const imaginary = new Float64Array(BAND_COUNT);
    let [doubleReal, doubleImaginary] = [0, 0];
    for (let at = 0; at < segment.frames.length; at += 1) {
      const frame = segment.frames[at] ?? 0;
      const share = segment.shares[at] ?? 0;
      const turn = (frequency * (frameNumbers[frame] ?? 0)) % this.#frequencies;
      const twice = (2 * turn) % this.#frequencies;
      doubleReal += share * (this.#cosines[twice] ?? 0);
      doubleImaginary -= share * (this.#sines[twice] ?? 0);
      const cosine = share * (this.#cosines[turn] ?? 0);
      const sine = -share * (this.#sines[turn] ?? 0);
      const from = frame * BAND_COUNT;
      for (let band = 0; band < BAND_COUNT; band += 1) {
        const change = changes[from + band] ?? 0;
        real[band] = (real[band] ?? 0) + cosine * change;
        imaginary[band] = (imaginary[band] ?? 0) + sine * change;
      }
    }
    const sums = { real, imaginary, doubleReal, doubleImaginary };
    this.#sums[key] = sums;
    return sums;
  }
}

/** Keeps the sum finite where cosine and sine look alike to the camera. */
const RIDGE = 1.02;

function makeSegment(samples: GateSamples, centreSeconds: number, half: number): Segment {
  const frames: number[] = [];
  const shares: number[] = [];
  let [weight, squares] = [0, 0];
  for (let frame = 0; frame < samples.count; frame += 1) {
    const distance = (samples.frameSeconds[frame] ?? 0) - centreSeconds;
    if (Math.abs(distance) >= half) continue;
    const share = 0.5 + 0.5 * Math.cos((Math.PI * distance) / half);
    frames.push(frame);
    shares.push(share);
    weight += share * BAND_COUNT;
    for (let band = 0; band < BAND_COUNT; band += 1) {
      const change = samples.changes[frame * BAND_COUNT + band] ?? 0;
      squares += share * change * change;
    }
  }
  return {
    frames: Int32Array.from(frames),
    shares: Float64Array.from(shares),
    weight,
    squares,
  };
}
