import { expect, test } from 'vitest';
import { GAUGES } from '../../../src/core/gauges.ts';

// Page 341: 16 frames per second for silent, 24 with sound.
test.each(['16mm', '35mm'] as const)('%s is shot at 16 silent and 24 with sound', (id) => {
  const rates = GAUGES[id].nativeRates.filter(
    ({ source }) => source === 'cinematographic-annual-1931',
  );
  expect(rates.map(({ filmFps, use }) => [filmFps, use.split(',')[0]])).toEqual([
    [16, 'silent'],
    [24, 'sound'],
  ]);
});
