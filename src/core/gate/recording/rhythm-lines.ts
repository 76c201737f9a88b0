/** One multiple of a rhythm in a row of values, piece by piece. */
export interface RhythmLine {
  /** Turns of this line in one turn of the rhythm. */
  readonly multiple: number;
  /** Cosine and sine part in each piece. */
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
  /** Power of the line, and beside it, summed over the pieces. */
  readonly power: number;
  readonly besidePower: number;
}

/** How far beside a line the noise is measured, turns. */
const BESIDE = 0.3;

interface Parts {
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
  readonly power: number;
}

function partsAt(
  values: Float64Array,
  turns: Float64Array,
  pieces: number,
  multiple: number,
): Parts {
  const real = new Float64Array(pieces);
  const imaginary = new Float64Array(pieces);
  let power = 0;
  const length = Math.floor(values.length / pieces);
  for (let piece = 0; piece < pieces; piece += 1) {
    let r = 0;
    let i = 0;
    for (let at = piece * length; at < (piece + 1) * length; at += 1) {
      const angle = 2 * Math.PI * multiple * (turns[at] ?? 0);
      r += (values[at] ?? 0) * Math.cos(angle);
      i -= (values[at] ?? 0) * Math.sin(angle);
    }
    real[piece] = r;
    imaginary[piece] = i;
    power += r * r + i * i;
  }
  return { real, imaginary, power };
}

/**
 * A multiple of a rhythm as a row of values holds it, with the noise beside it.
 *
 * @param values    the row
 * @param turns     turns of the rhythm gone by at each value
 * @param pieces    pieces of equal length that the row is cut into
 * @param multiple  turns of the line in one turn of the rhythm
 * @returns the line
 * @source arithmetic
 */
export function rhythmLine(
  values: Float64Array,
  turns: Float64Array,
  pieces: number,
  multiple: number,
): RhythmLine {
  const own = partsAt(values, turns, pieces, multiple);
  const beside = [multiple - BESIDE, multiple + BESIDE].map(
    (place) => partsAt(values, turns, pieces, place).power,
  );
  return { multiple, ...own, besidePower: ((beside[0] ?? 0) + (beside[1] ?? 0)) / 2 };
}

/** Whether a line stands out of the noise beside it. */
export function standsOut({ power, besidePower, real }: RhythmLine): boolean {
  return power > (1 + 4 / Math.sqrt(real.length)) * besidePower;
}

/** Whether lines together are louder in a piece than the noise beside them is on average. */
export function isHeardIn(lines: readonly RhythmLine[], piece: number): boolean {
  let own = 0;
  let beside = 0;
  for (const { real, imaginary, besidePower } of lines) {
    own += (real[piece] ?? 0) ** 2 + (imaginary[piece] ?? 0) ** 2;
    beside += besidePower / real.length;
  }
  return own > beside;
}

/** Places in a turn that are tried for the phase of a piece. */
const PLACES = 64;
/** Rounds in which phases and the common shape of the rhythm are found by turns. */
const ROUNDS = 3;

/**
 * How far a rhythm is ahead of the turns it was followed by, piece by piece: the shift that brings each
 * piece nearest to the shape that all pieces share.
 *
 * @param lines  lines that stand out
 * @param span   turns within which the shift is looked for, around that of the piece before
 * @returns shift of each piece, turns
 * @source arithmetic
 */
export function rhythmShifts(lines: readonly RhythmLine[], span: number): Float64Array {
  const pieces = lines[0]?.real.length ?? 0;
  const powerOf = (piece: number): number =>
    lines.reduce(
      (sum, { real, imaginary }) => sum + (real[piece] ?? 0) ** 2 + (imaginary[piece] ?? 0) ** 2,
      0,
    );
  let strongest = 0;
  for (let piece = 1; piece < pieces; piece += 1)
    if (powerOf(piece) > powerOf(strongest)) strongest = piece;
  let shapes = lines.map(
    ({ real, imaginary }) => [real[strongest] ?? 0, imaginary[strongest] ?? 0] as const,
  );
  let shifts = new Float64Array(pieces);
  for (let round = 0; round < ROUNDS; round += 1) {
    const found = new Float64Array(pieces);
    const fit = (piece: number, shift: number): number => {
      let sum = 0;
      for (const [index, { multiple, real, imaginary }] of lines.entries()) {
        const [shapeReal, shapeImaginary] = shapes[index] ?? [0, 0];
        const angle = -2 * Math.PI * multiple * shift;
        const r = real[piece] ?? 0;
        const i = imaginary[piece] ?? 0;
        const cosine = Math.cos(angle);
        const sine = Math.sin(angle);
        sum += (r * cosine - i * sine) * shapeReal + (r * sine + i * cosine) * shapeImaginary;
      }
      return sum;
    };
    const follow = (piece: number, near: number): number => {
      let best = near;
      let most = -Infinity;
      for (let place = -PLACES / 2; place < PLACES / 2; place += 1) {
        const shift = near + (place * span) / PLACES;
        const value = fit(piece, shift);
        if (value > most) [most, best] = [value, shift];
      }
      const step = span / PLACES;
      const before = fit(piece, best - step);
      const after = fit(piece, best + step);
      const bend = before - 2 * most + after;
      return bend < 0 ? best + (0.5 * step * (before - after)) / bend : best;
    };
    // Outwards from the piece that tells most.
    found[strongest] = follow(strongest, shifts[strongest] ?? 0);
    for (let piece = strongest + 1; piece < pieces; piece += 1)
      found[piece] = follow(piece, found[piece - 1] ?? 0);
    for (let piece = strongest - 1; piece >= 0; piece -= 1)
      found[piece] = follow(piece, found[piece + 1] ?? 0);
    shifts = found;
    shapes = lines.map(({ multiple, real, imaginary }) => {
      let r = 0;
      let i = 0;
      for (let piece = 0; piece < pieces; piece += 1) {
        const angle = -2 * Math.PI * multiple * (shifts[piece] ?? 0);
        r += (real[piece] ?? 0) * Math.cos(angle) - (imaginary[piece] ?? 0) * Math.sin(angle);
        i += (real[piece] ?? 0) * Math.sin(angle) + (imaginary[piece] ?? 0) * Math.cos(angle);
      }
      return [r, i] as const;
    });
  }
  return shifts;
}
