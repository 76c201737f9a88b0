import { requireInterval } from '../../../quantity/errors.ts';
import { BAND_COUNT } from '../band-light.ts';
import { filmPhaseAt, type FilmPhase } from './film-phase.ts';
import { centreBands, type GateSamples } from './gate-samples.ts';
import { lineHz, type LightLine } from './light-lines.ts';

/** How film, camera rows and lamp run. */
export interface Motion {
  readonly phase: FilmPhase;
  readonly readoutSeconds: number;
  readonly lampHz: number;
  /** The rate that the lamp has by its mains, Hz; 0 where no lamp flickers. */
  readonly nominalLampHz: number;
}

const BANDS = { minimum: 0, below: BAND_COUNT, whole: true };

/**
 * Delay of a band's middle after the first row, as a share of the readout time.
 *
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @example bandDelay(1) // 0.125
 */
export const bandDelay = (band: number): number =>
  (requireInterval('band', band, BANDS) + 0.5) / BAND_COUNT;

/** How much a line loses because a band averages its rows, as a factor. */
export function bandAttenuation(line: LightLine, filmFps: number, motion: Motion): number {
  const turns = (lineHz(line, filmFps, motion.lampHz) * motion.readoutSeconds) / BAND_COUNT;
  return turns === 0 ? 1 : Math.max(0.2, Math.sin(Math.PI * turns) / (Math.PI * turns));
}

/**
 * The cosine and the sine of each line at every sample, less their means in each band; two columns a
 * line, in order.
 */
export function lineColumns(
  samples: GateSamples,
  lines: readonly LightLine[],
  motion: Motion,
): readonly Float64Array[] {
  const { phase, readoutSeconds, lampHz } = motion;
  const { frameSeconds, durationSeconds } = samples;
  const size = samples.changes.length;
  const columns = lines.flatMap(() => [new Float64Array(size), new Float64Array(size)]);
  const powerOfLine = Int32Array.from(lines, ({ film }) => Math.abs(film));
  const signOfLine = Int32Array.from(lines, ({ film }) => (film < 0 ? -1 : 1));
  const isOfLamp = Uint8Array.from(lines, ({ lamp }) => (lamp === 0 ? 0 : 1));
  const highest = Math.max(0, ...powerOfLine);
  const powers = new Float64Array(2 * (highest + 1));
  powers[0] = 1;
  // Single names in here: pairs taken apart at every sample took two thirds of the time.
  for (let at = 0; at < size; at += 1) {
    const delay = bandDelay(at % BAND_COUNT) * readoutSeconds;
    const seconds = (frameSeconds[Math.floor(at / BAND_COUNT)] ?? 0) + delay;
    const film = filmPhaseAt(phase, seconds);
    const angle = 2 * Math.PI * (film - Math.floor(film));
    const cosine = Math.cos(angle);
    const sine = Math.sin(angle);
    for (let power = 1; power <= highest; power += 1) {
      const real = powers[2 * power - 2] ?? 0;
      const imaginary = powers[2 * power - 1] ?? 0;
      powers[2 * power] = real * cosine - imaginary * sine;
      powers[2 * power + 1] = real * sine + imaginary * cosine;
    }
    const lampAngle = 2 * Math.PI * lampHz * (seconds - durationSeconds / 2);
    const lampCosine = lampHz > 0 ? Math.cos(lampAngle) : 1;
    const lampSine = lampHz > 0 ? Math.sin(lampAngle) : 0;
    for (let index = 0; index < powerOfLine.length; index += 1) {
      const power = powerOfLine[index] ?? 0;
      const real = powers[2 * power] ?? 0;
      const imaginary = (signOfLine[index] ?? 0) * (powers[2 * power + 1] ?? 0);
      const cosines = columns[2 * index];
      const sines = columns[2 * index + 1];
      if (cosines === undefined || sines === undefined) break;
      const isLamp = isOfLamp[index] === 1;
      cosines[at] = isLamp ? real * lampCosine - imaginary * lampSine : real;
      sines[at] = isLamp ? real * lampSine + imaginary * lampCosine : imaginary;
    }
  }
  for (const column of columns) centreBands(column);
  return columns;
}
