import { expect, test } from 'vitest';
import { GAUGES } from '../../../src/core/reel/gauges.ts';
import { convertUnit } from '../../../src/quantity/units.ts';

// Pitch: 4.750 mm on 35 mm film, four perforations to a frame.
test('the pitch of 35 mm film is 4.750 mm, 0.187 in', () => {
  expect(GAUGES['35mm'].pitch.long.millimetres).toBe(4.75);
  expect(convertUnit(4.75, 'mm', 'in').toFixed(3)).toBe('0.187');
  expect(GAUGES['35mm'].perforationsPerFrame).toBe(4);
});
