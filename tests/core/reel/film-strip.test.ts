import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';
import {
  filmStrip,
  type FilmStrip,
  type Patch,
  type StripSound,
} from '../../../src/core/reel/film-strip.ts';
import { GAUGE_IDS } from '../../../src/core/reel/gauges.ts';

const SOUNDS: readonly StripSound[] = ['none', 'magnetic', 'optical'];
const strips = GAUGE_IDS.flatMap((gauge) =>
  SOUNDS.flatMap((sound): readonly (readonly [string, FilmStrip])[] => {
    try {
      return [[`${gauge}, ${sound}`, filmStrip(gauge, sound)]];
    } catch (error) {
      if (error instanceof OutOfRangeError) return [];
      throw error;
    }
  }),
);

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const boxOf = (patch: Patch, shift = 0): Box => ({
  left: patch.leftMillimetres,
  right: patch.leftMillimetres + patch.widthMillimetres,
  top: patch.centreMillimetres - patch.heightMillimetres / 2 + shift,
  bottom: patch.centreMillimetres + patch.heightMillimetres / 2 + shift,
});

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right - 1e-9 &&
  b.left < a.right - 1e-9 &&
  a.top < b.bottom - 1e-9 &&
  b.top < a.bottom - 1e-9;

describe('a strip of film', () => {
  test('can be drawn for all gauges without sound and with five sound tracks', () => {
    expect(strips).toHaveLength(GAUGE_IDS.length + 5);
  });

  test.each(strips)('%s: everything lies on the film', (_name, strip) => {
    const bands = [...strip.perforations, ...strip.stripes, strip.picture];
    expect(strip.perforations.length).toBeGreaterThan(0);
    for (const { leftMillimetres, widthMillimetres } of bands) {
      expect(leftMillimetres).toBeGreaterThanOrEqual(0);
      expect(leftMillimetres + widthMillimetres).toBeLessThanOrEqual(strip.widthMillimetres + 1e-9);
    }
  });

  test.each(strips)('%s: no hole cuts a picture, here or in the next frame', (_name, strip) => {
    const picture = boxOf(strip.picture);
    for (const hole of strip.perforations) {
      for (const shift of [-strip.pitchMillimetres, 0, strip.pitchMillimetres]) {
        expect(overlap(boxOf(hole, shift), picture)).toBe(false);
      }
    }
  });

  test.each(strips)('%s: the sound stripe keeps clear of the picture', (_name, strip) => {
    for (const { leftMillimetres, widthMillimetres } of strip.stripes) {
      const stripe = {
        left: leftMillimetres,
        right: leftMillimetres + widthMillimetres,
        top: 0,
        bottom: strip.pitchMillimetres,
      };
      expect(overlap(stripe, boxOf(strip.picture))).toBe(false);
    }
  });

  test('puts the hole of Super 8 beside the picture and that of Standard 8 at the frame line', () => {
    const [super8Hole] = filmStrip('super-8', 'none').perforations;
    expect(super8Hole?.centreMillimetres).toBeCloseTo(4.234 / 2, 9);
    expect(super8Hole?.leftMillimetres).toBe(0.51);
    expect(filmStrip('8mm-type-r', 'none').perforations[0]?.centreMillimetres).toBe(0);
  });

  test('gives 16 mm two rows when silent and one with sound, 35 mm eight holes a frame', () => {
    expect(filmStrip('16mm', 'none').perforations).toHaveLength(2);
    expect(filmStrip('16mm', 'optical').perforations).toHaveLength(1);
    expect(filmStrip('35mm', 'none').perforations).toHaveLength(8);
  });

  test('draws silent 16 mm with one row when asked, and refuses holes it never has', () => {
    const strip = filmStrip('16mm', 'none', 'one-edge-at-frame-line');
    expect(strip.perforations).toHaveLength(1);
    expect(strip.stripes).toEqual([]);
    expect(() => filmStrip('16mm', 'none', 'centre-at-frame-line')).toThrow(OutOfRangeError);
  });

  test('lays the hole of 9.5 mm in the middle', () => {
    const strip = filmStrip('9.5mm', 'none');
    const [hole] = strip.perforations;
    expect((hole?.leftMillimetres ?? 0) + (hole?.widthMillimetres ?? 0) / 2).toBeCloseTo(4.75, 9);
  });

  test('centres the scanned optical track of 16 mm 1.47 mm from the edge, as published', () => {
    const strip = filmStrip('16mm', 'optical');
    const [track] = strip.stripes;
    const centre = (track?.leftMillimetres ?? 0) + (track?.widthMillimetres ?? 0) / 2;
    expect(strip.widthMillimetres - centre).toBeCloseTo(1.47, 9);
  });

  test('refuses a track that the gauge does not have', () => {
    expect(() => filmStrip('8mm-type-r', 'optical')).toThrow(OutOfRangeError);
    expect(() => filmStrip('super-16', 'magnetic')).toThrow(OutOfRangeError);
  });
});
