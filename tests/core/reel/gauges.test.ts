import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';
import {
  exactFrameStep,
  frameStepMillimetres,
  GAUGE_IDS,
  GAUGE_NAMES,
  GAUGES,
  nativeRatesFor,
} from '../../../src/core/reel/gauges.ts';
import { readSources } from '../../content/read-content.ts';

const MILLIMETRES_PER_INCH = 25.4;

/** Every object in the table that names a source, with the path to it. */
function provenances(
  value: unknown,
  path: string,
): readonly { readonly path: string; readonly source: string; readonly status: string }[] {
  if (typeof value !== 'object' || value === null) return [];
  const here =
    'source' in value && 'status' in value
      ? [{ path, source: String(value.source), status: String(value.status) }]
      : [];
  return [
    ...here,
    ...Object.entries(value).flatMap(([key, item]) => provenances(item, `${path}.${key}`)),
  ];
}

/** Every length of the table with the path to it. */
function lengths(value: unknown, path: string): readonly (readonly [string, number])[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, item]) =>
    typeof item === 'number' && /millimetres/iu.test(key)
      ? [[`${path}.${key}`, item] as const]
      : lengths(item, `${path}.${key}`),
  );
}

const origins = provenances(GAUGES, 'gauges');

describe('the gauge table', () => {
  test('names a known source for every value', () => {
    const known = new Set(readSources().map(({ id }) => id));
    expect(origins.length).toBeGreaterThan(90);
    expect(origins.filter(({ source }) => !known.has(source))).toEqual([]);
  });

  test('never calls a value seen whose source is memory, and the other way round', () => {
    const wrong = origins.filter(
      ({ source, status }) => (source === 'from-memory') !== (status === 'memory'),
    );
    expect(wrong).toEqual([]);
  });

  test('holds only positive lengths, apart from places along the edge', () => {
    const all = lengths(GAUGES, 'gauges');
    expect(all.length).toBeGreaterThan(90);
    expect(all.filter(([path, value]) => !(value > 0) && !path.includes('place'))).toEqual([]);
  });

  test.each(GAUGE_IDS)('keeps the parts of %s inside the film', (id) => {
    const { filmWidth, perforation, cameraPicture, projectedPicture } = GAUGES[id];
    const step = frameStepMillimetres(id, 'long');
    for (const picture of [...cameraPicture, ...projectedPicture]) {
      expect(picture.widthMillimetres).toBeLessThan(filmWidth.millimetres);
      expect(picture.heightMillimetres).toBeLessThan(step);
    }
    for (const projected of projectedPicture) {
      expect(projected.widthMillimetres).toBeLessThan(cameraPicture[0].widthMillimetres);
      expect(projected.heightMillimetres).toBeLessThan(cameraPicture[0].heightMillimetres);
    }
    expect(perforation.height.millimetres).toBeLessThan(GAUGES[id].pitch.long.millimetres);
  });

  test.each(GAUGE_IDS)('prints the pitch of %s as its inches give it', (id) => {
    const { long, short } = GAUGES[id].pitch;
    for (const pitch of short === undefined ? [long] : [long, short]) {
      if (pitch.inches === undefined) continue;
      expect(Math.abs(pitch.inches * MILLIMETRES_PER_INCH - pitch.millimetres)).toBeLessThan(5e-4);
      const hundred = pitch.inches * MILLIMETRES_PER_INCH * 100;
      expect(Math.abs(hundred - pitch.hundredPitches.millimetres)).toBeLessThan(0.05);
    }
  });

  test('makes the short pitch about two thousandths shorter', () => {
    for (const id of GAUGE_IDS) {
      const { long, short } = GAUGES[id].pitch;
      if (short === undefined) continue;
      const percent = (1 - short.millimetres / long.millimetres) * 100;
      expect(percent).toBeGreaterThan(0.15);
      expect(percent).toBeLessThan(0.22);
    }
  });
});

describe('the frame step', () => {
  test('is exact, four perforations for 35 mm', () => {
    expect(exactFrameStep('35mm', 'long').toFraction()).toBe('19');
    expect(exactFrameStep('super-8', 'long').toFraction()).toBe('2117/500');
    expect(exactFrameStep('8mm-type-r', 'short').toFraction()).toBe('1901/500');
  });

  test('has no short pitch for 9.5 mm and says so', () => {
    expect(() => exactFrameStep('9.5mm', 'short')).toThrow(OutOfRangeError);
  });
});

describe('native rates by the sound seen on the film', () => {
  const rates = (...film: Parameters<typeof nativeRatesFor>): readonly number[] =>
    nativeRatesFor(...film).map(({ filmFps }) => filmFps);

  test('a stripe on amateur film does not mean 24', () => {
    expect(rates('super-8', 'magnetic')[0]).toBe(18);
    expect(rates('super-8', 'magnetic')).toContain(24);
    expect(rates('8mm-type-r', 'magnetic')).toEqual([16, 18]);
  });

  test('an optical track on 16 mm does', () => {
    expect(rates('16mm', 'optical')[0]).toBe(24);
  });

  test('silent 16 mm is 16 or 18', () => {
    expect(rates('16mm', 'none')).toEqual([16, 18]);
  });

  test('every rate belongs to some film', () => {
    for (const { nativeRates } of Object.values(GAUGES)) {
      for (const { sounds } of nativeRates) expect(sounds.length).toBeGreaterThan(0);
    }
  });
});

test('no gauge is called by a word that only the standards use', () => {
  for (const name of Object.values(GAUGE_NAMES)) expect(name).not.toMatch(/type [RSW]/u);
  expect(GAUGE_NAMES['8mm-type-r']).toBe('Standard 8');
});
