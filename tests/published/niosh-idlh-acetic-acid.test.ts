import { expect, test } from 'vitest';
import { exposureLimit, milligramsPerCubicMetre, VAPOURS } from '../../src/core/vapour-limits.ts';

const acid = VAPOURS['acetic-acid'];

test.each([
  [10, 25],
  [15, 37],
])('%d ppm are %d mg/m³', (ppm, printed) => {
  expect(Math.round(milligramsPerCubicMetre(ppm, acid.molarMassGrams))).toBe(printed);
});

test('transcription: NIOSH has 10 ppm a day and 15 ppm for a short time', () => {
  const { dayPpm, shortPpm } = exposureLimit('acetic-acid', 'niosh');
  expect([dayPpm, shortPpm]).toEqual([10, 15]);
});
