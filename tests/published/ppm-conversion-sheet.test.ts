import { expect, test } from 'vitest';
import { milligramsPerCubicMetre, partsPerMillion } from '../../src/core/vapour-limits.ts';

test('5,000 ppm of carbon dioxide (44 g) are 9,000 mg/m³', () => {
  // 8,998: the sheet rounds to the thousand.
  expect(Math.round(milligramsPerCubicMetre(5000, 44) / 10) * 10).toBe(9000);
});

test('30 mg/m³ of benzene (78 g) are 9.4 ppm', () => {
  expect(partsPerMillion(30, 78)).toBeCloseTo(9.4, 1);
});
