import { alignPhase } from './align-phase.ts';
import { mirroredPhase, phaseFromRates, tiltedPhase } from './film-phase.ts';
import { thinnedSamples, type GateSamples } from './gate-samples.ts';
import {
  familyLines,
  fineLines,
  searchLines,
  withFinestLines,
  type LightLine,
  type LineFamily,
} from './light-lines.ts';
import { isLampPossible, type LampFilter } from './lamp-lines.ts';
import { lineColumns, type Motion } from './line-columns.ts';
import { modelOf, steadyModel, type LightModel } from './light-model.ts';
import { fitFiltered, fitLines, refineMotion, type RefinedMotion } from './refine-motion.ts';
import { LONG_SEGMENTS, SegmentSpectra, SHORT_SEGMENTS } from './segment-spectra.ts';
import { filtered, slowCurves, type SlowChange, type SlowCurves } from './slow-change.ts';
import { trackSpeed } from './speed-track.ts';

/** What the reader knows of the bench, as far as the search needs it. */
export interface LineSearch extends LampFilter {
  readonly slowestFps: number;
  readonly fastestFps: number;
  /** Rates at which a lamp may flicker, Hz: twice each mains rate that may apply. */
  readonly lampRatesHz: readonly number[];
}

/** What was found, and what else might explain the recording. */
export interface Explanation {
  /** Explanations, the best first. */
  readonly models: readonly LightModel[];
  /** The explanation that nothing changes at all. */
  readonly still: LightModel;
  /** The best explanation by slow change alone. */
  readonly steady: LightModel;
}

/** An addition must gain so much to be believed. */
const LEAST_GAIN = 20;

/** A cause whose lines tell so much less than the best one's is not followed up. */
const HOPELESS_SHARE = 0.25;

/** A cause that explains nearly as much as the best one may do better with others beside it. */
const PROMISING_SHARE = 0.12;
const PROMISING_SCORE = 60;

/** Pieces of the other length are tried as well when they tell nearly as much. */
const NEARLY = 0.85;

/** Lamp rates about the nominal one from which the film is looked for, Hz. */
const LAMP_OFFSETS_HZ = [-0.2, 0, 0.2];

/** Part of the changes that a good explanation leaves at most. */
const LITTLE = 0.05;

/** Tracks followed up for one cause. */
const MOST_TRACKS = 3;

/** Steps by which the mains may be off its nominal rate, Hz at the lamp. */
const LAMP_STEP_HZ = 0.04;
const LAMP_STEPS = 9;

/** Film rates nearer to each other than this are one, share. */
const SAME_RATE = 2e-4;

/** Guesses of the lamp rate are compared by one frame in so many. */
const THINNED_TO = 3;

const FAMILIES: readonly LineFamily[] = ['shutter', 'unequal', 'lamp'];
const SLOW_CHANGES: readonly SlowChange[] = ['none', 'drift', 'hunting'];

/** Readout times tried for a mirrored film. */
const MIRROR_READOUTS = 16;

const bestOf = (models: readonly [LightModel, ...LightModel[]]): LightModel =>
  models.reduce((best, model) => (model.score > best.score ? model : best));

/** A rough motion by which one cause could explain the light. */
interface CauseTrack {
  readonly family: LineFamily;
  readonly motion: Motion;
  readonly score: number;
}

/** All that the search for an explanation works with. */
class Workshop {
  readonly samples: GateSamples;
  readonly values: Float64Array;
  readonly search: LineSearch;
  readonly curves: Readonly<Record<SlowChange, SlowCurves>>;
  readonly spectra: readonly SegmentSpectra[];
  /** Sum of the squares of all changes. */
  readonly all: number;

  constructor(samples: GateSamples, values: Float64Array, search: LineSearch) {
    this.samples = samples;
    this.values = values;
    this.search = search;
    this.curves = {
      none: [],
      drift: slowCurves('drift', samples),
      hunting: slowCurves('hunting', samples),
    };
    this.all = values.reduce((sum, value) => sum + value * value, 0);
    const changing = { ...samples, changes: values };
    this.spectra = [SHORT_SEGMENTS, LONG_SEGMENTS].map(
      (plan) => new SegmentSpectra(changing, plan),
    );
  }

