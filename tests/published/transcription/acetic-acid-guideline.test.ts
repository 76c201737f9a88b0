import { expect, test } from 'vitest';
import { exposureLimit, VAPOURS } from '../../../src/core/reel/vapour-limits.ts';

test('acetic acid has a molecular weight of 60.1 and a specific gravity of 1.05', () => {
  const { molarMassGrams, gramsPerMillilitre } = VAPOURS['acetic-acid'];
  expect([molarMassGrams, gramsPerMillilitre]).toEqual([60.1, 1.05]);
});

test('its smell is noticed from 0.21 to 1.0 ppm, a tenth of the limit of the day or less', () => {
  const highestOdourPpm = 1;
  expect(exposureLimit('acetic-acid', 'strictest').dayPpm / highestOdourPpm).toBe(10);
});
