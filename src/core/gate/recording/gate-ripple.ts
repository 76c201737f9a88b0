import type { GateSamples } from './gate-samples.ts';
import { weakLampLines, type LightLine } from './light-lines.ts';
import { bandAttenuation, lineColumns, type Motion } from './line-columns.ts';
import type { LightModel } from './light-model.ts';
import { curveExtremes, periodicCurve, smoothed, type PeriodicCurve } from './periodic-curve.ts';
import { fitLines, type RefinedMotion } from './refine-motion.ts';
import { dividedByGain, slowPart, type SlowCurves } from './slow-change.ts';
import { SAMPLES_PER_WITNESS } from './speed-track.ts';

/** How much light changes by each cause alone, peak to peak, share of the mean. */
export interface GateRipples {
  readonly shutter: number;
  readonly unequal: number;
  readonly lamp: number;
  readonly slow: number;
  /** Least and most of shutter, blades and lamp together, change from the mean. */
  readonly least: number;
  readonly most: number;
  /** False when the clip does not show every phase: the ripple is at least this. */
  readonly isWhole: boolean;
}

/** Phases of a flash, and lamp phases, at which the light is taken. */
const PHASES_OF_FLASH = 48;
const LAMP_PHASES = 36;

/** A gap in the phases longer than this leaves the ripple open, turns. */
const OPEN_GAP_TURNS = 1 / 12;

/** What lines add to the light at every sample. */
function linesAdd(
  columns: readonly Float64Array[],
  factors: Float64Array,
  isMeant: (line: number) => boolean,
  size: number,
): Float64Array {
  const sum = new Float64Array(size);
  for (const [index, column] of columns.entries()) {
    const factor = factors[index] ?? 0;
    if (!isMeant(Math.floor(index / 2))) continue;
    for (let at = 0; at < size; at += 1) sum[at] = (sum[at] ?? 0) + factor * (column[at] ?? 0);
  }
  return sum;
}

const less = (a: Float64Array, b: Float64Array): Float64Array =>
  a.map((value, at) => value - (b[at] ?? 0));

/** Lines with the factors of their cosines and sines. */
interface WeighedLines {
  readonly lines: readonly LightLine[];
  readonly factors: Float64Array;
}

/**
 * The lines of a model with the weak ones of its lamp: each of those as strong as it stands out from
 * what noise alone would make of it.
 */
function withWeakLampLines(
  samples: GateSamples,
  model: LightModel,
  refined: RefinedMotion,
  curves: SlowCurves,
  flashes: number,
): WeighedLines {
  const known = model.lines;
  if (!model.families.includes('lamp')) return { lines: known, factors: refined.fit.factors };
  const lines = [...known, ...weakLampLines(flashes)];
  const filter = { curves, commonWeight: refined.commonWeight };
  const { fit } = fitLines(samples, samples.changes, lines, refined.motion, filter);
  const noise = (2 * SAMPLES_PER_WITNESS * fit.residualSquares) / samples.changes.length ** 2;
  const factors = Float64Array.from(fit.factors);
  for (let index = known.length; index < lines.length; index += 1) {
    const swing = (factors[2 * index] ?? 0) ** 2 + (factors[2 * index + 1] ?? 0) ** 2;
    const share = swing > 0 ? Math.max(0, 1 - (2 * noise) / swing) : 0;
    for (const at of [2 * index, 2 * index + 1]) factors[at] = share * (factors[at] ?? 0);
  }
  return { lines, factors };
}

/** Sum of the lamp's lines at each phase of the flash (rows) and of the lamp (columns). */
function lampSurface(
  { lines, factors }: WeighedLines,
  filmFps: number,
  motion: Motion,
  flashes: number,
): Float64Array {
  const surface = new Float64Array(PHASES_OF_FLASH * LAMP_PHASES);
  for (const [index, line] of lines.entries()) {
    if (line.lamp === 0) continue;
    const scale = 1 / bandAttenuation(line, filmFps, motion);
    const cosine = (factors[2 * index] ?? 0) * scale;
    const sine = (factors[2 * index + 1] ?? 0) * scale;
    for (let flash = 0; flash < PHASES_OF_FLASH; flash += 1) {
      for (let lamp = 0; lamp < LAMP_PHASES; lamp += 1) {
        const turns = ((line.film / flashes) * flash) / PHASES_OF_FLASH + lamp / LAMP_PHASES;
        const at = flash * LAMP_PHASES + lamp;
        surface[at] =
          (surface[at] ?? 0) +
          cosine * Math.cos(2 * Math.PI * turns) +
          sine * Math.sin(2 * Math.PI * turns);
      }
    }
  }
  return surface;
}

