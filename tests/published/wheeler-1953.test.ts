import { describe, expect, test } from 'vitest';
import { GAUGES } from '../../src/core/gauges.ts';
import type { GaugeId } from '../../src/core/gauges/gauge.ts';

// Page 286: picture sizes in mm, height first in the book.
describe('Principles of Cinematography, pictures', () => {
  test.each<[GaugeId, number, number]>([
    ['8mm-type-r', 3.51, 4.8],
    ['9.5mm', 6.5, 8.5],
    ['16mm', 7.47, 10.41],
  ])('the picture of %s is %d mm high and %d mm wide', (id, height, width) => {
    const printed = GAUGES[id].cameraPicture.find(({ source }) => source === 'wheeler-1953');
    expect(printed).toMatchObject({ heightMillimetres: height, widthMillimetres: width });
  });

  test('16 mm and 9.5 mm pictures differ less than the widths of the films', () => {
    const pictures = 10.41 / 8.5;
    const films = GAUGES['16mm'].filmWidth.millimetres / GAUGES['9.5mm'].filmWidth.millimetres;
    expect(pictures).toBeLessThan(films);
  });

  test('the later camera picture of 16 mm differs from this older one by less than 1.5 %', () => {
    const [{ widthMillimetres, heightMillimetres }] = GAUGES['16mm'].cameraPicture;
    expect(Math.abs(widthMillimetres / 10.41 - 1)).toBeLessThan(0.015);
    expect(Math.abs(heightMillimetres / 7.47 - 1)).toBeLessThan(0.015);
  });
});
