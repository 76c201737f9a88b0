import { expect, test } from 'vitest';
import { convertUnit } from '../../src/quantity/units.ts';

// Scope: pitch of 0.2994 in or 0.3000 in (7.605 mm or 7.620 mm).
test.each([
  ['short', 0.2994, 7.605],
  ['long', 0.3, 7.62],
] as const)('%s pitch of 16 mm: %d in are %d mm', (_which, inch, millimetre) => {
  expect(convertUnit(inch, 'in', 'mm').toFixed(3)).toBe(millimetre.toFixed(3));
});