const maximumOf = (values: Float64Array): number =>
  values.reduce((most, value) => Math.max(most, value), -Infinity);
const minimumOf = (values: Float64Array): number =>
  values.reduce((least, value) => Math.min(least, value), Infinity);
const spread = (values: Float64Array): number =>
  values.length === 0 ? 0 : maximumOf(values) - minimumOf(values);

/** Mean of a curve over a whole film frame at each phase of a flash. */
function flashMean(changes: Float64Array, flashes: number): Float64Array {
  const length = changes.length / flashes;
  return changes.map((_, index) => {
    let sum = 0;
    for (let flash = 0; flash < flashes; flash += 1) {
      sum += changes[(index + flash * length) % changes.length] ?? 0;
    }
    return sum / flashes;
  });
}

/**
 * The ripple of each cause and of all together, from the light itself: slow change divided out, the
 * lamp's lines taken off, the rest folded on the film.
 */
export function gateRipples(
  samples: GateSamples,
  model: LightModel,
  curves: SlowCurves,
  flashes: number,
): GateRipples {
  const { refined, families, lines } = model;
  if (refined === undefined) {
    const slow = slowPart(samples.changes, curves);
    return {
      shutter: 0,
      unequal: 0,
      lamp: 0,
      slow: spread(slow),
      least: 0,
      most: 0,
      isWhole: true,
    };
  }
  const { motion, fit } = refined;
  const size = samples.changes.length;
  const columns = lineColumns(samples, lines, motion);
  const all = linesAdd(columns, fit.factors, () => true, size);
  const slow = slowPart(less(samples.changes, all), curves);
  const lamp = linesAdd(columns, fit.factors, (line) => lines[line]?.lamp === 1, size);
  const even = less(dividedByGain(samples.changes, slow), lamp);
  const filmFps = refined.meanFilmFps;
  const noise = (model.squares.common + model.squares.single) / size;
  const isUnequal = families.includes('unequal');
  const turnsPerFrame = isUnequal ? 1 : flashes;
  const perFlash = isUnequal ? PHASES_OF_FLASH / 2 : PHASES_OF_FLASH;
  const phases = isUnequal ? perFlash * flashes : perFlash;
  const hasFilm = isUnequal || families.includes('shutter');
  const curve: PeriodicCurve = periodicCurve(samples, even, motion, turnsPerFrame, phases, noise);
  const film = hasFilm ? curve : { ...curve, changes: new Float64Array(phases) };
  const flash = isUnequal ? flashMean(film.changes, flashes) : film.changes;
  const isWhole = curve.longestGapTurns * (isUnequal ? flashes : 1) <= OPEN_GAP_TURNS;
  const weighed = withWeakLampLines(samples, model, refined, curves, flashes);
  const surface = lampSurface(weighed, filmFps, motion, flashes);
  let { least, most } = curveExtremes(film);
  if (families.includes('lamp') && !isWhole) {
    // Phases that were not seen cannot be made up: the light as it was met in the clip.
    least = minimumOf(all);
    most = maximumOf(all);
  } else if (families.includes('lamp')) {
    [least, most] = [Infinity, -Infinity];
    for (const [index, change] of smoothed(film.changes).entries()) {
      for (let turn = 0; turn < LAMP_PHASES; turn += 1) {
        const flashPhase = (index % perFlash) * (PHASES_OF_FLASH / perFlash);
        const at = flashPhase * LAMP_PHASES + turn;
        const light = change + (surface[at] ?? 0);
        least = Math.min(least, light);
        most = Math.max(most, light);
      }
    }
  }
  return {
    shutter:
      curveExtremes({ ...film, changes: flash }).most -
      curveExtremes({ ...film, changes: flash }).least,
    unequal: isUnequal ? spread(smoothed(less(film.changes, flash))) : 0,
    lamp: families.includes('lamp') ? spread(isWhole ? surface : lamp) : 0,
    slow: spread(slow),
    least,
    most,
    isWhole,
  };
}
