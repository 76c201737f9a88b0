import { expect, test } from 'vitest';
import { GAUGES } from '../../src/core/gauges.ts';
import { convertUnit } from '../../src/core/quantity/units.ts';

// Scope: pitch of 0.1500 in or 0.1497 in (3.810 mm or 3.802 mm).
test.each([
  ['long', 0.15, 3.81],
  ['short', 0.1497, 3.802],
] as const)('%s pitch: %d in are %d mm', (which, inch, millimetre) => {
  expect(convertUnit(inch, 'in', 'mm').toFixed(3)).toBe(millimetre.toFixed(3));
  expect(GAUGES['8mm-type-r'].pitch[which]).toMatchObject({
    inches: inch,
    millimetres: millimetre,
  });
});

test('a frame of type R is half a frame of 16 mm', () => {
  expect(GAUGES['8mm-type-r'].pitch.long.millimetres * 2).toBe(
    GAUGES['16mm'].pitch.long.millimetres,
  );
});
