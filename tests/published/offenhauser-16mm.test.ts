import { expect, test } from 'vitest';
import { convertUnit } from '../../src/core/quantity/units.ts';
import { filmStrip } from '../../src/core/film-strip.ts';

// Page 119: centre line 0.058 in from the edge, 0.071 in scanned, 0.060 in modulated, 0.080 in printed.
test.each([
  [0.058, 1.47],
  [0.071, 1.8],
  [0.06, 1.52],
  [0.08, 2.03],
])('%d in are %d mm', (inch, millimetre) => {
  expect(convertUnit(inch, 'in', 'mm').toFixed(2)).toBe(millimetre.toFixed(2));
});

test('the drawn track is as wide as the scanning beam and lies on the centre line', () => {
  const { widthMillimetres, stripes } = filmStrip('16mm', 'optical');
  const [track] = stripes;
  expect(track?.widthMillimetres).toBe(1.8);
  const centre = widthMillimetres - (track?.leftMillimetres ?? 0) - 0.9;
  expect(centre.toFixed(2)).toBe('1.47');
});

test('the printed width of 2.03 mm still leaves the picture free', () => {
  const { widthMillimetres, picture } = filmStrip('16mm', 'optical');
  const printedLeft = widthMillimetres - 1.47 - 2.03 / 2;
  expect(printedLeft).toBeGreaterThan(picture.leftMillimetres + picture.widthMillimetres);
});
