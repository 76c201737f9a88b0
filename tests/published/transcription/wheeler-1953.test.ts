import { describe, expect, test } from 'vitest';
import { flashRateHz } from '../../../src/core/gate/flash-rate.ts';
import { GAUGES } from '../../../src/core/reel/gauges.ts';
import type { GaugeId } from '../../../src/core/reel/gauges/gauge.ts';
import { makeEqualShutter, shutterOpenFraction } from '../../../src/core/gate/shutter.ts';
import { cycleArcSeconds, travelGhost } from '../../../src/core/gate/travel-ghost.ts';

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

// Page 379: a shutter with two blades for a sound projector.
describe('Principles of Cinematography, shutters', () => {
  test('two blades at 24 frames/s make 48 flashes', () => {
    expect(flashRateHz(24, 2)).toBe(48);
  });

  test('the cycle falls into four equal parts of 90°, with light in half of it', () => {
    const shutter = makeEqualShutter(2, 0.5);
    const parts = shutter.sectors.flatMap((sector) => [
      sector.openFraction * 360,
      sector.closedFraction * 360,
    ]);
    expect(parts).toEqual([90, 90, 90, 90]);
    expect(shutterOpenFraction(shutter)).toBe(0.5);
  });

  // Page 373: the film moves within 60° on silent and about 90° on sound projectors.
  test('60° at 16 frames/s and 90° at 24 frames/s take the same time', () => {
    expect(cycleArcSeconds(60, 16)).toBeCloseTo(cycleArcSeconds(90, 24), 12);
  });

  test('a blade of 60° covers the move of a silent projector, not that of a sound projector', () => {
    expect(travelGhost(60, 60, 0, 0.5, 'soft').movingLightShare).toBe(0);
    expect(travelGhost(90, 60, 0, 0.5, 'soft').movingLightShare).toBeGreaterThan(0);
  });
});
