import { expect, test } from 'vitest';
import { heavierThanAir } from '../../src/core/reel/vapour-limits.ts';

test('a vapour of molecular weight 60.1 weighs 2.1 times as much as air', () => {
  expect(heavierThanAir(60.1)).toBeCloseTo(2.1, 1);
});
