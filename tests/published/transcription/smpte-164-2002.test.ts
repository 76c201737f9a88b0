import { expect, test } from 'vitest';
import { convertUnit } from '../../../src/quantity/units.ts';
import { filmStrip } from '../../../src/core/reel/film-strip.ts';

// Abstract: nominal stripe of 0.027 in (0.69 mm).
test('the stripe of Super 8 is 0.027 in or 0.69 mm wide, and drawn so', () => {
  expect(convertUnit(0.027, 'in', 'mm').toFixed(2)).toBe('0.69');
  expect(filmStrip('super-8', 'magnetic').stripes[0]?.widthMillimetres).toBe(0.69);
});
