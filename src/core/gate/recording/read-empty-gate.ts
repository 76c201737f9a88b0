import { BAND_COUNT, type BandLight } from '../band-light.ts';
import { bandDriftPerSecond, bandsDownPicture } from '../bands.ts';
import { beatHz } from '../beat.ts';
import { flashRateHz } from '../flash-rate.ts';
import { shutterOpenFraction } from '../shutter.ts';
import { requireInterval } from '../../../quantity/errors.ts';
import { explainLight, settledMotion, type Explanation } from './explain-light.ts';
import { readFrameClock } from './frame-times.ts';
import { gateAdvice } from './gate-advice.ts';
import {
  FILM_RATE_SHARE,
  GLOBAL_SECONDS,
  lampLookalikes,
  slowCause,
  slowLookalike,
  type Answer,
} from './lookalikes.ts';
import { isPlausible } from './plausible-answers.ts';
import type {
  FoundCause,
  GateBench,
  GateCause,
  GateReading,
  GateRefusal,
  MeasuredFilmRate,
  PossibleAnswer,
} from './gate-reading.ts';
import { gateRefusal, movingThing, unusableLight } from './gate-refusals.ts';
import { gateRipples, type GateRipples } from './gate-ripple.ts';
import { gateSamples, type GateSamples } from './gate-samples.ts';
import type { LightModel } from './light-model.ts';
import { measuredReadout } from './measured-readout.ts';
import { beatTurns, measuredFilmRate, speedChart } from './measured-rate.ts';
import { LAMP_DEVIATION_HZ } from './refine-motion.ts';
import { FASTEST_HUNTING_HZ, slowCurves } from './slow-change.ts';
import { unexplainedShare } from './unexplained-light.ts';

/** What turns with the film must explain so much more than slow change to give a film rate. */
const FILM_RATE_GAIN = 60;

/** Film rates nearer to each other than this are one, share. */
const SAME_RATE = 3e-4;

/** Two answers as good as each other: less than this apart, or than a share of what the best gains. */
const CLOSE_SCORE = 15;
const CLOSE_SHARE = 0.03;

/** A cause smaller than this part of the largest is not named, and none below the least change, share. */
const SMALLEST_PART = 0.02;
const SMALLEST_CHANGE = 0.001;

/** A change of light smaller than this is not seen, % of the mean. Common practice, no source. */
const EVEN_PERCENT = 0.6;

/** A beat must turn so often in the clip, or no mean of it can be taken. */
const FEWEST_BEAT_TURNS = 1.5;

/** Change that nothing explains: share of the mean, and part of the flicker. */
const UNEXPLAINED_SHARE = 0.004;
const UNEXPLAINED_PART = 0.12;

/** An answer that the bench allows may fit worse by this share than one that it does not. */
const PLAUSIBLE_SHARE = 0.2;

/** Flicker below this part of a slow change cannot be told from what the slow change leaves. */
const HIDDEN_PART = 0.3;

/** A flicker counts as constant when its mismatch is so many times the swing of the motor. */
const CONSTANT_FLICKER = 1.5;

/** Under a global shutter answers count as close when they lose less than this share of the gain. */
const GLOBAL_SHARE = 0.25;

/** A second line of a lamp must be this strong beside the first to tell film and lamp apart. */
const SECOND_LINE_PART = 0.3;

/** The readout time is given when it is known this well, s. */
const READOUT_KNOWN_SECONDS = 0.001;

/** The recording with its rows in the order in which the camera reads them. */
function inReadingOrder(light: BandLight, isReadUpwards: boolean): BandLight {
  if (!isReadUpwards) return light;
  const bands = light.bands.map((_, at) => {
    const frame = Math.floor(at / BAND_COUNT);
    return light.bands[frame * BAND_COUNT + BAND_COUNT - 1 - (at % BAND_COUNT)] ?? 0;
  });
  return { ...light, bands };
}

/** Whether what turns with film and lamp is too weak beside a slow change to be told from its leftovers. */
const isHiddenBySlow = (ripples: GateRipples): boolean =>
  ripples.most - ripples.least < HIDDEN_PART * ripples.slow;