  steady(slow: SlowChange): LightModel {
    return steadyModel(this.samples, this.values, slow, this.curves[slow]);
  }

  refine(
    families: readonly LineFamily[],
    lines: readonly LightLine[],
    slow: SlowChange,
    start: Motion,
    rounds: number,
  ): LightModel {
    const curves = this.curves[slow];
    const refined = refineMotion(this.samples, this.values, lines, start, curves, rounds);
    return modelOf(this.samples, families, lines, slow, curves, refined);
  }

  /** The same lines with each kind of slow change beside them; the motion stays. */
  withBestSlow(model: LightModel): LightModel {
    const { refined, families, lines } = model;
    if (refined === undefined) return model;
    const raw = lineColumns(this.samples, lines, refined.motion);
    const others = SLOW_CHANGES.filter((slow) => slow !== model.slow).map((slow) => {
      const curves = this.curves[slow];
      const { commonWeight } = refined;
      const fitted = fitFiltered(raw, this.values, { curves, commonWeight });
      return modelOf(this.samples, families, lines, slow, curves, { ...refined, ...fitted });
    });
    return bestOf([model, ...others]);
  }

  /** How the film would have to run for a cause, by pieces of either length, the best first. */
  tracks(family: LineFamily): readonly CauseTrack[] {
    const { slowestFps, fastestFps, flashesPerFrame, lampRatesHz } = this.search;
    const lines = searchLines(family, flashesPerFrame);
    const lampRates =
      family === 'lamp'
        ? lampRatesHz.flatMap((nominalLampHz) =>
            LAMP_OFFSETS_HZ.map((off) => ({ nominalLampHz, lampHz: nominalLampHz + off })),
          )
        : [{ nominalLampHz: 0, lampHz: 0 }];
    return this.spectra
      .flatMap((spectra) =>
        lampRates.map(({ nominalLampHz, lampHz }): CauseTrack => {
          const track = trackSpeed(spectra, { slowestFps, fastestFps, lines, lampHz });
          const { spacingSeconds } = spectra.plan;
          const { durationSeconds } = this.samples;
          const phase = phaseFromRates(track.filmFps, spacingSeconds, durationSeconds);
          const { readoutSeconds, score } = track;
          const motion = { phase, readoutSeconds, lampHz, nominalLampHz };
          return { family, motion, score };
        }),
      )
      .sort((a, b) => b.score - a.score);
  }

  /** The best explanation by one cause alone, from the tracks that it could have. */
  explainBy(tracks: readonly CauseTrack[], slow: SlowChange): LightModel {
    const best = tracks[0];
    if (best === undefined) return this.steady(slow);
    const { family } = best;
    const { flashesPerFrame } = this.search;
    const searched = searchLines(family, flashesPerFrame);
    const lines = familyLines(family, flashesPerFrame);
    const followed = tracks
      .filter(({ score }) => score >= NEARLY * best.score)
      .slice(0, MOST_TRACKS);
    let better = this.steady(slow);
    for (const { motion } of followed) {
      const start = this.inStep(family, searched, lines, slow, motion);
      better = bestOf([better, this.refine([family], lines, slow, start, 3)]);
      if (this.leavesLittle(better)) break;
    }
    const motion = better.refined?.motion;
    if (motion === undefined) return better;
    return this.withBestSlow(this.refine([family], lines, slow, motion, 6));
  }

  /** Whether an explanation leaves so little that another track of its cause need not be tried. */
  leavesLittle({ refined, squares }: LightModel): boolean {
    return refined !== undefined && squares.common + squares.single < LITTLE * this.all;
  }

