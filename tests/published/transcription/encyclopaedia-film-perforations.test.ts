import { expect, test } from 'vitest';
import { GAUGES } from '../../../src/core/reel/gauges.ts';
import { shrinkagePercent } from '../../../src/core/reel/shrinkage.ts';

// Short and long pitch in inches; the difference was made for a shrinkage of about 0.3 %.
test.each([
  ['35mm', 0.1866, 0.187],
  ['16mm', 0.2994, 0.3],
] as const)('%s has pitches of %d and %d in', (gauge, short, long) => {
  expect(GAUGES[gauge].pitch.short?.inches).toBe(short);
  expect(GAUGES[gauge].pitch.long.inches).toBe(long);
  // The two pitches differ by 0.2 %, two thirds of that shrinkage.
  expect(shrinkagePercent(long, short)).toBeGreaterThan(0.2);
  expect(shrinkagePercent(long, short)).toBeLessThan(0.3);
});
