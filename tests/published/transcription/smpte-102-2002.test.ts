import { expect, test } from 'vitest';
import { GAUGES } from '../../../src/core/reel/gauges.ts';
import { convertUnit } from '../../../src/quantity/units.ts';

// Table 1: width 1.377 ± 0.001 in, 34.975 ± 0.025 mm.
test('35 mm film is 34.975 mm wide, give or take 0.025 mm', () => {
  const { millimetres, toleranceMillimetres } = GAUGES['35mm'].filmWidth;
  expect(millimetres).toBe(34.975);
  expect(toleranceMillimetres).toBe(0.025);
  // 1.377 in are 34.9758 mm: cut off, not rounded.
  expect(Math.abs(convertUnit(1.377, 'in', 'mm') - millimetres)).toBeLessThan(0.001);
  expect(convertUnit(0.001, 'in', 'mm').toFixed(3)).toBe('0.025');
});
