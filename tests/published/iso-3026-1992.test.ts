import { expect, test } from 'vitest';
import { convertUnit } from '../../src/quantity/units.ts';

// Title: 2R-4.227 (1664) or 5R-4.234 (1667), the pitch in mm and in ten-thousandths of an inch.
test.each([
  [4.227, 1664],
  [4.234, 1667],
])('%d mm is the pitch called %i', (millimetre, tenThousandths) => {
  expect(convertUnit(tenThousandths / 10_000, 'in', 'mm').toFixed(3)).toBe(millimetre.toFixed(3));
});
