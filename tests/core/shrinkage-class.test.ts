import { describe, expect, test } from 'vitest';
import { isLikelyMiscount, shrinkageClass } from '../../src/core/shrinkage-class.ts';
import { readShrinkage } from '../../src/core/shrinkage.ts';
import { readSources } from '../content/read-content.ts';

describe('a likely miscount', () => {
  test('is another gauge or a dropped pitch, never a film that only shrank', () => {
    expect(isLikelyMiscount(readShrinkage('16mm', 100, 381, 0.5).againstLong.percent)).toBe(true);
    expect(isLikelyMiscount(readShrinkage('super-8', 10, 38.1, 0.5).againstLong.percent)).toBe(
      true,
    );
    expect(isLikelyMiscount(readShrinkage('8mm-type-r', 10, 42.3, 0.5).againstLong.percent)).toBe(
      true,
    );
    expect(isLikelyMiscount(readShrinkage('16mm', 10, 9 * 7.62, 0.5).againstLong.percent)).toBe(
      true,
    );
    for (const percent of [-1, 0, 0.5, 2.5, 4]) expect(isLikelyMiscount(percent)).toBe(false);
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
