import { expect, test } from 'vitest';
import { convertUnit } from '../../src/quantity/units.ts';

// Temperatures of vaults and of decay, as printed in both scales.
test.each([
  [35, 2],
  [70, 21],
  [185, 85],
])('%i °F are %i °C', (fahrenheit, celsius) => {
  expect(Math.round(convertUnit(fahrenheit, 'fahrenheit', 'celsius'))).toBe(celsius);
});
