import { expect, test } from 'vitest';
import { GAUGES } from '../../../src/core/reel/gauges.ts';

test('the gauge table holds both pitches of Standard 8', () => {
  const { long, short } = GAUGES['8mm-type-r'].pitch;
  expect(long).toMatchObject({ inches: 0.15, millimetres: 3.81 });
  expect(short).toMatchObject({ inches: 0.1497, millimetres: 3.802 });
});
