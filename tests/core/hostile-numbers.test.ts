import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '../../src/quantity/errors.ts';
import { exampleCalls, moreCalls, resultOf, withOtherNumbers } from './core-calls.ts';

// Every function of the core is called with none, less than none, half of one, no number and no end in
// place of each of its numbers in turn. It answers with numbers, or refuses by name.

const HOSTILE = ['0', '(-1)', '0.5', 'NaN', 'Infinity', '(-Infinity)'];
/** A fraction and a list cannot be made of the others. */
const HOSTILE_IN_A_CLASS = ['0', '(-1)'];
/** Refusals of what prints numbers, and of the classes that hold them. */
const REFUSED_BELOW =
  /^(?:cannot (?:print|write) |Division by Zero|Invalid (?:typed )?array length)/u;

/** Inner sums of a reading, asked millions of times of what the reading itself has made and checked. */
const INNER =
  /\b(?:makeJudge|toldPieces|endPaces|rateSpread|reasonBetween|pathAt|pathStates|measuredReadout|fairCommonWeight|rhythmRate|standsOut|isHeardIn|speedChart|filmPhaseAt|filmRateAt|meanFilmRate|solveSymmetric|fitColumns|weakLampLines|lineHz|bandAttenuation|curveExtremes|smoothed|scaledInverse|phaseModels|familyLines|switchedLevels|cameraSlots)\(/u;
const checked = [...exampleCalls, ...moreCalls].filter(({ call }) => !INNER.test(call));
/** No end by what they mean: no window at all, and no camera rate that is enough. */
const ENDLESS_BY_MEANING =
  /^(?:keepTrust\(.*: result\.halfWindowFrames is -Infinity|neededCameraFps\(.*: result is Infinity)$/u;

/** Where in a result a number is not finite. */
function endless(value: unknown, at = 'result'): readonly string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${at} is ${value}`];
  if (value instanceof Fraction) return endless(value.valueOf(), at);
  if (typeof value === 'string') {
    return /\b(?:NaN|Infinity|undefined)\b/u.test(value) ? [`${at} says “${value}”`] : [];
  }
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) => endless(part, `${at}.${key}`));
}

function faultOf(call: string, path: string): readonly string[] {
  try {
    return endless(resultOf({ path, call }))
      .map((fault) => `${call}: ${fault}`)
      .filter((fault) => !ENDLESS_BY_MEANING.test(fault))
      .slice(0, 1);
  } catch (error) {
    const isRefusal =
      error instanceof OutOfRangeError || REFUSED_BELOW.test((error as Error).message);
    return isRefusal ? [] : [`${call}: ${String(error)}`];
  }
}

describe('a number that no bench has', () => {
  it.each(checked)('is answered with numbers or refused by name: $call', ({ path, call }) => {
    const faults = withOtherNumbers(call, (_value, isMade) =>
      isMade ? HOSTILE_IN_A_CLASS : HOSTILE,
    ).flatMap((each) => faultOf(each, path));
    expect(faults).toEqual([]);
  });

  it('would be told', () => {
    expect(endless({ list: [1, NaN] })).toEqual(['result.list.1 is NaN']);
    expect(endless('crop=NaN:2')).toHaveLength(1);
    expect(endless(new Map())).toEqual([]);
  });
});