/** The causes with a change of their own, the largest first. */
function foundCauses(model: LightModel, ripples: GateRipples): readonly FoundCause[] {
  const families = isHiddenBySlow(ripples) ? [] : model.families;
  const all: { readonly cause: GateCause; readonly change: number }[] = families.map((family) => ({
    cause: family,
    change: ripples[family],
  }));
  if (model.slow !== 'none') all.push({ cause: slowCause(model), change: ripples.slow });
  const largest = Math.max(0, ...all.map(({ change }) => change));
  const named = all.filter(
    ({ change }) => change >= Math.max(SMALLEST_CHANGE, SMALLEST_PART * largest),
  );
  const sum = named.reduce((total, { change }) => total + change, 0);
  return named
    .map(({ cause, change }) => ({ cause, ripplePercent: 100 * change, share: change / sum }))
    .sort((a, b) => b.ripplePercent - a.ripplePercent);
}

function answerOf(samples: GateSamples, model: LightModel, flashesPerFrame: number): Answer {
  const ripples = gateRipples(samples, model, slowCurves(model.slow, samples), flashesPerFrame);
  const filmFps =
    model.refined === undefined
      ? undefined
      : measuredFilmRate(model.refined, samples.durationSeconds).filmFps;
  return { model, ripples, causes: foundCauses(model, ripples), filmFps };
}

/** Whether two answers say the same of cause and film rate. */
function isSameAnswer(a: Answer, b: Answer): boolean {
  if (a.causes[0]?.cause !== b.causes[0]?.cause) return false;
  if (a.filmFps === undefined || b.filmFps === undefined) return true;
  return Math.abs(a.filmFps / b.filmFps - 1) < SAME_RATE;
}

/**
 * Whether the shutter alone flickers, and so little that the motor's wander must take it through the
 * matching rate: the flicker then dies and returns the other way round, and its phase tells no rate.
 */
function passesMatch(answer: Answer, rate: MeasuredFilmRate, bench: GateBench): boolean {
  const { families } = answer.model;
  if (families.includes('unequal') || families.includes('lamp')) return false;
  const swing = (rate.fastestFps - rate.slowestFps) / 2 / rate.filmFps;
  // Near a match the ripple is the mismatch divided by the open fraction.
  const mismatch = answer.ripples.shutter * shutterOpenFraction(bench.shutter);
  return mismatch < CONSTANT_FLICKER * swing;
}

/** Without a delay from row to row the products of lamp and shutter cannot be told from each other. */
function isLampUnderGlobalShutter({ families, refined }: LightModel): boolean {
  const isLampAlone = families.every((family) => family === 'lamp');
  return isLampAlone && (refined?.motion.readoutSeconds ?? 0) < GLOBAL_SECONDS;
}

/**
 * Uncertainty of a film rate that only one line of a lamp tells: such a line gives the film rate less
 * the lamp's, and the lamp is as uncertain as the mains.
 */
function lampSlackFps({ families, lines, refined }: LightModel, flashesPerFrame: number): number {
  if (refined === undefined || families.some((family) => family !== 'lamp')) return 0;
  const { factors } = refined.fit;
  const swings = lines
    .map(({ film }, index) =>
      film === 0 ? 0 : Math.hypot(factors[2 * index] ?? 0, factors[2 * index + 1] ?? 0),
    )
    .sort((a, b) => b - a);
  const isTold = (swings[1] ?? 0) > SECOND_LINE_PART * (swings[0] ?? 0);
  return isTold ? 0 : (3 * LAMP_DEVIATION_HZ) / flashesPerFrame;
}

/** Half the largest ripple that would have been missed, share of the mean. */
function quietShare(model: LightModel, samples: GateSamples): number {
  const { common, single } = model.squares;
  const witnesses = samples.changes.length / 4;
  const noise = (common + single) / samples.changes.length;
  // A line is believed when it gains its price and the least gain.
  return Math.sqrt((2 * noise * (20 + 4.5 * Math.log(witnesses))) / witnesses);
}

