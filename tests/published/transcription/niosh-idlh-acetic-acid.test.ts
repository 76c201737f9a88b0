import { expect, test } from 'vitest';
import { exposureLimit } from '../../../src/core/reel/vapour-limits.ts';

test('NIOSH has 10 ppm a day and 15 ppm for a short time', () => {
  const { dayPpm, shortPpm } = exposureLimit('acetic-acid', 'niosh');
  expect([dayPpm, shortPpm]).toEqual([10, 15]);
});
