import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Fraction from 'fraction.js';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { expectApproved } from '../tools/approved-text.ts';
import { drawnValue } from '../tools/drawn-value.ts';
import { projectFolder, readFiles } from '../walls/source-files.ts';
import { exportedFunctions } from './docstrings.ts';
import { evaluateExpression } from './run-docstring-example.ts';

// What every function of the core gives at the example of its docstring, in full, and how that moves when
// one of its numbers does: larger, smaller, none, one more of what is counted, or beyond all limits.
// Whether the numbers are right is asked by the other tests; a line that changes here must be meant
// (npm run approve).

const modules = import.meta.glob<Readonly<Record<string, unknown>>>(
  ['../../src/core/**/*.ts', '../../src/quantity/*.ts'],
  { eager: true },
);
const scope = Object.assign({}, ...Object.values(modules)) as Readonly<Record<string, unknown>>;

const shown = { significantDigits: 8, longest: 10 };
const LONGEST_LINE = 600;
/** Beyond most limits: the refusal then tells them. */
const HUGE = 3e7;

const examples = ['src/core', 'src/quantity']
  .flatMap((folder) => readFiles(folder, ['.ts']))
  .flatMap(exportedFunctions)
  .flatMap(({ path, name, examples: texts }) =>
    texts.map((text) => ({
      path,
      name,
      call: /^([\s\S]*?\))\s*\/\//u.exec(text.trim())?.[1]?.replaceAll(/\s+/gu, ' ') ?? '',
    })),
  )
  .filter(({ call }) => call !== '');

/** Calls of functions whose docstrings show none, because they take or give more than a number. */
const moreCalls = readFileSync(join(projectFolder, 'tests/core/more-calls.txt'), 'utf8')
  .split('\n')
  .filter((line) => line !== '');

/** The call with each of its numbers in turn put larger, smaller, at none, or one up. */
function variants(call: string, huge = HUGE): readonly string[] {
  const source = ts.createSourceFile('call.ts', call, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isNumericLiteral(node)) {
      const value = Number(node.text);
      const [start, end] = [node.getStart(), node.end];
      const others = Number.isInteger(value)
        ? [0, value + 1, Math.ceil(value * 1.7), Math.floor(value / 3), -huge, huge]
        : [0, value * 1.37, value * 0.61, -huge, huge];
      for (const other of new Set(others)) {
        if (other !== value) {
          found.push(call.slice(0, start) + String(Number(other.toPrecision(6))) + call.slice(end));
        }
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

function lineOf(call: string, own: Readonly<Record<string, unknown>>): string {
  let result: string;
  try {
    result = drawnValue(evaluateExpression(call, { ...scope, ...own, Fraction }), shown);
  } catch (error) {
    result = `refused: ${error instanceof Error ? error.message : String(error)}`;
  }
  return `${call} → ${result}`.replaceAll('\n', '⏎').replaceAll(/\s/gu, ' ').slice(0, LONGEST_LINE);
}

/** `core-gate` for a file in that room. */
const roomOf = (path: string): string =>
  path.startsWith('src/core/') ? `core-${path.split('/')[2]}` : 'quantity';
const rooms = [...new Set(examples.map(({ path }) => roomOf(path)))];

describe('what the functions of the core give', () => {
  it('has examples to look at', () => {
    expect(examples.length).toBeGreaterThan(150);
  });

  it.each(rooms)('in %s', (room) => {
    const lines = examples
      .filter(({ path }) => roomOf(path) === room)
      .flatMap(({ path, call }) => {
        const own = modules[`../../${path}`] ?? {};
        return [lineOf(call, own), ...variants(call).map((each) => `  ${lineOf(each, own)}`)];
      });
    expectApproved(`tests/core/approved/examples-${room}.txt`, `${lines.join('\n')}\n`);
  });

  it('where their docstrings show no call', () => {
    const lines = moreCalls.flatMap((call) => [
      lineOf(call, {}),
      ...variants(call, 5000).map((each) => `  ${lineOf(each, {})}`),
    ]);
    // A misspelt name would be refused for ever.
    expect(lines.filter((line) => /is not (?:defined|a function)/u.test(line))).toEqual([]);
    expectApproved('tests/core/approved/examples-more.txt', `${lines.join('\n')}\n`);
  });
});
