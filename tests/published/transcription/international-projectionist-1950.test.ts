import { expect, test } from 'vitest';
import { convertUnit } from '../../../src/quantity/units.ts';

// The lowest temperature that led to ignition of decomposed film was 106 °F.
test('106 °F are 41 °C', () => {
  expect(convertUnit(106, 'fahrenheit', 'celsius')).toBeCloseTo(41.1, 1);
  expect(Math.round(convertUnit(106, 'fahrenheit', 'celsius'))).toBe(41);
});
