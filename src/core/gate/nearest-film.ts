import { longestWorkingReadout, type Setting } from './complete-setting.ts';
import {
  finderExposures,
  finderShutter,
  makeJudge,
  requireBench,
  type FinderBench,
} from './match-finder.ts';

/** A setting that would work at a film rate the bench does not list, and what it asks for. */
export interface NearestFilm {
  readonly setting: Setting;
  /** Longest readout time with which it works, s, where the bench's own is too long. */
  readonly readoutSeconds: number | undefined;
}

const SLOWEST_FILM_FPS = 8;
const FASTEST_FILM_FPS = 30;
const USUAL_FILM_RATES = [16, 50 / 3, 18, 20, 24, 25];

/** Film rates worth a look, the nearest to the native rate first. */
function filmRatesToTry(bench: FinderBench): readonly number[] {
  const { nativeFps, flashesPerFrame, exposureTimes } = bench;
  const tenths = Array.from(
    { length: (FASTEST_FILM_FPS - SLOWEST_FILM_FPS) * 10 + 1 },
    (_, index) => SLOWEST_FILM_FPS + index / 10,
  );
  const times =
    exposureTimes === 'free' ? bench.cameraRates.map((cameraFps) => 1 / cameraFps) : exposureTimes;
  const matching = times.flatMap((seconds) =>
    [1, 2, 3, 4].map((flashes) => flashes / (flashesPerFrame * seconds)),
  );
  // A list of exposure times is met best at the rates that match it; with any time, tenths will do.
  const all = [...USUAL_FILM_RATES, ...matching, ...(exposureTimes === 'free' ? tenths : [])];
  const gap = (fps: number): number => Math.round(Math.abs(Math.log(fps / nativeFps)) * 1e9);
  return [...new Set(all)]
    .filter((fps) => fps >= SLOWEST_FILM_FPS && fps <= FASTEST_FILM_FPS)
    .sort((a, b) => gap(a) - gap(b) || a - b);
}

/**
 * The film rate nearest to the native one at which the bench's camera rates and exposure times work,
 * for a bench where nothing that it lists does. Where no film rate works with the bench's readout time,
 * the nearest that would with a shorter one.
 *
 * @param bench  what can be set and what is asked for; its film rates are not used
 * @returns the setting; undefined when none works at any film rate between 8 and 30 frames/s
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function nearestWorkingFilm(bench: FinderBench): NearestFilm | undefined {
  requireBench(bench);
  const { exposureTimes, flashesPerFrame } = bench;
  const shutter = finderShutter(bench);
  const rates = filmRatesToTry(bench);
  const first = (asked: FinderBench): Setting | undefined => {
    const judge = makeJudge(asked);
    for (const filmFps of rates) {
      for (const cameraFps of bench.cameraRates) {
        const times =
          exposureTimes === 'free'
            ? finderExposures(filmFps * flashesPerFrame, cameraFps)
            : exposureTimes;
        const exposureSeconds = times.find(
          (seconds) => judge(filmFps, cameraFps, seconds).fault === undefined,
        );
        if (exposureSeconds !== undefined) return { filmFps, cameraFps, exposureSeconds };
      }
    }
    return undefined;
  };
  const setting = first(bench);
  if (setting !== undefined) return { setting, readoutSeconds: undefined };
  const withGlobal = first({ ...bench, readoutSeconds: 0 });
  if (withGlobal === undefined) return undefined;
  const readoutSeconds = longestWorkingReadout(
    withGlobal,
    { shutter, readoutSeconds: 0, rippleLimitPercent: Infinity },
    bench.speedErrorPercent,
  );
  return { setting: withGlobal, readoutSeconds: readoutSeconds ?? 0 };
}
