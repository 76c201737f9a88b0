import { expect, test } from 'vitest';
import { flashRateHz } from '../../../src/core/gate/flash-rate.ts';

test('entry “projector”: each frame shown twice at 24 frames/s reaches the least rate of 48', () => {
  expect(flashRateHz(24, 2)).toBe(48);
  expect(flashRateHz(24, 1)).toBeLessThan(48);
  // Silent film of 16 frames/s needs a third blade for the same.
  expect(flashRateHz(16, 2)).toBeLessThan(48);
  expect(flashRateHz(16, 3)).toBe(48);
});
