import { expect, test } from 'vitest';
import { nativeRatesFor } from '../../../src/core/reel/gauges.ts';

// Clause 4: silent 18 ± 1 by preference, or 16 ± ½; sound 24 ± 1.
const printed = (sound: 'none' | 'optical') =>
  nativeRatesFor('16mm', sound)
    .filter(({ source }) => source === 'iso-26-1993')
    .map(({ filmFps, toleranceFps }) => [filmFps, toleranceFps]);

test('silent 16 mm runs at 16 ± ½ or 18 ± 1, sound at 24 ± 1', () => {
  expect(printed('none')).toEqual([
    [16, 0.5],
    [18, 1],
  ]);
  expect(printed('optical')).toEqual([[24, 1]]);
});
