import { expect, test } from 'vitest';
import { flashRateHz } from '../../src/core/flash-rate.ts';

test('figure 1.8: 24 frames/s with three intervals of darkness give 72, above 30 to 50', () => {
  expect(flashRateHz(24, 3)).toBe(72);
  expect(flashRateHz(24, 1)).toBeLessThan(30);
  expect(flashRateHz(24, 3)).toBeGreaterThan(50);
});
