import { expect, test } from 'vitest';
import { waveDepthOfFieldMillimetres } from '../../src/core/gate/lens.ts';

// Notation of the post: NA = m ÷ (2 × effective f-number), λ = 0.00055 mm.
test('ten times at numerical aperture 0.25 is effective f-number 20', () => {
  const effective = 10 / (2 * 0.25);
  expect(effective).toBe(20);
  expect(waveDepthOfFieldMillimetres(effective, 10)).toBeCloseTo(0.0088, 7);
});
