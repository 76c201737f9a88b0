import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { expectApproved, IS_APPROVING } from '../tools/approved-text.ts';
import { drawnValue } from '../tools/drawn-value.ts';
import { projectFolder } from '../walls/source-files.ts';
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
function variants(call: string, huge: number): readonly string[] {
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
function linesOf({ path, call }: CoreCall, huge: number): readonly string[] {
  return [
    lineOf({ path, call }),
    ...variants(call, huge).map((each) => `  ${lineOf({ path, call: each })}`),
  ];
}

/** `core-gate` for a file in that room. */
const roomOf = ({ path }: CoreCall): string =>
  path === '' ? 'more' : path.startsWith('src/core/') ? `core-${path.split('/')[2]}` : 'quantity';
const calls = [...exampleCalls, ...moreCalls];
const rooms = [...new Set(calls.map(roomOf))];
const fileOf = (room: string): string => `tests/core/approved/examples-${room}.txt`;
const printedOf = (call: CoreCall): readonly string[] =>
  linesOf(call, call.path === '' ? 5000 : HUGE);

/** The approved lines of each call, in the order of the calls of a room. */
const approved = new Map(
  rooms.map((room) => {
    const blocks: string[][] = [];
    for (const line of readFileSync(join(projectFolder, fileOf(room)), 'utf8').split('\n')) {
      if (line === '') continue;
      if (line.startsWith('  ')) blocks.at(-1)?.push(line);
      else blocks.push([line]);
    }
    return [room, blocks];
  }),
);
const cases = rooms.flatMap((room) =>
  calls
    .filter((call) => roomOf(call) === room)
    .map((call, index) => ({ room, name: call.call, call, index })),
);

describe('what the functions of the core give', () => {
  it('has examples to look at', () => {
    expect(exampleCalls.length).toBeGreaterThan(150);
  });

  it.each(rooms)('in %s, as many as were approved', (room) => {
    const all = calls.filter((call) => roomOf(call) === room);
    if (IS_APPROVING) expectApproved(fileOf(room), `${all.flatMap(printedOf).join('\n')}\n`);
    else expect(approved.get(room)?.length).toBe(all.length);
  });

  // One test for each call, so that a failure names it.
  it.skipIf(IS_APPROVING).each(cases)('in $room: $name', ({ room, call, index }) => {
    const lines = printedOf(call);
    // A misspelt name would be refused for ever.
    expect(lines.filter((line) => /is not (?:defined|a function)/u.test(line))).toEqual([]);
    expect(lines, 'read the difference, then npm run approve').toEqual(approved.get(room)?.[index]);
  });
});
