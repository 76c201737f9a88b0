import { describe, it } from 'vitest';
import { expectApproved } from '../tools/approved-text.ts';
import { drawnValue } from '../tools/drawn-value.ts';

// Every table, limit and word that the core gives away, as a person read it: a changed line must be meant
// (npm run approve writes the file again). Sources of the numbers stand in the code beside them.

const modules = import.meta.glob<Readonly<Record<string, unknown>>>(
  ['../../src/core/**/*.ts', '../../src/quantity/*.ts'],
  { eager: true },
);

/** One line for a value; an object or a list of objects takes a line for each part. */
function linesOf(name: string, value: unknown): readonly string[] {
  const isList = Array.isArray(value);
  const isNested =
    typeof value === 'object' && value !== null && Object.getPrototypeOf(value) !== Map.prototype;
  const shown = { significantDigits: 12, longest: 100 };
  if (!isNested || (isList && value.every((part) => typeof part !== 'object'))) {
    return [`${name}: ${drawnValue(value, shown)}`];
  }
  return [
    `${name}:`,
    ...Object.entries(value).map(([key, part]) => `  ${key}: ${drawnValue(part, shown)}`),
  ];
}

describe('the constants of the core', () => {
  it('are as they were read and approved', () => {
    const lines = Object.entries(modules).flatMap(([path, exported]) => {
      const constants = Object.entries(exported).filter(([, value]) => typeof value !== 'function');
      if (constants.length === 0) return [];
      const said = constants
        .sort(([a], [b]) => a.localeCompare(b))
        .flatMap(([name, value]) => linesOf(name, value));
      return [`## ${path.replace('../../', '')}`, ...said, ''];
    });
    expectApproved('tests/core/approved/constants.txt', lines.join('\n'));
  });
});
