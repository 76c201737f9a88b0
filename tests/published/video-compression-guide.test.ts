import { expect, test } from 'vitest';
import { filmPixelMicrometres } from '../../src/core/gate/sampling.ts';

// Appendix on film: 115 pixels a millimetre, printed as 2,921 pixels an inch.
test('115 pixels a millimetre are 2,921 pixels an inch', () => {
  const perInch = 25.4 * 1000 * (1 / filmPixelMicrometres(1, 115));
  expect(perInch).toBeCloseTo(2921, 9);
});
