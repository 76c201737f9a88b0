import { expect, test } from 'vitest';
import { GAUGES } from '../../../src/core/reel/gauges.ts';

test('the gauge table takes the reference width of 15.95 mm', () => {
  expect(GAUGES['16mm'].filmWidth.millimetres).toBe(15.95);
});
