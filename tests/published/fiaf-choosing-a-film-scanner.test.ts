import { expect, test } from 'vitest';
import { pixelsForViewer } from '../../src/core/gate/sampling.ts';

// Pixels across the screen for an eye that resolves 1/75 of a degree.
test.each([
  [36, 2792],
  [52, 4192],
  [90, 8594],
])('a screen of %d degrees asks for %d pixels', (degrees, printed) => {
  // The first is printed cut off (2792.5), so a whole pixel is allowed.
  expect(Math.abs(pixelsForViewer(degrees, 1 / 75) - printed)).toBeLessThan(1);
});
