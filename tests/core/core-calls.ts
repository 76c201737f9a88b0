import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Fraction from 'fraction.js';
import ts from 'typescript';
import { projectFolder, readFiles } from '../walls/source-files.ts';
import { exportedFunctions } from './docstrings.ts';
import { evaluateExpression } from './run-docstring-example.ts';

const modules = import.meta.glob<Readonly<Record<string, unknown>>>(
  ['../../src/core/**/*.ts', '../../src/quantity/*.ts'],
  { eager: true },
);
const scope = Object.assign({}, ...Object.values(modules)) as Readonly<Record<string, unknown>>;

/** A call of a function of the core, as its docstring shows it. */
export interface CoreCall {
  readonly path: string;
  readonly call: string;
}

/** The calls that docstrings show. */
export const exampleCalls: readonly CoreCall[] = ['src/core', 'src/quantity']
  .flatMap((folder) => readFiles(folder, ['.ts']))
  .flatMap(exportedFunctions)
  .flatMap(({ path, examples }) =>
    examples.map((text) => ({
      path,
      call: /^([\s\S]*?\))\s*\/\//u.exec(text.trim())?.[1]?.replaceAll(/\s+/gu, ' ') ?? '',
    })),
  )
  .filter(({ call }) => call !== '');

/** Calls of functions whose docstrings show none, because they take or give more than a number. */
export const moreCalls: readonly CoreCall[] = readFileSync(
  join(projectFolder, 'tests/core/more-calls.txt'),
  'utf8',
)
  .split('\n')
  .filter((line) => line !== '')
  .map((call) => ({ path: '', call }));

/** What a call gives; throws what it throws. */
export function resultOf({ path, call }: CoreCall): unknown {
  const own = modules[`../../${path}`] ?? {};
  const known: Record<string, unknown> = {};
  for (const name of new Set(call.match(/\w+/gu))) {
    if (name === 'Fraction') known[name] = Fraction;
    else if (name in own) known[name] = own[name];
    else if (Object.hasOwn(scope, name)) known[name] = scope[name];
  }
  return evaluateExpression(call, known);
}

/**
 * The call with each of its numbers in turn replaced by others; a sign before it is part of it.
 *
 * @param othersOf  what stands in place of a number; `isMade` where it is handed to a class, as in
 *                  `new Fraction(18)`
 */
export function withOtherNumbers(
  call: string,
  othersOf: (value: number, isMade: boolean) => readonly string[],
): readonly string[] {
  const source = ts.createSourceFile('call.ts', call, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node, isMade: boolean): void => {
    if (ts.isNumericLiteral(node)) {
      const [start, end] = [node.getStart(), node.end];
      for (const other of othersOf(Number(node.text), isMade)) {
        found.push(call.slice(0, start) + other + call.slice(end));
      }
    }
    ts.forEachChild(node, (child) => {
      visit(child, isMade || ts.isNewExpression(node));
    });
  };
  visit(source, false);
  return found;
}
