import { BAND_COUNT } from '../band-light.ts';
import { filmPhaseAt, KNOT_SECONDS, shiftedPhase } from './film-phase.ts';
import type { GateSamples } from './gate-samples.ts';
import type { LightLine } from './light-lines.ts';
import { bandDelay, type Motion } from './line-columns.ts';

/** Half the length of a piece whose phase is read, s, and the spacing of the pieces. */
const REACH_SECONDS = 0.5;

/** A motion in step with the light, and the line by which it was brought in step. */
export interface AlignedMotion {
  readonly motion: Motion;
  readonly line: LightLine | undefined;
}

/**
 * Brings the film position in step with the strongest line all along the clip: the phase of the line
 * is read piece by piece and followed from each piece to the next.
 */
export function alignPhase(
  samples: GateSamples,
  values: Float64Array,
  lines: readonly LightLine[],
  motion: Motion,
): AlignedMotion {
  const moving = lines.filter(({ film }) => film !== 0);
  const pieces = Math.max(2, Math.ceil(samples.durationSeconds / KNOT_SECONDS) + 1);
  const sums = moving.map(() => new Float64Array(2 * pieces));
  const { frameSeconds, durationSeconds } = samples;
  for (let frame = 0; frame < samples.count; frame += 1) {
    const time = frameSeconds[frame] ?? 0;
    const turned = moving.map(() => [0, 0] as [number, number]);
    for (let band = 0; band < BAND_COUNT; band += 1) {
      const value = values[frame * BAND_COUNT + band] ?? 0;
      const seconds = time + bandDelay(band) * motion.readoutSeconds;
      const film = filmPhaseAt(motion.phase, seconds);
      const lamp = motion.lampHz * (seconds - durationSeconds / 2);
      for (const [index, line] of moving.entries()) {
        const angle = 2 * Math.PI * (line.film * film + line.lamp * lamp);
        const sum = turned[index];
        if (sum === undefined) continue;
        sum[0] += value * Math.cos(angle);
        sum[1] -= value * Math.sin(angle);
      }
    }
    const firstPiece = Math.max(0, Math.ceil((time - REACH_SECONDS) / KNOT_SECONDS));
    const lastPiece = Math.min(pieces - 1, Math.floor((time + REACH_SECONDS) / KNOT_SECONDS));
    for (let piece = firstPiece; piece <= lastPiece; piece += 1) {
      const distance = (time - piece * KNOT_SECONDS) / REACH_SECONDS;
      const share = 0.5 + 0.5 * Math.cos(Math.PI * distance);
      for (const [index, sum] of sums.entries()) {
        sum[2 * piece] = (sum[2 * piece] ?? 0) + share * (turned[index]?.[0] ?? 0);
        sum[2 * piece + 1] = (sum[2 * piece + 1] ?? 0) + share * (turned[index]?.[1] ?? 0);
      }
    }
  }
  const strength = sums.map((sum) => sum.reduce((all, value) => all + value * value, 0));
  const strongest = strength.indexOf(Math.max(...strength));
  const sum = sums[strongest];
  const line = moving[strongest];
  if (sum === undefined || line === undefined) return { motion, line };

  const shifts = new Float64Array(motion.phase.coefficients.length);
  let angle = 0;
  let before: number | undefined;
  for (let piece = 0; piece < pieces; piece += 1) {
    const read = Math.atan2(sum[2 * piece + 1] ?? 0, sum[2 * piece] ?? 0);
    if (before !== undefined) {
      const step = read - before;
      angle += step - 2 * Math.PI * Math.round(step / (2 * Math.PI));
    }
    before = read;
    // The coefficient of a knot stands one place after the knot before the start.
    if (piece + 1 < shifts.length) shifts[piece + 1] = angle / (2 * Math.PI * line.film);
  }
  shifts[0] = 2 * (shifts[1] ?? 0) - (shifts[2] ?? 0);
  for (let knot = pieces + 1; knot < shifts.length; knot += 1) {
    shifts[knot] = 2 * (shifts[knot - 1] ?? 0) - (shifts[knot - 2] ?? 0);
  }
  return { motion: { ...motion, phase: shiftedPhase(motion.phase, shifts) }, line };
}