  /** A rough motion brought in step with the strongest line; for a lamp, at its best rate. */
  inStep(
    family: LineFamily,
    searched: readonly LightLine[],
    lines: readonly LightLine[],
    slow: SlowChange,
    rough: Motion,
  ): Motion {
    const { samples } = this;
    const filter = { curves: this.curves[slow], commonWeight: 1 };
    const values = filtered(this.values, filter);
    const { motion, line } = alignPhase(samples, values, searched, rough);
    if (family !== 'lamp' || line === undefined) return motion;
    // The line stays in step when a faster lamp is met by a film that runs faster or slower.
    const middle = samples.durationSeconds / 2;
    const guesses = Array.from({ length: 2 * LAMP_STEPS + 1 }, (_, index): Motion => {
      const added = (index - LAMP_STEPS) * LAMP_STEP_HZ;
      const phase = tiltedPhase(motion.phase, -added / line.film, middle);
      return { ...motion, phase, lampHz: motion.lampHz + added };
    });
    return this.bestGuess(values, lines, guesses);
  }

  bestGuess(values: Float64Array, lines: readonly LightLine[], guesses: readonly Motion[]): Motion {
    const thin = thinnedSamples({ ...this.samples, changes: values }, THINNED_TO);
    const filter = { curves: [], commonWeight: 1 };
    const tried = guesses.map((motion) => {
      const { fit } = fitLines(thin, thin.changes, lines, motion, filter);
      return { motion, squares: fit.residualSquares };
    });
    return tried.reduce((best, guess) => (guess.squares < best.squares ? guess : best)).motion;
  }

  /** A further cause beside those found, with the film as it was found to run. */
  addCause(model: LightModel, family: LineFamily): LightModel {
    const { refined } = model;
    if (refined === undefined) return model;
    const { flashesPerFrame, lampRatesHz } = this.search;
    const added = familyLines(family, flashesPerFrame);
    const lines = [...model.lines, ...added];
    const families = [...model.families, family];
    if (family !== 'lamp') return this.refine(families, lines, model.slow, refined.motion, 2);
    const guesses = lampRatesHz.flatMap((rate) =>
      Array.from({ length: 2 * LAMP_STEPS + 1 }, (_, index): Motion => {
        const lampHz = rate + (index - LAMP_STEPS) * LAMP_STEP_HZ;
        return { ...refined.motion, lampHz, nominalLampHz: rate };
      }),
    );
    const start = this.bestGuess(refined.fit.residual, added, guesses);
    return this.refine(families, lines, model.slow, start, 3);
  }

  /** With the finer lines of the causes found, where they pay. */
  withFineLines(model: LightModel): LightModel {
    const { refined, families, slow } = model;
    if (refined === undefined) return model;
    const known = new Set(model.lines.map(({ film, lamp }) => `${film} ${lamp}`));
    const fine = families
      .flatMap((family) => fineLines(family, this.search.flashesPerFrame))
      .filter(({ film, lamp }) => !known.has(`${film} ${lamp}`));
    if (fine.length === 0) return model;
    const lines = [...model.lines, ...fine];
    return bestOf([model, this.refine(families, lines, slow, refined.motion, 3)]);
  }

  /**
   * The same causes with a film that runs as far on the other side of a multiple of the camera rate.
   * To a camera that reads all its rows at once both look the same.
   */
  mirrored(model: LightModel): LightModel | undefined {
    const { refined, families, lines, slow } = model;
    if (refined === undefined) return undefined;
    const { cameraFps } = this.samples;
    const { motion } = refined;
    const { slowestFps, fastestFps, flashesPerFrame } = this.search;
    const filmFps = refined.meanFilmFps;
    const perFrame = families.includes('unequal') ? 1 : flashesPerFrame;
    const multiple = Math.round((2 * filmFps * perFrame) / cameraFps);
    const sumFps = (multiple * cameraFps) / perFrame;
    const otherFps = sumFps - filmFps;
    if (otherFps < slowestFps || otherFps > fastestFps) return undefined;
    if (Math.abs(otherFps / filmFps - 1) < SAME_RATE) return undefined;
    const phase = mirroredPhase(motion.phase, -1, sumFps);
    const guesses = Array.from({ length: MIRROR_READOUTS }, (_, index): Motion => {
      return { ...motion, phase, readoutSeconds: index / MIRROR_READOUTS / cameraFps };
    });
    const { curves } = this;
    const values = filtered(this.values, { curves: curves[slow], commonWeight: 1 });
    const start = this.bestGuess(values, lines, guesses);
    return this.refine(families, lines, slow, start, 4);
  }
}

