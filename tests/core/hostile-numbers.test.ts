import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '../../src/quantity/errors.ts';
import { exampleCalls, moreCalls, resultOf, withOtherNumbers } from './core-calls.ts';

// Every function of the core is called with none, less than none, half of one, no number and no end in
// place of each of its numbers in turn. It answers with numbers, or refuses by name.

const HOSTILE = ['0', '(-1)', '0.5', 'NaN', 'Infinity', '(-Infinity)'];

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

/** Numbers inside `new Fraction(…)` and the like are refused by those classes themselves. */
const isMade = (call: string): boolean =>
  /new \w+\([^()]*(?:\(-[\w.]+\)|NaN|Infinity|\b0\b|0\.5)[^()]*\)/u.test(call);

function faultOf(call: string, path: string): readonly string[] {
  try {
    return endless(resultOf({ path, call }))
      .slice(0, 1)
      .map((fault) => `${call}: ${fault}`);
  } catch (error) {
    const isRefusal =
      error instanceof OutOfRangeError ||
      /^cannot (?:print|write) /u.test((error as Error).message);
    return isRefusal || isMade(call) ? [] : [`${call}: ${String(error)}`];
  }
}

describe('a number that no bench has', () => {
  it('is answered with numbers or refused by name, in every function of the core', () => {
    const faults = [...exampleCalls, ...moreCalls].flatMap(({ path, call }) =>
      withOtherNumbers(call, () => HOSTILE).flatMap((each) => faultOf(each, path)),
    );
    expect(faults).toEqual([]);
  });

  it('would be told', () => {
    expect(endless({ list: [1, NaN] })).toEqual(['result.list.1 is NaN']);
    expect(endless('crop=NaN:2')).toHaveLength(1);
    expect(endless(new Map())).toEqual([]);
    expect(isMade('keepRule(new Fraction(NaN), 2)')).toBe(true);
    expect(isMade('keepRule(new Fraction(18), NaN)')).toBe(false);
  });
});
