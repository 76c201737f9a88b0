import { USUAL_CAMERA_RATES } from './camera-rates.ts';
import {
  longestWorkingReadout,
  markedExposureSeconds,
  settingFault,
  shutterRipplePercent,
  type Setting,
  type SettingBench,
} from './complete-setting.ts';
import type { Shutter } from './shutter.ts';

/** How far the advice goes from what is set now. */
export type AdvisedChange = 'none' | 'exposure' | 'camera' | 'film' | 'far-film';

/** One complete setting to set, or the nearest that would do and the readout that it asks for. */
export type Advice =
  | { readonly kind: 'works'; readonly setting: Setting; readonly change: AdvisedChange }
  | {
      readonly kind: 'needs-readout';
      readonly setting: Setting;
      readonly change: AdvisedChange;
      /** Longest readout time with which it works, s. */
      readonly readoutSeconds: number;
    }
  | {
      readonly kind: 'leaves-ripple';
      readonly setting: Setting;
      readonly change: AdvisedChange;
      /** Least ripple that these blades leave where whole frames are sure, %. */
      readonly ripplePercent: number;
    }
  | { readonly kind: 'none' };

/**
 * Whole frames of advice stay sure while the film rate is off by this, either way, %. Common practice,
 * no source: what a measured and warm projector holds.
 */
export const ADVICE_SPEED_ERROR_PERCENT = 0.5;

/** A speed knob or a change of pulley reaches this far, %. Common practice, no source. */
export const NUDGE_PERCENT = 10;

/** No film rate within reach is farther than this; a little more, for what rounding may do. */
const NUDGE_DISTANCE = 1e-6 - Math.log(1 - NUDGE_PERCENT / 100);

/** Film rates that the farther search goes through, frames/s. */
const SLOWEST_FILM_FPS = 8;
const FASTEST_FILM_FPS = 30;

const USUAL_FILM_RATES = [16, 50 / 3, 18, 20, 24, 25];

/** Flashes tried at most in one exposure. */
const MOST_FLASHES = 12;

const distance = (a: number, b: number): number => Math.abs(Math.log(a / b));

/** Numbers without repeats, the nearest to one of them first, the smaller of two equally near. */
function nearestFirst(values: readonly number[], to: number): readonly number[] {
  return [...new Set(values)]
    .map((value) => ({ value, rounded: Math.round(distance(value, to) * 1e9) }))
    .sort((a, b) => a.rounded - b.rounded || a.value - b.value)
    .map(({ value }) => value);
}

/** Times of so many whole flashes, the nearest to a time first, each with its flashes. */
function matchedExposures(
  flashRate: number,
  flashCounts: readonly number[],
  nearSeconds: number,
): readonly { readonly exposureSeconds: number; readonly flashes: number }[] {
  const flashesIn = new Map(
    flashCounts.map((flashes) => [markedExposureSeconds(flashes / flashRate), flashes]),
  );
  return nearestFirst([...flashesIn.keys()], nearSeconds).map((exposureSeconds) => ({
    exposureSeconds,
    flashes: flashesIn.get(exposureSeconds) ?? 0,
  }));
}

/** Film rates to try between two: tenths, the usual ones, and those that fill camera frames evenly. */
function filmRatesBetween(
  slowestFps: number,
  fastestFps: number,
  flashesPerFrame: number,
): readonly number[] {
  const tenths = Array.from(
    { length: Math.max(0, Math.floor(fastestFps * 10) - Math.ceil(slowestFps * 10) + 1) },
    (_, index) => (Math.ceil(slowestFps * 10) + index) / 10,
  );
  const filling = USUAL_CAMERA_RATES.map((rate) => rate.valueOf() / flashesPerFrame);
  return [...tenths, ...USUAL_FILM_RATES, ...filling].filter(
    (fps) => fps >= slowestFps && fps <= fastestFps,
  );
}

/** Rates worth trying, each list with the nearest to what is set now first. */
interface RatesToTry {
  readonly filmRates: readonly number[];
  readonly cameraRates: readonly number[];
}

function ratesToTry(now: Setting, shutter: Shutter): RatesToTry {
  const usual = USUAL_CAMERA_RATES.map((rate) => rate.valueOf());
  const nudge = 1 + NUDGE_PERCENT / 100;
  const filmRates = filmRatesBetween(
    Math.min(SLOWEST_FILM_FPS, now.filmFps / nudge),
    Math.max(FASTEST_FILM_FPS, now.filmFps * nudge),
    shutter.sectors.length,
  );
  return {
    filmRates: nearestFirst([now.filmFps, ...filmRates], now.filmFps),
    cameraRates: nearestFirst([now.cameraFps, ...usual], now.cameraFps),
  };
}

/**
 * Every complete setting worth trying, those that change least first: the exposure time; then the
 * camera rate; then the film rate within what a projector can be nudged to; then any film rate.
 */