/** Further causes one by one while each pays. */
function extended(
  workshop: Workshop,
  families: readonly LineFamily[],
  start: LightModel,
): LightModel {
  let model = start;
  for (;;) {
    const before = workshop.withFineLines(model);
    const further = families
      .filter((family) => !before.families.includes(family))
      .map((family) => workshop.withBestSlow(workshop.addCause(before, family)))
      .filter((candidate) => isLampPossible(candidate, workshop.search));
    model = bestOf([before, ...further]);
    if (model.score < before.score + LEAST_GAIN) return before;
  }
}

/**
 * The explanations of a recording that fit well without more causes than they need: for each single
 * cause that explains much, the best with each further cause that pays.
 *
 * @param samples  the recording
 * @param search   film rates, flashes and lamps that may be
 * @returns the explanations, the best first
 */
export function explainLight(samples: GateSamples, search: LineSearch): Explanation {
  const workshop = new Workshop(samples, samples.changes, search);
  const families = FAMILIES.filter(
    (family) =>
      (family !== 'unequal' || search.flashesPerFrame > 1) &&
      (family !== 'lamp' || search.lampRatesHz.length > 0),
  );
  const still = workshop.steady('none');
  const steady = bestOf([still, workshop.steady('drift'), workshop.steady('hunting')]);
  const tracks = families.map((family) => workshop.tracks(family));
  const most = Math.max(...tracks.map(([best]) => best?.score ?? 0));
  const single = tracks
    .filter(([best]) => (best?.score ?? 0) >= HOPELESS_SHARE * most)
    .map((each) => {
      const plain = workshop.explainBy(each, 'none');
      if (steady.slow === 'none' || workshop.leavesLittle(plain)) return plain;
      return bestOf([plain, workshop.explainBy(each, steady.slow)]);
    })
    // Causes are compared with all their lines: few lines of one may look like the many of another.
    .map((model) => workshop.withFineLines(model))
    .filter((model) => isLampPossible(model, search) && model.score > steady.score + LEAST_GAIN);
  const best = bestOf([steady, ...single]);
  const gain = best.score - still.score;
  const reach = Math.max(PROMISING_SCORE, PROMISING_SHARE * gain);
  const promising = single.filter(({ score }) => score >= best.score - reach);
  const models = promising.map((start) => extended(workshop, families, start));
  const first = bestOf([steady, ...models]);
  const mirrored = workshop.mirrored(first);
  const all = mirrored === undefined ? models : [...models, mirrored];
  return {
    models: (all.length === 0 ? [steady] : all).sort((a, b) => b.score - a.score),
    still,
    steady,
  };
}

const SETTLING_ROUNDS = 6;
/** A film rate that moves by more than this share in settling was never held. */
const SETTLED_SHARE = 1e-3;

/** Lines and motion by which film rate and readout time are told. */
export interface SettledMotion {
  readonly lines: readonly LightLine[];
  readonly refined: RefinedMotion;
}

/**
 * The motion of an explanation with every corner of the curve of its light: what a few lines leave out
 * bends the film position instead, and near a multiple of the camera rate that puts the readout time out
 * by a quarter.
 *
 * @returns the motion; that of the explanation itself where the finer lines do not hold it
 */
export function settledMotion(
  samples: GateSamples,
  { lines, families, slow }: LightModel,
  refined: RefinedMotion,
  flashesPerFrame: number,
): SettledMotion {
  const fine = withFinestLines(lines, families, flashesPerFrame);
  const curves = slowCurves(slow, samples);
  const { changes } = samples;
  const settled = refineMotion(
    ...([samples, changes, fine, refined.motion, curves, SETTLING_ROUNDS] as const),
    true,
  );
  const moved = Math.abs(settled.meanFilmFps / refined.meanFilmFps - 1);
  return moved > SETTLED_SHARE ? { lines, refined } : { lines: fine, refined: settled };
}
