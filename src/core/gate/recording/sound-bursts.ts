/** How the loudness of a sound comes and goes, without its slow changes. */
export interface SoundBursts {
  /** Values a second. */
  readonly valuesPerSecond: number;
  /** All bands of pitch together; mean about 0. */
  readonly all: Float64Array;
  /** Two witnesses: the even and the odd bands of pitch. */
  readonly witnesses: readonly [Float64Array, Float64Array];
}

const VALUES_PER_SECOND = 500;
/** Middles of the bands, Hz: above the hum, below the limit of a plain recording. */
const BAND_HERTZ = [550, 1150, 2300, 4400, 8500];
/** Resonance of the two filters of a band. */
const QUALITY = 1.1;
/** Loudness below this share of the usual is not taken further down. */
const LEAST_SHARE = 0.02;
/** Loudness is followed against its mean over so long, s: voices come and go more slowly. */
const MEAN_SECONDS = 0.2;
/** One loud moment counts for no more than so many deviations. */
const MOST_DEVIATIONS = 3;
/** Rates of the mains, Hz, and the multiples at which their hum comes and goes. */
const MAINS_HERTZ = [50, 60];
const HUM_MULTIPLES = [1, 2, 3, 4];
/** Hum is taken off piece by piece, for the mains are not quite steady, s. */
const HUM_SECONDS = 8;
/** The mains may be this much beside their rate, share, looked for in so many steps. */
const MAINS_REACH = 0.002;
const MAINS_STEPS = 10;

/** Mean square of a band of pitch in each short step of time (two band-pass filters in a row). */
function bandLoudness(
  samples: ArrayLike<number>,
  step: number,
  turnPerSample: number,
): Float64Array {
  const loudness = new Float64Array(Math.floor(samples.length / step));
  const alpha = Math.sin(turnPerSample) / (2 * QUALITY);
  const gain = alpha / (1 + alpha);
  const back = (2 * Math.cos(turnPerSample)) / (1 + alpha);
  const further = (1 - alpha) / (1 + alpha);
  let in1 = 0;
  let in2 = 0;
  let mid1 = 0;
  let mid2 = 0;
  let out1 = 0;
  let out2 = 0;
  for (let at = 0; at < loudness.length; at += 1) {
    let sum = 0;
    for (let sample = at * step; sample < (at + 1) * step; sample += 1) {
      const value = samples[sample] ?? 0;
      const mid = gain * (value - in2) + back * mid1 - further * mid2;
      const out = gain * (mid - mid2) + back * out1 - further * out2;
      in2 = in1;
      in1 = value;
      mid2 = mid1;
      mid1 = mid;
      out2 = out1;
      out1 = out;
      sum += out * out;
    }
    loudness[at] = sum / step;
  }
  return loudness;
}

function medianOf(values: Float64Array): number {
  return Float64Array.from(values).sort()[Math.floor(values.length / 2)] ?? 0;
}

/** Logarithm of the loudness, without what changes slowly, in deviations. */
function comingAndGoing(loudness: Float64Array, valuesPerSecond: number): Float64Array {
  const floor = LEAST_SHARE * medianOf(loudness) + 1e-14;
  const levels = loudness.map((value) => Math.log(value + floor));
  const reach = Math.round((MEAN_SECONDS * valuesPerSecond) / 2);
  const sums = new Float64Array(levels.length + 1);
  for (let at = 0; at < levels.length; at += 1) sums[at + 1] = (sums[at] ?? 0) + (levels[at] ?? 0);
  const changes = levels.map((level, at) => {
    const from = Math.max(0, at - reach);
    const to = Math.min(levels.length, at + reach + 1);
    return level - ((sums[to] ?? 0) - (sums[from] ?? 0)) / (to - from);
  });
  const square = changes.reduce((sum, change) => sum + change * change, 0) / changes.length;
  const spread = Math.sqrt(square) || 1;
  return changes.map((change) =>
    Math.max(-MOST_DEVIATIONS, Math.min(MOST_DEVIATIONS, change / spread)),
  );
}

/** Cosine and sine part of one frequency in a piece. */
function partAt(piece: Float64Array, turn: number): readonly [number, number] {
  let real = 0;
  let imaginary = 0;
  for (let at = 0; at < piece.length; at += 1) {
    real += (piece[at] ?? 0) * Math.cos(turn * at);
    imaginary += (piece[at] ?? 0) * Math.sin(turn * at);
  }
  return [(2 * real) / piece.length, (2 * imaginary) / piece.length];
}

/** Takes off what keeps time with the mains, at the rate that takes most, in place. */
function takeOffHum(changes: Float64Array, valuesPerSecond: number): void {
  const length = Math.round(HUM_SECONDS * valuesPerSecond);
  for (let from = 0; from < changes.length; from += length) {
    const piece = changes.subarray(from, Math.min(changes.length, from + length));
    for (const mains of MAINS_HERTZ) {
      let strongest = 0;
      let best: readonly (readonly [number, number, number])[] = [];
      for (let step = 0; step <= MAINS_STEPS; step += 1) {
        const share = 1 + MAINS_REACH * ((2 * step) / MAINS_STEPS - 1);
        const parts = HUM_MULTIPLES.map((multiple) => {
          const turn = (2 * Math.PI * mains * multiple * share) / valuesPerSecond;
          return [turn, ...partAt(piece, turn)] as const;
        });
        const power = parts.reduce(
          (sum, [, real, imaginary]) => sum + real ** 2 + imaginary ** 2,
          0,
        );
        if (power >= strongest) [strongest, best] = [power, parts];
      }
      for (const [turn, real, imaginary] of best)
        for (let at = 0; at < piece.length; at += 1)
          piece[at] =
            (piece[at] ?? 0) - real * Math.cos(turn * at) - imaginary * Math.sin(turn * at);
    }
  }
}

/**
 * How the loudness of a sound comes and goes, 500 times a second, in bands of pitch.
 *
 * Model: bands of about an octave from 550 Hz; the logarithm of their mean square, less its mean over
 * a fifth of a second, in deviations and never more than three; what keeps time with mains of 50 or
 * 60 Hz is taken off. A click is heard in every band at once, a voice or a tone in few.
 *
 * @param samples     sound of one channel, −1 to 1
 * @param sampleRate  samples/s
 * @returns the changes of all bands, and of even and odd bands as two witnesses
 * @source arithmetic
 */
export function soundBursts(samples: ArrayLike<number>, sampleRate: number): SoundBursts {
  const step = Math.max(1, Math.round(sampleRate / VALUES_PER_SECOND));
  const valuesPerSecond = sampleRate / step;
  const count = Math.floor(samples.length / step);
  const witnesses: [Float64Array, Float64Array] = [
    new Float64Array(count),
    new Float64Array(count),
  ];
  const bands = BAND_HERTZ.filter((hertz) => hertz < 0.35 * sampleRate);
  for (const [band, hertz] of bands.entries()) {
    const loudness = bandLoudness(samples, step, (2 * Math.PI * hertz) / sampleRate);
    const changes = comingAndGoing(loudness, valuesPerSecond);
    const into = band % 2 === 0 ? witnesses[0] : witnesses[1];
    for (let at = 0; at < count; at += 1) into[at] = (into[at] ?? 0) + (changes[at] ?? 0);
  }
  for (const witness of witnesses) takeOffHum(witness, valuesPerSecond);
  const all = witnesses[0].map((value, at) => value + (witnesses[1][at] ?? 0));
  return { valuesPerSecond, all, witnesses };
}
