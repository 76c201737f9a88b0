import { expect, test } from 'vitest';
import { GAUGES } from '../../../src/core/reel/gauges.ts';

test('the gauge table holds both pitches of 16 mm', () => {
  expect(GAUGES['16mm'].pitch.short?.millimetres).toBe(7.605);
  expect(GAUGES['16mm'].pitch.long.millimetres).toBe(7.62);
});
