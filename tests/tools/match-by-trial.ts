import type { FinderBench } from '../../src/core/gate/match-finder.ts';
import { makeGateLight } from '../../src/core/gate/gate-light.ts';
import { exposureRipple } from '../../src/core/gate/ripple.ts';
import { closedSeconds, makeEqualShutter } from '../../src/core/gate/shutter.ts';
import { smallestCameraFps } from '../../src/core/gate/whole-frames.ts';

/** A combination judged the long way. */
export interface TriedMatch {
  readonly filmFps: number;
  readonly cameraFps: number;
  readonly exposureSeconds: number;
  readonly worstRipplePercent: number;
  readonly fault: 'exposure-too-long' | 'readout-too-long' | 'ripple' | 'blended' | undefined;
}

/**
 * Largest ripple over a range of film rates from the general, exact ripple of the waveform. As a
 * function of the film rate it has kinks only where the exposure ends at an edge of the light when it
 * starts at one, and no peak between two kinks, so the ends and all kinks are tried.
 */
export function worstRippleByTrial(
  filmFps: number,
  exposureSeconds: number,
  bench: Pick<FinderBench, 'flashesPerFrame' | 'openFraction' | 'speedErrorPercent'>,
): number {
  const { flashesPerFrame, openFraction } = bench;
  const error = bench.speedErrorPercent / 100;
  const slowest = filmFps * (1 - error);
  const fastest = filmFps * (1 + error);
  const rates = [slowest, filmFps, fastest];
  const mostPeriods = fastest * flashesPerFrame * exposureSeconds;
  const kinks = error === 0 ? [] : [0, openFraction, 1 - openFraction];
  for (let whole = 0; whole <= mostPeriods; whole += 1) {
    for (const kink of kinks) {
      const rate = (whole + kink) / (flashesPerFrame * exposureSeconds);
      if (rate > slowest && rate < fastest) rates.push(rate);
    }
  }
  const shutter = makeEqualShutter(flashesPerFrame, openFraction);
  return Math.max(
    ...rates.map((rate) => exposureRipple(makeGateLight(rate, shutter), exposureSeconds).percent),
  );
}

function timesOnOffer(bench: FinderBench, filmFps: number, cameraFps: number): readonly number[] {
  if (bench.exposureTimes !== 'free') return bench.exposureTimes;
  const times: number[] = [];
  for (let flashes = 1; flashes <= 12; flashes += 1) {
    const time = flashes / (filmFps * bench.flashesPerFrame);
    // As a camera shows it: one over four digits.
    const marked = 1 / Number(String((1 / time).toPrecision(4)));
    if (flashes === 1 || time * cameraFps <= 1 + 1e-6) times.push(marked);
  }
  return times;
}

/** Judges every combination with the general functions, in the order of the lists. */
export function judgeAllByTrial(bench: FinderBench): readonly TriedMatch[] {
  const tried: TriedMatch[] = [];
  const error = bench.speedErrorPercent / 100;
  for (const filmFps of bench.filmRates) {
    const fastest = filmFps * (1 + error);
    const closed = closedSeconds(fastest, bench.flashesPerFrame, bench.openFraction);
    // The ripple does not depend on the camera rate, so a fixed list of times is judged once only.
    const known = new Map<number, number>();
    for (const cameraFps of bench.cameraRates) {
      for (const exposureSeconds of timesOnOffer(bench, filmFps, cameraFps)) {
        const worstRipplePercent =
          known.get(exposureSeconds) ?? worstRippleByTrial(filmFps, exposureSeconds, bench);
        known.set(exposureSeconds, worstRipplePercent);
        const needed =
          smallestCameraFps(
            fastest,
            closed,
            exposureSeconds,
            bench.readoutSeconds,
            closedSeconds(filmFps * (1 - error), bench.flashesPerFrame, bench.openFraction),
          ) ?? Infinity;
        const fault =
          exposureSeconds * cameraFps > 1 + 1e-9
            ? 'exposure-too-long'
            : (bench.readoutSeconds ?? 0) * cameraFps > 1 + 1e-9
              ? 'readout-too-long'
              : worstRipplePercent > bench.rippleLimitPercent * (1 + 1e-9)
                ? 'ripple'
                : needed > cameraFps * (1 + 1e-9)
                  ? 'blended'
                  : undefined;
        tried.push({ filmFps, cameraFps, exposureSeconds, worstRipplePercent, fault });
      }
    }
  }
  return tried;
}

/** The usable combinations in order, by sorting them all on the printed criteria. */
export function rankByTrial(
  tried: readonly TriedMatch[],
  bench: FinderBench,
): readonly TriedMatch[] {
  const nine = (value: number): number => Math.round(value * 1e9);
  const criteria = (match: TriedMatch): readonly number[] => [
    Math.ceil(match.worstRipplePercent * 2 - 1e-7),
    nine(Math.abs(match.filmFps / bench.nativeFps - 1) * 100),
    -nine(match.exposureSeconds * bench.openFraction),
    nine(match.cameraFps),
    nine(match.filmFps),
  ];
  const keyed = tried
    .filter(({ fault }) => fault === undefined)
    .map((match) => ({ match, keys: criteria(match) }));
  keyed.sort((a, b) => {
    const at = a.keys.findIndex((key, index) => key !== b.keys[index]);
    return at < 0 ? 0 : (a.keys[at] ?? 0) - (b.keys[at] ?? 0);
  });
  return keyed.map(({ match }) => match);
}