/**
 * Reads a recording of the lit, empty gate: how strongly it flickers and why, how fast the film ran,
 * how long the camera takes to read its rows, and what to change. A recording that cannot be read is
 * refused with the reason and the place.
 *
 * Model: the light of each band is a sum of lines at their true rates (multiples of film and flash
 * rate, the lamp's rate and its products with the flash rate) and a slow change that all bands share.
 * The rows of a rolling camera sample the light fast enough to tell true rates from their aliases. The
 * film position is a smooth curve fitted with the lines; the ripple is read from the light folded on it.
 *
 * @param light  band means of the recording
 * @param bench  what the reader knows of the bench
 * @returns the reading, or a refusal
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function readEmptyGate(light: BandLight, bench: GateBench): GateReading | GateRefusal {
  requireInterval('nominalFilmFps', bench.nominalFilmFps, { above: 0, maximum: 240 });
  const reach = bench.filmRateShare ?? FILM_RATE_SHARE;
  requireInterval('filmRateShare', reach, { minimum: 0.001, maximum: 0.3 });
  requireInterval('exposureSeconds', bench.exposureSeconds, { above: 0, maximum: 60, unit: 's' });
  const { frameSeconds } = light;
  const span = (frameSeconds.at(-1) ?? 0) - (frameSeconds[0] ?? 0);
  const unusable = unusableLight(light, span);
  if (unusable !== undefined) return unusable;
  const clock = readFrameClock(frameSeconds);
  if (clock === undefined) return gateRefusal('too-short', { amount: span });
  if ('irregular' in clock) {
    const seconds = clock.irregular.seconds - (frameSeconds[0] ?? 0);
    return gateRefusal('irregular-times', { seconds });
  }
  const samples = gateSamples(inReadingOrder(light, bench.isReadUpwards === true), clock);
  if (samples === undefined) return gateRefusal('black');

  const { flashesPerFrame, nominalFilmFps, mainsHz } = bench;
  const explanation = explainLight(samples, {
    flashesPerFrame,
    openFraction: shutterOpenFraction(bench.shutter),
    exposureSeconds: bench.exposureSeconds,
    slowestFps: nominalFilmFps * (1 - reach),
    fastestFps: nominalFilmFps * (1 + reach),
    lampRatesHz: mainsHz === undefined ? [100, 120] : [2 * mainsHz],
  });
  return describe(samples, explanation, bench, clock.missingFrames);
}

function describe(
  samples: GateSamples,
  explanation: Explanation,
  bench: GateBench,
  missingFrames: number,
): GateReading | GateRefusal {
  const { models, still, steady } = explanation;
  const { cameraFps, durationSeconds } = samples;
  const { flashesPerFrame } = bench;
  const best = models[0] ?? steady;
  const near = Math.max(CLOSE_SCORE, CLOSE_SHARE * (best.score - still.score));
  const answers = models.map((model) => answerOf(samples, model, flashesPerFrame));
  const within = (reach: number): readonly Answer[] =>
    answers.filter(({ model }) => model.score > best.score - reach);
  // Rows that are all read at once tell no sign of the beat, whatever little the noise says for one.
  const isGlobal = ({ refined }: LightModel): boolean =>
    (refined?.motion.readoutSeconds ?? 0) < GLOBAL_SECONDS;
  const globalReach = isGlobal(best) ? GLOBAL_SHARE * (best.score - still.score) : 0;
  const close = answers.filter(
    ({ model }) =>
      model.score > best.score - near ||
      (isGlobal(model) && model.score > best.score - globalReach),
  );
  const allowed = close.filter((one) => isPlausible(one, bench));
  // When the bench allows none of those that fit best, one that fits a little worse may be the truth.
  const wider = within(Math.max(near, PLAUSIBLE_SHARE * (best.score - still.score)));
  const second = allowed.length > 0 ? allowed : wider.filter((one) => isPlausible(one, bench));
  const plausible = second.length > 0 ? second : close;
  const [answer = answerOf(samples, best, flashesPerFrame), ...others] = plausible;
  const { model, ripples, causes } = answer;
  const residual = model.refined?.fit.residual ?? samples.changes;
  const moving = movingThing(samples, residual, ripples.most - ripples.least);
  if (moving !== undefined) return moving;
  const main = causes[0]?.cause;
  const lookalikes = lampLookalikes(answer, cameraFps, bench);
  if (lookalikes.length > 0) return gateRefusal('two-answers', { answers: lookalikes });
  const rivals = others.filter((rival) => !isSameAnswer(answer, rival));
  const rival = rivals[0];
  const isSlowMain = main === 'drift' || main === 'automatic-exposure';
  const rivalMain = rival?.causes[0]?.cause;
  // A weak line beside a slow change leaves the film rate open, not the cause.
  const isOnlyRateOpen = isSlowMain && rivals.every(({ causes: [first] }) => first?.cause === main);
  if (main !== undefined && rivalMain !== undefined && !isOnlyRateOpen) {
    const possible: readonly PossibleAnswer[] = [
      { cause: main, filmFps: answer.filmFps },
      { cause: rivalMain, filmFps: rival?.filmFps },
    ];
    return gateRefusal('two-answers', { answers: possible });
  }

  const { refined } = model;
  const slowRival = slowLookalike(answer, cameraFps, bench);
  if (slowRival !== undefined) {
    const possible = [{ cause: slowCause(steady), filmFps: undefined }, slowRival];
    return gateRefusal('two-answers', { answers: possible });
  }
  if (main === 'shutter' && refined !== undefined) {
    const turns = beatTurns(refined, flashesPerFrame, cameraFps, durationSeconds);
    if (turns < FEWEST_BEAT_TURNS) return gateRefusal('slow-beat', { amount: turns });
  }
  const unexplained = unexplainedShare(model, samples);
  const explained = Math.max(ripples.most - ripples.least, ripples.slow);
  if (unexplained > Math.max(UNEXPLAINED_SHARE, UNEXPLAINED_PART * explained)) {
    return gateRefusal('unexplained', { amount: unexplained });
  }
  // Lines too weak to be seen may be lines of something else: they tell no film rate.
  const isEven = causes.every(({ ripplePercent }) => ripplePercent < EVEN_PERCENT);
  const isLineSeen =
    refined !== undefined &&
    rival === undefined &&
    !isHiddenBySlow(ripples) &&
    !isEven &&
    !isLampUnderGlobalShutter(model) &&
    model.score - steady.score > FILM_RATE_GAIN;
  const settled =
    refined !== undefined && isLineSeen
      ? settledMotion(samples, model, refined, flashesPerFrame)
      : undefined;
  const measured =
    settled === undefined
      ? undefined
      : measuredFilmRate(settled.refined, durationSeconds, lampSlackFps(model, flashesPerFrame));
  const isFilmSeen = isLineSeen && measured !== undefined && !passesMatch(answer, measured, bench);
  const filmRate = isFilmSeen ? measured : undefined;
  const flash = filmRate === undefined ? undefined : flashRateHz(filmRate.filmFps, flashesPerFrame);
  const beat = flash === undefined ? undefined : beatHz(flash, cameraFps);
  // The lines of a lamp by themselves tell the delay of the rows too loosely.
  const isFilmLocked = model.families.some((family) => family !== 'lamp');
  // Beside a slow flicker an exposure that hunts hides what all rows share of it.
  const isShared = model.slow === 'hunting' && Math.abs(beat ?? 0) < FASTEST_HUNTING_HZ;
  const readout =
    settled !== undefined && isFilmSeen && isFilmLocked && !isShared
      ? measuredReadout(
          settled.lines,
          settled.refined,
          (flashesPerFrame * (measured.fastestFps - measured.slowestFps)) /
            2 /
            Math.max(1e-9, Math.abs(beat ?? 0)),
        )
      : undefined;
  const isReadoutSeen = readout !== undefined && readout.errorSeconds < READOUT_KNOWN_SECONDS;
  const readoutSeconds = isReadoutSeen ? readout.readoutSeconds : undefined;
  const isHidden = isHiddenBySlow(ripples);
  const [least, most] = isHidden ? [1, 1] : [1 + ripples.least, 1 + ripples.most];
  const hiddenShare = isHidden ? (HIDDEN_PART * ripples.slow) / 2 : 0;
  return {
    kind: 'reading',
    cameraFps,
    missingFrames,
    durationSeconds,
    filmRate,
    flashRateHz: flash,
    beatHz: beat,
    ripple: {
      percent: 100 * (most - least),
      stops: least > 0 ? Math.log2(most / least) : undefined,
      isAtLeast: !ripples.isWhole,
    },
    isEven,
    quietPercent: 100 * Math.max(hiddenShare, quietShare(model, samples)),
    readoutSeconds,
    readoutErrorSeconds: isReadoutSeen ? readout.errorSeconds : undefined,
    bandsDownPicture:
      flash === undefined || readoutSeconds === undefined
        ? undefined
        : bandsDownPicture(flash, readoutSeconds),
    bandDriftPerSecond:
      flash === undefined || readoutSeconds === undefined
        ? undefined
        : bandDriftPerSecond(flash, cameraFps, readoutSeconds),
    speed: settled === undefined || !isFilmSeen ? [] : speedChart(settled.refined, durationSeconds),
    causes,
    advice: gateAdvice(filmRate?.filmFps, cameraFps, readoutSeconds, causes, bench),
  };
}
