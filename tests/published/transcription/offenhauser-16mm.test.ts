import { expect, test } from 'vitest';
import { filmStrip } from '../../../src/core/reel/film-strip.ts';

// Page 119: centre line 0.058 in (1.47 mm) from the edge, 0.071 in (1.80 mm) scanned, 0.080 in printed.
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
