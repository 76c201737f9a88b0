import { describe, expect, test } from 'vitest';
import { shrinkageClass, trustInReading } from '../../../src/core/reel/shrinkage-class.ts';
import { readShrinkage } from '../../../src/core/reel/shrinkage.ts';
import { readSources } from '../../content/read-content.ts';

describe('trust in a reading', () => {
  test.each([
    [-1.2, 'misreading'],
    [-0.31, 'misreading'],
    [-0.3, 'plausible'],
    [0, 'plausible'],
    [0.8, 'plausible'],
    [5, 'plausible'],
    [5.1, 'doubtful'],
    [9.9, 'doubtful'],
    [10, 'misreading'],
    [40, 'misreading'],
  ])('calls %d %% %s', (percent, trust) => {
    expect(trustInReading(percent)).toBe(trust);
  });

  test.each([
    ['8 mm type R measured as Super 8', 'super-8', 100, 381],
    ['Super 8 measured as 8 mm type R', '8mm-type-r', 100, 423.42],
    ['8 mm measured as 16 mm', '16mm', 100, 381],
    ['a hundred and one pitches of new film', 'super-8', 100, 427.65],
  ] as const)('finds %s', (_, gauge, pitches, millimetres) => {
    const { mostPercent } = readShrinkage(gauge, pitches, millimetres, 0.5);
    expect(trustInReading(mostPercent)).toBe('misreading');
  });

  test('never calls new film of either pitch a misreading, whatever its tolerance', () => {
    for (const length of [422.66 - 0.43, 422.66, 423.42, 423.42 + 0.43]) {
      const { mostPercent } = readShrinkage('super-8', 100, length, 0.2);
      expect(trustInReading(mostPercent)).toBe('plausible');
    }
  });
});

describe('the classes of shrinkage', () => {
  test.each([
    [-0.4, 'within-error'],
    [0.29, 'within-error'],
    [0.3, 'slight'],
    [0.79, 'slight'],
    [0.8, 'at-limit'],
    [1, 'one'],
    [1.5, 'one-and-a-half'],
    [2, 'two'],
    [2.5, 'beyond'],
  ])('put %d %% into %s', (percent, id) => {
    expect(shrinkageClass(percent).id).toBe(id);
  });

  test('name known sources', () => {
    const known = new Set(readSources().map(({ id }) => id));
    for (const percent of [0, 0.5, 0.9, 1.2, 1.7, 2.2, 4]) {
      const { sources } = shrinkageClass(percent);
      expect(sources.length).toBeGreaterThan(0);
      expect(sources.filter((id) => !known.has(id))).toEqual([]);
    }
  });
});
