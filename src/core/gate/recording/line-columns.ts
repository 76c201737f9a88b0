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
  const highest = Math.max(0, ...lines.map(({ film }) => Math.abs(film)));
  const powers = new Float64Array(2 * (highest + 1));
  powers[0] = 1;
  for (let at = 0; at < size; at += 1) {
    const delay = bandDelay(at % BAND_COUNT) * readoutSeconds;
    const seconds = (frameSeconds[Math.floor(at / BAND_COUNT)] ?? 0) + delay;
    const film = filmPhaseAt(phase, seconds);
    const angle = 2 * Math.PI * (film - Math.floor(film));
    const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
    for (let power = 1; power <= highest; power += 1) {
      const [real, imaginary] = [powers[2 * power - 2] ?? 0, powers[2 * power - 1] ?? 0];
      powers[2 * power] = real * cosine - imaginary * sine;
      powers[2 * power + 1] = real * sine + imaginary * cosine;
    }
    const lampAngle = 2 * Math.PI * lampHz * (seconds - durationSeconds / 2);
    const [lampCosine, lampSine] = lampHz > 0 ? [Math.cos(lampAngle), Math.sin(lampAngle)] : [1, 0];
    for (let index = 0; index < lines.length; index += 1) {
      const line = lines[index];
      if (line === undefined) break;
      const power = Math.abs(line.film);
      const real = powers[2 * power] ?? 0;
      const imaginary = (line.film < 0 ? -1 : 1) * (powers[2 * power + 1] ?? 0);
      const [cosines, sines] = [columns[2 * index], columns[2 * index + 1]];
      if (cosines === undefined || sines === undefined) break;
      cosines[at] = line.lamp === 0 ? real : real * lampCosine - imaginary * lampSine;
      sines[at] = line.lamp === 0 ? imaginary : real * lampSine + imaginary * lampCosine;
    }
  }
  for (const column of columns) centreBands(column);
  return columns;
}
