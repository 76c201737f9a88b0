import { describe, expect, it } from 'vitest';
import { expectApproved } from '../tools/approved-text.ts';
import { drawnValue } from '../tools/drawn-value.ts';
import {
  exampleCalls,
  moreCalls,
  resultOf,
  withOtherNumbers,
  type CoreCall,
} from './core-calls.ts';

// What every function of the core gives at the example of its docstring, in full, and how that moves when
// one of its numbers does: larger, smaller, none, one more of what is counted, or beyond all limits.
// Whether the numbers are right is asked by the other tests; a line that changes here must be meant
// (npm run approve).

const shown = { significantDigits: 8, longest: 10 };
const LONGEST_LINE = 600;
/** Beyond most limits: the refusal then tells them. */
const HUGE = 3e6;

/** The call with each of its numbers in turn put larger, smaller, at none, or one up. */
function variants(call: string, huge = HUGE): readonly string[] {
  return withOtherNumbers(call, (value) => {
    const others = Number.isInteger(value)
      ? [0, value + 1, Math.ceil(value * 1.7), Math.floor(value / 3), -huge, huge]
      : [0, value * 1.37, value * 0.61, -huge, huge];
    return [...new Set(others)]
      .filter((other) => other !== value)
      .map((other) => String(Number(other.toPrecision(6))));
  });
}

function lineOf({ path, call }: CoreCall): string {
  let result: string;
  try {
    result = drawnValue(resultOf({ path, call }), shown);
  } catch (error) {
    result = `refused: ${error instanceof Error ? error.message : String(error)}`;
  }
  return `${call} → ${result}`.replaceAll('\n', '⏎').replaceAll(/\s/gu, ' ').slice(0, LONGEST_LINE);
}

/** A call and its variants, a line each. */
function linesOf({ path, call }: CoreCall, huge?: number): readonly string[] {
  return [
    lineOf({ path, call }),
    ...variants(call, huge).map((each) => `  ${lineOf({ path, call: each })}`),
  ];
}

/** `core-gate` for a file in that room. */
const roomOf = (path: string): string =>
  path.startsWith('src/core/') ? `core-${path.split('/')[2]}` : 'quantity';
const rooms = [...new Set(exampleCalls.map(({ path }) => roomOf(path)))];

describe('what the functions of the core give', () => {
  it('has examples to look at', () => {
    expect(exampleCalls.length).toBeGreaterThan(150);
  });

  it.each(rooms)('in %s', (room) => {
    const lines = exampleCalls
      .filter(({ path }) => roomOf(path) === room)
      .flatMap((each) => linesOf(each));
    expectApproved(`tests/core/approved/examples-${room}.txt`, `${lines.join('\n')}\n`);
  });

  it('where their docstrings show no call', () => {
    const lines = moreCalls.flatMap((each) => linesOf(each, 5000));
    // A misspelt name would be refused for ever.
    expect(lines.filter((line) => /is not (?:defined|a function)/u.test(line))).toEqual([]);
    expectApproved('tests/core/approved/examples-more.txt', `${lines.join('\n')}\n`);
  });
});
