// From the entries of the finder to the bench that core searches.
import { requireInterval } from '../../../quantity/errors.ts';
import { makeLamp, type LampKind } from '../../../core/gate/lamp-flicker.ts';
import { filmRateSteps, type FinderBench } from '../../../core/gate/match-finder.ts';

const MOST_FILM_RATES = 200;

/** The entries of the finder. */
export interface FinderEntries extends Omit<
  FinderBench,
  'filmRates' | 'exposureTimes' | 'openFraction' | 'lamp'
> {
  readonly filmKind: 'list' | 'range';
  readonly filmRates: readonly number[];
  readonly fromFps: number;
  readonly toFps: number;
  readonly stepFps: number;
  readonly openPercent: number;
  readonly exposureKind: 'steps' | 'free';
  readonly exposureTimes: readonly number[];
  readonly lampKind: 'steady' | LampKind;
  readonly lampHz: number;
  readonly depthPercent: number;
  readonly onPercent: number;
}

export function benchOf(entries: FinderEntries): FinderBench {
  const { filmKind, fromFps, toFps, stepFps, exposureKind, lampKind } = entries;
  if (filmKind === 'range') {
    requireInterval('toFps', toFps, { minimum: fromFps, unit: 'frames/s' });
    const smallest = (toFps - fromFps) / (MOST_FILM_RATES - 1);
    requireInterval('stepFps', stepFps, { minimum: smallest, unit: 'frames/s' });
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