function* settingsToTry(
  now: Setting,
  shutter: Shutter,
  flashCounts: readonly number[],
  { filmRates, cameraRates }: RatesToTry,
): Generator<{ readonly setting: Setting; readonly change: AdvisedChange }, void, void> {
  if (flashCounts.length === 0) return;
  const nudge = 1 + NUDGE_PERCENT / 100;
  for (const filmFps of filmRates) {
    const isNear = Math.abs(filmFps / now.filmFps - 1) <= nudge - 1 + 1e-9;
    const flashRate = filmFps * shutter.sectors.length;
    const times = matchedExposures(flashRate, flashCounts, now.exposureSeconds);
    for (const cameraFps of cameraRates) {
      const cameraChange = cameraFps === now.cameraFps ? 'exposure' : 'camera';
      const change = filmFps === now.filmFps ? cameraChange : isNear ? 'film' : 'far-film';
      for (const { exposureSeconds, flashes } of times) {
        // The check of the setting decides; this only leaves out what is far too long.
        if (flashes * cameraFps > flashRate * (1 + 1e-6)) continue;
        yield { setting: { filmFps, cameraFps, exposureSeconds }, change };
      }
    }
  }
}

/** The first setting that works with exposures of so many flashes, or that would with a readout. */
function searchSettings(
  now: Setting,
  bench: SettingBench,
  flashCounts: readonly number[],
  rates: RatesToTry,
): Advice {
  let fallback: Extract<Advice, { kind: 'needs-readout' }> | undefined;
  for (const { setting, change } of settingsToTry(now, bench.shutter, flashCounts, rates)) {
    // A shorter readout at a film rate within reach is the better advice than a far film rate.
    if (change === 'far-film' && fallback !== undefined && fallback.change !== 'far-film') break;
    const readoutSeconds = longestWorkingReadout(setting, bench, ADVICE_SPEED_ERROR_PERCENT);
    if (readoutSeconds === undefined) continue;
    const readout = bench.readoutSeconds ?? 1 / setting.cameraFps;
    if (readout <= readoutSeconds * (1 + 1e-9)) return { kind: 'works', setting, change };
    const isSameFilm = fallback === undefined || fallback.setting.filmFps === setting.filmFps;
    if (isSameFilm && readoutSeconds > (fallback?.readoutSeconds ?? -1)) {
      fallback = { kind: 'needs-readout', setting, change, readoutSeconds };
    }
  }
  return fallback ?? { kind: 'none' };
}

/**
 * One complete setting that works, the one that changes least; checked by {@link settingFault} like
 * everything that is set by hand. Where none does, the nearest that would, and what it lacks: a shorter
 * readout, or blades alike.
 *
 * Model: exposures of whole flashes, as a camera shows them; the camera rate in use and the usual ones;
 * film rates in tenths. Whole frames must stay sure with the film rate
 * {@link ADVICE_SPEED_ERROR_PERCENT} off. The ripple of k flashes does not depend on the film rate, so
 * counts of flashes that can never meet the limit are left out at once.
 *
 * @param now    what is set now
 * @param bench  what a setting is judged by
 * @returns the advice; kind `none` when not even a global shutter helps at any film rate
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function adviseSetting(now: Setting, bench: SettingBench): Advice {
  if (settingFault(now, bench) === undefined) {
    return { kind: 'works', setting: now, change: 'none' };
  }
  const { shutter } = bench;
  const ripples = Array.from({ length: MOST_FLASHES }, (_, index) => {
    const flashes = index + 1;
    return { flashes, percent: shutterRipplePercent(shutter, 1, flashes / shutter.sectors.length) };
  });
  const rates = ratesToTry(now, shutter);
  const even = ripples.filter(({ percent }) => percent <= bench.rippleLimitPercent);
  const advice = searchSettings(
    now,
    bench,
    even.map(({ flashes }) => flashes),
    rates,
  );
  if (advice.kind !== 'none') return advice;

  const uneven = ripples
    .filter(({ percent }) => percent > bench.rippleLimitPercent)
    .sort((a, b) => a.percent - b.percent);
  const anyRipple = { ...bench, rippleLimitPercent: Infinity };
  const inReach = rates.filmRates.filter((fps) => distance(fps, now.filmFps) <= NUDGE_DISTANCE);
  for (const { flashes } of uneven) {
    const withRipple = searchSettings(now, anyRipple, [flashes], { ...rates, filmRates: inReach });
    if (withRipple.kind !== 'works' || withRipple.change === 'far-film') continue;
    const { setting, change } = withRipple;
    const ripplePercent = shutterRipplePercent(shutter, setting.filmFps, setting.exposureSeconds);
    return { kind: 'leaves-ripple', setting, change, ripplePercent };
  }
  return { kind: 'none' };
}
