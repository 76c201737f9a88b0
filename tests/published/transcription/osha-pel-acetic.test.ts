import { expect, test } from 'vitest';
import { exposureLimit } from '../../../src/core/reel/vapour-limits.ts';

test('acetic acid has 10 ppm over a shift and no short limit of OSHA', () => {
  const { dayPpm, shortPpm, standing } = exposureLimit('acetic-acid', 'osha');
  expect([dayPpm, shortPpm, standing]).toEqual([10, undefined, 'in force']);
});

test('complaints came below 10 ppm: the sheet says care well before that', () => {
  expect(exposureLimit('acetic-acid', 'osha').note).toContain('below 10 ppm');
});
