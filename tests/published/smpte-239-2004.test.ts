import { expect, test } from 'vitest';
import { convertUnit } from '../../src/quantity/units.ts';

// Scope: pitch of 0.1500 in or 0.1497 in (3.810 mm or 3.802 mm).
test.each([
  ['long', 0.15, 3.81],
  ['short', 0.1497, 3.802],
] as const)('%s pitch: %d in are %d mm', (_which, inch, millimetre) => {
  expect(convertUnit(inch, 'in', 'mm').toFixed(3)).toBe(millimetre.toFixed(3));
});
