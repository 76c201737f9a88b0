import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  ACID_LEVELS,
  acidLevelEntry,
  cautiousAcidLevel,
} from '../../../src/core/reel/acid-level.ts';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';

describe('acid levels', () => {
  test('are the five published ones, in rising order', () => {
    expect(ACID_LEVELS.map(({ level }) => level)).toEqual([0, 1, 1.5, 2, 3]);
  });

  test('have a condition and an action each', () => {
    for (const { level } of ACID_LEVELS) {
      const entry = acidLevelEntry(level);
      expect(entry.condition).not.toBe('');
      expect(entry.action).not.toBe('');
    }
  });

  test('say that the highest one is partly from memory', () => {
    expect(acidLevelEntry(3).status).toBe('memory');
    expect(acidLevelEntry(2).status).toBe('seen');
  });

  test.each([0.5, 1.25, 2.5, -1, 4, Number.NaN])('have no entry for %d', (level) => {
    expect(() => acidLevelEntry(level)).toThrow(OutOfRangeError);
  });

  test('round a shade up, never down, and never further than needed', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 3, noNaN: true }), (shade) => {
        const level = cautiousAcidLevel(shade);
        expect(level).toBeGreaterThanOrEqual(shade);
        expect(ACID_LEVELS.some((entry) => entry.level >= shade && entry.level < level)).toBe(
          false,
        );
      }),
    );
    expect(() => cautiousAcidLevel(3.1)).toThrow(OutOfRangeError);
    expect(() => cautiousAcidLevel(-0.1)).toThrow(OutOfRangeError);
  });
});
