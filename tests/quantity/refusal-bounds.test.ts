import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { OutOfRangeError, requireInterval } from '../../src/quantity/errors.ts';
import { withSmallInitial } from '../../src/quantity/sentence.ts';

/** What the refusal of a value says is accepted. */
function acceptedInstead(value: number, interval: Parameters<typeof requireInterval>[2]): string {
  try {
    requireInterval('length', value, interval);
  } catch (error) {
    if (error instanceof OutOfRangeError) return error.accepted;
  }
  throw new Error(`${value} was accepted`);
}

describe('the bounds that a refusal names', () => {
  test('are printed in six digits at most', () => {
    expect(acceptedInstead(300, { minimum: 0, maximum: 125.97402597402598, unit: 'mm' })).toBe(
      'a number, at least 0 mm and at most 125.974 mm',
    );
    expect(acceptedInstead(7, { above: 1 / 3, maximum: 2 / 3 })).toBe(
      'a number, more than 0.333334 and at most 0.666666',
    );
    expect(acceptedInstead(0.4, { minimum: 0.1, maximum: 0.3 })).toBe(
      'a number, at least 0.1 and at most 0.3',
    );
    expect(acceptedInstead(0, { minimum: 180076 })).toBe('a number, at least 180076');
  });

  test('are accepted when they are typed', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e5, max: 1e5, noNaN: true }),
        fc.double({ min: 10, max: 1e4, noNaN: true }),
        (minimum, width) => {
          const interval = { minimum, maximum: minimum + width };
          const [least, most] = acceptedInstead(1e9, interval)
            .match(/-?\d[\d.e+-]*/gu)!
            .map(Number);
          expect(requireInterval('length', least!, interval)).toBe(least);
          expect(requireInterval('length', most!, interval)).toBe(most);
        },
      ),
    );
  });
});

test('a gauge keeps its capital within a sentence', () => {
  expect(withSmallInitial('Super 16; no gate for it here')).toBe('Super 16; no gate for it here');
  expect(withSmallInitial('Standard 8')).toBe('Standard 8');
  expect(withSmallInitial('Superb film')).toBe('superb film');
});
