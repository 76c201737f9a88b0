import { GAUGES } from '../../../core/reel/gauges.ts';
import {
  shrinkageClass,
  trustInReading,
  type ReadingTrust,
} from '../../../core/reel/shrinkage-class.ts';
import {
  pitchToleranceMillimetres,
  readShrinkage,
  type ShrinkageReading,
} from '../../../core/reel/shrinkage.ts';
import { OutOfRangeError } from '../../../quantity/errors.ts';
import type { Values } from './inputs.ts';

const PLACES = ['measuredMillimetres', 'middleMillimetres', 'endMillimetres'] as const;

/** A place on the reel that was measured, and what it says. */
export interface Place {
  readonly millimetres: number;
  readonly reading: ShrinkageReading;
  readonly trust: ReadingTrust;
}

function placeAt(
  { gauge, pitchCount }: Values,
  millimetres: number,
  errorMillimetres: number,
): Place {
  const reading = readShrinkage(gauge, pitchCount, millimetres, errorMillimetres);
  return { millimetres, reading, trust: trustInReading(reading.mostPercent) };
}

/** A leader is itself new film, so its own tolerance joins the reading error. */
function placeBesideLeader(values: Values): Place {
  const { gauge, pitchCount, leaderPitches, readingErrorMillimetres } = values;
  const millimetres = (GAUGES[gauge].pitch.long.hundredPitches.millimetres * leaderPitches) / 100;
  const error = readingErrorMillimetres + pitchToleranceMillimetres(gauge, leaderPitches);
  try {
    return placeAt(values, millimetres, error);
  } catch (fault) {
    // No length was typed here: the slip is in the count.
    if (!(fault instanceof OutOfRangeError) || fault.argument !== PLACES[0]) throw fault;
    const [least, most] = [Math.ceil(0.4 * pitchCount), Math.floor(2.5 * pitchCount)];
    throw new OutOfRangeError(
      'leaderPitches',
      leaderPitches,
      `${least} to ${most} pitches of leader beside ${pitchCount} of the film`,
    );
  }
}

/** What each place that was measured says, shortest first: that one decides. */
function placesOf(values: Values): readonly [Place, ...Place[]] {
  if (values.method === 'leader') return [placeBesideLeader(values)];
  const places = PLACES.flatMap((key): readonly Place[] => {
    const millimetres = values[key];
    if (millimetres === undefined) return [];
    try {
      return [placeAt(values, millimetres, values.readingErrorMillimetres)];
    } catch (fault) {
      // A slip in one place is named beside its own field.
      const isLength = fault instanceof OutOfRangeError && fault.argument === PLACES[0];
      throw isLength ? new OutOfRangeError(key, millimetres, fault.accepted) : fault;
    }
  });
  const [first, ...others] = places.sort((one, two) => one.millimetres - two.millimetres);
  if (first === undefined) throw new OutOfRangeError(PLACES[0], Number.NaN, 'a length in mm');
  return [first, ...others];
}

/** What was measured: the place that decides, and what stands against it. */
export interface Measured {
  /** The shortest place. */
  readonly worst: Place;
  /** A place that no film can give; whatever the other places say, the reel is measured again. */
  readonly misread?: Place;
  /** Longest less shortest, mm; absent where one place was measured. */
  readonly spreadMillimetres?: number;
  /** Meaning of the class that the reel has at most; absent where a place was misread. */
  readonly classMeaning?: string;
}

/** Asks the core for every place that was measured. */
export function measuredOf(values: Values): Measured {
  const places = placesOf(values);
  const [worst] = places;
  const longest = places.at(-1) ?? worst;
  const misread = places.find(({ trust }) => trust === 'misreading');
  return {
    worst,
    ...(places.length === 1 ? {} : { spreadMillimetres: longest.millimetres - worst.millimetres }),
    ...(misread === undefined
      ? { classMeaning: shrinkageClass(worst.reading.mostPercent).meaning }
      : { misread }),
  };
}
