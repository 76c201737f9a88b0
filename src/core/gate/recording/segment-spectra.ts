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

/** Sums of the bands at one frequency. */
interface BandSums {
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
}

interface Complex {
  readonly real: number;
  readonly imaginary: number;
}

/** Lines that are looked for together at most, and their cosines and sines. */
const MOST_COLUMNS = 4;

const NO_LINE: LightLine = { film: 0, lamp: 0 };

/** Squares that columns explain, from their products among each other and with the values. */
function explainedSquares(gram: Float64Array, right: Float64Array, size: number): number {
  let explained = 0;
  for (let row = 0; row < size; row += 1) {
    const at = row * MOST_COLUMNS;
    let value = right[row] ?? 0;
    for (let column = 0; column <= row; column += 1) {
      let sum = gram[at + column] ?? 0;
      for (let k = 0; k < column; k += 1) {
        sum -= (gram[at + k] ?? 0) * (gram[column * MOST_COLUMNS + k] ?? 0);
      }
      if (column === row) {
        const root = Math.sqrt(Math.max(sum, 1e-12));
        gram[at + row] = root;
        value /= root;
      } else {
        const factor = sum / (gram[column * MOST_COLUMNS + column] ?? 1);
        gram[at + column] = factor;
        value -= factor * (right[column] ?? 0);
      }
    }
    right[row] = value;
    explained += value * value;
  }
  return explained;
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
  readonly #frameSums: (Complex | undefined)[];
  readonly #gram = new Float64Array(MOST_COLUMNS * MOST_COLUMNS);
  readonly #right = new Float64Array(MOST_COLUMNS);

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
    this.#frameSums = new Array<Complex | undefined>(count * frequencies).fill(undefined);
    this.#sums = new Array<BandSums | undefined>(count * (frequencies / 2 + 1)).fill(undefined);
  }

  /**
   * Share of the change of light in a piece that lines at their true rates explain together, 0–1, if the
   * rows are read in a given time. Lines that look alike to the camera share what they explain.
   */
  linesShare(
    index: number,
    lines: readonly LightLine[],
    filmFps: number,
    lampHz: number,
    readoutSeconds: number,
  ): number {
    const segment = this.segments[index];
    if (segment === undefined || segment.squares === 0) return 0;
    const size = 2 * lines.length;
    const gram = this.#gram;
    const right = this.#right;
    const bandTurns = readoutSeconds / BAND_COUNT;
    for (let row = 0; row < lines.length; row += 1) {
      const hz = lineHz(lines[row] ?? NO_LINE, filmFps, lampHz);
      const turn = this.#turnOf(hz);
      this.#project(index, segment, turn, hz * bandTurns, 2 * row);
      for (let column = 0; column <= row; column += 1) {
        const otherHz = lineHz(lines[column] ?? NO_LINE, filmFps, lampHz);
        const other = this.#turnOf(otherHz);
        const apart = this.#overlap(index, segment, turn - other, (hz - otherHz) * bandTurns);
        const differenceReal = apart.real * (row === column ? RIDGE : 1);
        const differenceImaginary = apart.imaginary;
        const { real, imaginary } = this.#overlap(
          index,
          segment,
          turn + other,
          (hz + otherHz) * bandTurns,
        );
        const at = 2 * row * MOST_COLUMNS + 2 * column;
        gram[at] = differenceReal + real;
        gram[at + 1] = differenceImaginary - imaginary;
        gram[at + MOST_COLUMNS] = -differenceImaginary - imaginary;
        gram[at + MOST_COLUMNS + 1] = differenceReal - real;
      }
    }
    // Every entry of the matrix was left doubled.
    const explained = 2 * explainedSquares(gram, right, size);
    return Math.min(1, Math.max(0, explained / segment.squares));
  }

  /** A rate as a whole number of frequency steps, between 0 and the camera rate. */
  #turnOf(hz: number): number {
    const turns = hz / this.cameraFps;
    return Math.round((turns - Math.floor(turns)) * this.#frequencies) % this.#frequencies;
  }

  /** What the samples have in common with the cosine and the sine of one line. */
  #project(
    index: number,
    segment: Segment,
    turn: number,
    turnsPerBand: number,
    place: number,
  ): void {
    const isMirrored = turn > this.#frequencies / 2;
    const sign = isMirrored ? -1 : 1;
    const sums = this.#bandSums(index, segment, isMirrored ? this.#frequencies - turn : turn);
    const angle = -2 * Math.PI * turnsPerBand;
    const stepReal = Math.cos(angle);
    const stepImaginary = Math.sin(angle);
    let turnReal = 1;
    let turnImaginary = 0;
    let sumReal = 0;
    let sumImaginary = 0;
    for (let band = 0; band < BAND_COUNT; band += 1) {
      const x = sums.real[band] ?? 0;
      const y = sign * (sums.imaginary[band] ?? 0);
      sumReal += x * turnReal - y * turnImaginary;
      sumImaginary += x * turnImaginary + y * turnReal;
      const next = turnReal * stepReal - turnImaginary * stepImaginary;
      turnImaginary = turnReal * stepImaginary + turnImaginary * stepReal;
      turnReal = next;
    }
    this.#right[place] = sumReal;
    this.#right[place + 1] = -sumImaginary;
  }

  /** Sum over all samples of a piece of a unit vector that turns so far a frame and a band. */
  #overlap(index: number, segment: Segment, turns: number, turnsPerBand: number): Complex {
    const frequency = (turns + this.#frequencies) % this.#frequencies;
    const frames = this.#frameSum(index, segment, frequency);
    // Evenly turned vectors add up to a vector in their middle direction.
    const half = Math.PI * turnsPerBand;
    const single = Math.sin(half);
    if (Math.abs(single) < 1e-9) {
      return { real: BAND_COUNT * frames.real, imaginary: BAND_COUNT * frames.imaginary };
    }
    const length = Math.sin(half * BAND_COUNT) / single;
    const angle = -half * (BAND_COUNT - 1);
    const real = length * Math.cos(angle);
    const imaginary = length * Math.sin(angle);
    return {
      real: frames.real * real - frames.imaginary * imaginary,
      imaginary: frames.real * imaginary + frames.imaginary * real,
    };
  }

  #frameSum(index: number, segment: Segment, frequency: number): Complex {
    const key = index * this.#frequencies + frequency;
    const known = this.#frameSums[key];
    if (known !== undefined) return known;
    const { frameNumbers } = this.#samples;
    let real = 0;
    let imaginary = 0;
    for (let at = 0; at < segment.frames.length; at += 1) {
      const share = segment.shares[at] ?? 0;
      const turn = (frequency * (frameNumbers[segment.frames[at] ?? 0] ?? 0)) % this.#frequencies;
      real += share * (this.#cosines[turn] ?? 0);
      imaginary -= share * (this.#sines[turn] ?? 0);
    }
    const sum = { real, imaginary };
    this.#frameSums[key] = sum;
    return sum;
  }

  #bandSums(index: number, segment: Segment, frequency: number): BandSums {
    const key = index * (this.#frequencies / 2 + 1) + frequency;
    const known = this.#sums[key];
    if (known !== undefined) return known;
    const { changes, frameNumbers } = this.#samples;
    const real = new Float64Array(BAND_COUNT);
    const imaginary = new Float64Array(BAND_COUNT);
    for (let at = 0; at < segment.frames.length; at += 1) {
      const frame = segment.frames[at] ?? 0;
      const share = segment.shares[at] ?? 0;
      const turn = (frequency * (frameNumbers[frame] ?? 0)) % this.#frequencies;
      const cosine = share * (this.#cosines[turn] ?? 0);
      const sine = -share * (this.#sines[turn] ?? 0);
      const from = frame * BAND_COUNT;
      for (let band = 0; band < BAND_COUNT; band += 1) {
        const change = changes[from + band] ?? 0;
        real[band] = (real[band] ?? 0) + cosine * change;
        imaginary[band] = (imaginary[band] ?? 0) + sine * change;
      }
    }
    const sums = { real, imaginary };
    this.#sums[key] = sums;
    return sums;
  }
}

/** Keeps the sum finite where cosine and sine look alike to the camera. */
const RIDGE = 1.02;

function makeSegment(samples: GateSamples, centreSeconds: number, half: number): Segment {
  const frames: number[] = [];
  const shares: number[] = [];
  let weight = 0;
  let squares = 0;
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
