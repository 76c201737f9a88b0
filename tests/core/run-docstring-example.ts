import Fraction from 'fraction.js';

/** What an example came to. */
export type ExampleResult = { readonly ok: true } | { readonly ok: false; readonly reason: string };

/** Value of an expression made of literals and calls of the names in scope. */
export function evaluateExpression(
  expression: string,
  scope: Readonly<Record<string, unknown>>,
): unknown {
  // The expressions are those of our own docstrings.
  // eslint-disable-next-line no-new-func
  const run = new Function(...Object.keys(scope), `'use strict'; return (${expression});`) as (
    ...values: readonly unknown[]
  ) => unknown;
  return run(...Object.values(scope));
}

/** Half a unit in the last printed digit, but never looser than half a percent. */
function toleranceOf(printed: string, value: number): number {
  const decimals = /\.(\d+)/u.exec(printed)?.[1]?.length ?? 0;
  return Math.min(0.5 * 10 ** -decimals, 0.005 * Math.abs(value)) * (1 + 1e-9);
}

function matches(
  actual: unknown,
  expected: unknown,
  isClose: (actual: number, expected: number) => boolean,
): boolean {
  if (typeof expected === 'number' && typeof actual === 'number') {
    return Object.is(actual, expected) || isClose(actual, expected);
  }
  if (expected instanceof Fraction) return actual instanceof Fraction && actual.equals(expected);
  if (Array.isArray(expected)) {
    return (
      Array.isArray(actual) &&
      actual.length === expected.length &&
      expected.every((item, index) => matches(actual[index], item, isClose))
    );
  }
  if (typeof expected === 'object' && expected !== null) {
    // An example may show the part of a result that matters.
    return (
      typeof actual === 'object' &&
      actual !== null &&
      Object.entries(expected).every(([key, item]) =>
        matches((actual as Record<string, unknown>)[key], item, isClose),
      )
    );
  }
  // Formatters print no-break spaces, which docstrings write as ordinary ones.
  if (typeof expected === 'string' && typeof actual === 'string') {
    return actual.replaceAll(/\s/gu, ' ') === expected.replaceAll(/\s/gu, ' ');
  }
  return Object.is(actual, expected);
}

function show(value: unknown): string {
  return typeof value === 'object'
    ? JSON.stringify(value, (_key, item: unknown) =>
        item instanceof Fraction ? item.toFraction() : item,
      )
    : String(value);
}

/**
 * Runs `name(arguments) // value` or `// ≈ value`; a note in brackets may follow the value. After ≈
 * a number is held to half a unit in its last printed digit (half a percent at most), numbers inside
 * an object to half a percent.
 */
export function runDocstringExample(
  example: string,
  name: string,
  exported: Readonly<Record<string, unknown>>,
): ExampleResult {
  const parts = /^([\s\S]*?\))\s*\/\/\s*(≈\s*)?([\s\S]+)$/u.exec(example.trim());
  if (parts === null) return { ok: false, reason: 'it is not of the form name(…) // value' };
  const [, call = '', approximate, note = ''] = parts;
  if (!call.startsWith(`${name}(`)) return { ok: false, reason: `it does not call ${name}` };
  const isExpression = /^(?:\{|\[|new )/u.test(note);
  const printed = isExpression ? note : note.replace(/\s+\([^)]*\)$/u, '');
  const scope = { ...exported, Fraction };
  try {
    const expected = evaluateExpression(printed.replace(/^−/u, '-'), scope);
    const actual = evaluateExpression(call, scope);
    const isClose = (given: number, wanted: number): boolean =>
      approximate !== undefined &&
      Math.abs(given - wanted) <=
        (isExpression ? 0.005 * Math.abs(wanted) : toleranceOf(printed, wanted));
    return matches(actual, expected, isClose)
      ? { ok: true }
      : { ok: false, reason: `it gives ${show(actual)}` };
  } catch (error) {
    return { ok: false, reason: String(error) };
  }
}
