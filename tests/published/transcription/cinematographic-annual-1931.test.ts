import { expect, test } from 'vitest';
import { nativeRatesFor } from '../../../src/core/reel/gauges.ts';

// Page 341: 16 frames per second for silent, 24 with sound.
test.each(['16mm', '35mm'] as const)('%s is shot at 16 silent and 24 with sound', (id) => {
  expect(nativeRatesFor(id, 'none').map(({ filmFps }) => filmFps)).toContain(16);
  expect(nativeRatesFor(id, 'none').map(({ filmFps }) => filmFps)).not.toContain(24);
  expect(nativeRatesFor(id, 'optical')[0]?.filmFps).toBe(24);
});
