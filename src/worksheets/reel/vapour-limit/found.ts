import {
  explosiveSharePercent,
  exposureLimit,
  heavierThanAir,
  milligramsPerCubicMetre,
  partsPerMillion,
  steadyMilligramsPerCubicMetre,
  VAPOURS,
  type Vapour,
} from '../../../core/reel/vapour-limits.ts';
import { OutOfRangeError } from '../../../quantity/errors.ts';
import type { Values } from './inputs.ts';

/** The limit that the sheet compares with, and where it is from. */
interface ChosenLimit {
  readonly dayPpm: number;
  readonly shortPpm?: number | undefined;
  readonly from: string;
  readonly note: string;
}

function chosenLimit({ vapour, limit, ownLimitPpm }: Values): ChosenLimit {
  if (limit === 'own') {
    if (ownLimitPpm === undefined) {
      throw new OutOfRangeError('ownLimitPpm', '', 'the limit of your country in ppm, such as 200');
    }
    return { dayPpm: ownLimitPpm, from: 'typed by you', note: 'Write down where you read it' };
  }
  const { dayPpm, shortPpm, publisher, year, standing, note } = exposureLimit(vapour, limit);
  return { dayPpm, shortPpm, from: `${publisher} (${year}), ${standing}`, note };
}

/** A reading counts more than an estimate. */
function ppmOf(values: Values, { gramsPerMillilitre, molarMassGrams }: Vapour): number {
  if (values.readingPpm !== undefined) return values.readingPpm;
  const milligrams = steadyMilligramsPerCubicMetre(
    values.millilitresPerHour,
    gramsPerMillilitre,
    values.roomCubicMetres,
    values.airChangesPerHour,
  );
  return partsPerMillion(milligrams, molarMassGrams);
}

/** What is in the air, and the limits that it is held against. */
export function vapourInRoom(values: Values) {
  const vapour: Vapour = VAPOURS[values.vapour];
  const { molarMassGrams, lowerExplosivePercent } = vapour;
  const limit = chosenLimit(values);
  const ppm = ppmOf(values, vapour);
  return {
    vapour,
    limit,
    strictest: exposureLimit(values.vapour, 'strictest'),
    ppm,
    isMeasured: values.readingPpm !== undefined,
    milligramsPerCubicMetre: milligramsPerCubicMetre(ppm, molarMassGrams),
    dayLimitMilligramsPerCubicMetre: milligramsPerCubicMetre(limit.dayPpm, molarMassGrams),
    share: ppm / limit.dayPpm,
    /** Share of the explosive limit, %; undefined where none was read. */
    explosivePercent:
      lowerExplosivePercent === undefined
        ? undefined
        : explosiveSharePercent(ppm, lowerExplosivePercent),
    timesAir: heavierThanAir(molarMassGrams),
  };
}

export type VapourInRoom = ReturnType<typeof vapourInRoom>;
