// From the entries of the finder to the bench that core searches, and what it finds there.
import { makeLamp } from '../../../core/gate/lamp-flicker.ts';
import {
  canStayDark,
  filmRateSteps,
  findMatches,
  neededCameraFps,
  type FinderBench,
} from '../../../core/gate/match-finder.ts';
import { nearestWorkingFilm } from '../../../core/gate/nearest-film.ts';
import { OutOfRangeError, requireInterval } from '../../../quantity/errors.ts';
import { formatNumber } from '../../../quantity/format.ts';
import type { FinderEntries } from './inputs.ts';

const MOST_FILM_RATES = 200;

/** Settings listed at most. */
const LONGEST_LIST = 12;

function benchOf(entries: FinderEntries): FinderBench {
  const { filmKind, fromFps, toFps, stepFps, exposureKind, lampKind } = entries;
  if (filmKind === 'range') {
    requireInterval('toFps', toFps, { minimum: fromFps, unit: 'frames/s' });
    const smallest = (toFps - fromFps) / (MOST_FILM_RATES - 1);
    if (stepFps < smallest) {
      const least = formatNumber(Math.ceil(smallest * 100) / 100, 4);
      throw new OutOfRangeError(
        'stepFps',
        stepFps,
        `at least ${least} frames/s, because no more than ${MOST_FILM_RATES} film rates are tried`,
      );
    }
  }
  return {
    ...entries,
    filmRates: filmKind === 'range' ? filmRateSteps(fromFps, toFps, stepFps) : entries.filmRates,
    exposureTimes: exposureKind === 'free' ? 'free' : entries.exposureTimes,
    openFraction: entries.openPercent / 100,
    lamp:
      lampKind === 'steady'
        ? undefined
        : makeLamp(lampKind, entries.lampHz, entries.depthPercent, entries.onPercent),
  };
}

/** The settings that work, the first with its ripple; or what comes nearest. */
export function findSettings(entries: FinderEntries) {
  const bench = benchOf(entries);
  const search = findMatches(bench, LONGEST_LIST);
  // A match at exactly the right speed still ripples by the speed error over the open fraction.
  const unavoidablePercent = bench.speedErrorPercent / bench.openFraction;
  const isSpeedTooUnsure = unavoidablePercent > bench.rippleLimitPercent;
  const best = search.best.map((match) => ({
    ...match,
    neededCameraFps: neededCameraFps(match.filmFps, match.exposureSeconds, bench),
  }));
  return {
    ...search,
    best,
    nearMisses: search.nearMisses.map((miss) => ({
      ...miss,
      canStayDark: canStayDark(miss.filmFps, miss.exposureSeconds, bench),
    })),
    unavoidablePercent,
    isSpeedTooUnsure,
    nearest: best.length > 0 || isSpeedTooUnsure ? undefined : nearestWorkingFilm(bench),
  };
}

export type Findings = ReturnType<typeof findSettings>;
/** A setting that works. */
export type BestSetting = Findings['best'][number];
/** A setting that fails. */
export type NearMiss = Findings['nearMisses'][number];
