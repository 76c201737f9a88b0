import type { ComponentType } from 'preact';
import { parse } from 'node-html-parser';
import { describe, expect, test } from 'vitest';
import { Picture as Bands } from '../../src/pictures/bands.tsx';
import { Picture as Curve } from '../../src/pictures/curve.tsx';
import { Picture as FilmGauges } from '../../src/pictures/film-gauges.tsx';
import { Picture as FilmStrip } from '../../src/pictures/film-strip.tsx';
import { Picture as GateLight } from '../../src/pictures/gate-light.tsx';
import { Picture as RangeBars } from '../../src/pictures/range-bars.tsx';
import { Picture as RepeatPattern } from '../../src/pictures/repeat-pattern.tsx';
import { Picture as ShutterDisc } from '../../src/pictures/shutter-disc.tsx';
import { Picture as SoundStrip } from '../../src/pictures/sound-strip.tsx';
import { Picture as WholeFrames } from '../../src/pictures/whole-frames.tsx';
import type { PictureData } from '../../src/worksheets/machine/picture-data.ts';
import { markup } from './draw.ts';
import * as samples from './samples.ts';

type AnyPicture = ComponentType<{ picture: PictureData; instance: string }>;

const PICTURES: Readonly<Record<PictureData['name'], AnyPicture>> = {
  bands: Bands as unknown as AnyPicture,
  curve: Curve as unknown as AnyPicture,
  'film-gauges': FilmGauges as unknown as AnyPicture,
  'film-strip': FilmStrip as unknown as AnyPicture,
  'gate-light': GateLight as unknown as AnyPicture,
  'range-bars': RangeBars as unknown as AnyPicture,
  'repeat-pattern': RepeatPattern as unknown as AnyPicture,
  'shutter-disc': ShutterDisc as unknown as AnyPicture,
  'sound-strip': SoundStrip as unknown as AnyPicture,
  'whole-frames': WholeFrames as unknown as AnyPicture,
};

const plain: readonly PictureData[] = Object.values(samples);

const { bands, curve, filmGauges, filmStrip, gateLight, repeatPattern, wholeFrames } = samples;
const { rangeBars, shutterDisc, soundStrip } = samples;

/** The far ends of what a worksheet can hand over. */
const extreme: Readonly<Record<string, PictureData>> = {
  'no light and no exposures': { ...gateLight, light: [], filmFrameStarts: [], exposures: [] },
  'a stretch of no length': { ...gateLight, spanSeconds: 0 },
  'a stretch of an hour': { ...gateLight, spanSeconds: 3600 },
  'exposures without light': {
    ...gateLight,
    exposures: gateLight.exposures.map((exposure) => ({ ...exposure, share: 0 })),
  },
  'thousands of flashes': {
    ...gateLight,
    light: Array.from({ length: 8000 }, (_, index) => ({
      seconds: (index * 0.12) / 8000,
      level: index % 2,
    })),
    exposures: Array.from({ length: 2000 }, (_, index) => ({
      startSeconds: (index * 0.12) / 2000,
      endSeconds: ((index + 0.5) * 0.12) / 2000,
      share: 1 + Math.sin(index),
    })),
  },
  'no pattern': { ...bands, exposureByPhase: [] },
  'one step of pattern': { ...bands, exposureByPhase: [1] },
  'a global shutter': { ...bands, periodsDownPicture: 0 },
  'hardly a gradient': { ...bands, periodsDownPicture: 1e-9 },
  'many bands': { ...bands, periodsDownPicture: 60 },
  'light in flashes of no length': { ...bands, exposureByPhase: [0, 0, 0, 1000] },
  'no camera frames': { ...wholeFrames, cameraFrames: [] },
  'frames of no purity': { ...wholeFrames, cameraFrames: [{ filmFrame: 1, purity: 0 }] },
  'frames late in a reel': {
    ...wholeFrames,
    cameraFrames: [{ filmFrame: 123_456, purity: 0.5, otherFilmFrame: 123_457 }],
  },
  'no film frames': { ...repeatPattern, repeats: [] },
  'all film frames lost': { ...repeatPattern, repeats: [0, 0, 0] },
  'film without holes': { ...filmStrip, perforations: [], stripes: [] },
  'no films but one': { ...filmGauges, rows: [] },
  'a film of no pitch to speak of': {
    ...filmGauges,
    rows: filmGauges.rows.map((row) =>
      row.map((each) => ({
        ...each,
        film: { ...each.film, pitchMillimetres: 1e-6 },
      })),
    ),
  },
  'a disc without sectors': { ...shutterDisc, sectors: [] },
  'a disc that is one blade': {
    ...shutterDisc,
    sectors: [{ degrees: 360, kind: 'pulldown-blade' }],
  },
  'a disc of dozens of slits': {
    ...shutterDisc,
    sectors: Array.from({ length: 72 }, (_, index) => ({
      degrees: 5,
      kind: index % 2 === 0 ? 'opening' : 'blade',
    })),
  },
  'sound beside its picture': {
    ...soundStrip,
    separationFrames: 0,
    readFrames: 0,
    gapText: '',
  },
  'sound read long before the gate': { ...soundStrip, separationFrames: 200, readFrames: -50 },
  'a range of no size': {
    ...rangeBars,
    whole: { label: 'film', from: 0, to: 0 },
    parts: [],
  },
  'a hundred exposures': {
    ...rangeBars,
    parts: Array.from({ length: 100 }, (_, index) => ({
      label: `exposure ${index}`,
      from: index / 10,
      to: index / 10 + 1,
    })),
  },
  'very wide film': { ...filmStrip, widthMillimetres: 500 },
  'no curves': { ...curve, curves: [], marks: [] },
  'a curve of one point': { ...curve, curves: [{ label: 'a', points: [{ x: 1, y: 1 }] }] },
  'a flat curve at zero': {
    ...curve,
    curves: [
      {
        label: 'a',
        points: [
          { x: 1, y: 0 },
          { x: 2, y: 0 },
        ],
      },
    ],
  },
  'huge values': {
    ...curve,
    curves: [
      {
        label: 'a',
        points: [
          { x: 0, y: -1e15 },
          { x: 1e15, y: 1e15 },
        ],
      },
    ],
  },
  'tiny values': {
    ...curve,
    curves: [
      {
        label: 'a',
        points: [
          { x: 0, y: 1e-15 },
          { x: 1e-15, y: 2e-15 },
        ],
      },
    ],
    marks: [],
  },
};

function html(picture: PictureData, instance?: string): string {
  return markup(PICTURES[picture.name], picture, instance);
}

describe('every picture', () => {
  test('has a sample', () => {
    expect(plain.map(({ name }) => name).sort()).toEqual(Object.keys(PICTURES).sort());
  });

  test.each(plain.map((picture) => [picture.name, picture] as const))(
    '%s gives its alternative to those who cannot see it',
    (_, picture) => {
      const svg = parse(html(picture)).querySelector('svg');
      expect(svg?.getAttribute('role')).toBe('img');
      expect(svg?.getAttribute('aria-label')).toBe(picture.alternative);
      expect(svg?.getAttribute('viewBox')).toMatch(/^0 0 640 [\d.]+$/u);
    },
  );

  test.each(plain.map((picture) => [picture.name, picture] as const))(
    '%s can stand twice on a page',
    (_, picture) => {
      const page = parse(html(picture, 'first') + html(picture, 'second'));
      const ids = page.querySelectorAll('[id]').map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
      const text = page.outerHTML;
      for (const [, id] of text.matchAll(/(?:url\(#|aria-describedby=")([^)"]+)/gu)) {
        expect(ids).toContain(id);
      }
    },
  );

  test.each(plain.map((picture) => [picture.name, picture] as const))(
    '%s is styled by classes alone',
    (_, picture) => {
      const text = html(picture);
      expect(text).not.toMatch(/\sstyle=|<style/u);
      const colours = parse(text)
        .querySelectorAll('[fill], [stroke]')
        .flatMap((element) => [element.getAttribute('fill'), element.getAttribute('stroke')])
        .filter((colour) => colour !== undefined);
      for (const colour of colours) expect(colour).toMatch(/^url\(#/u);
    },
  );

  test.each(Object.entries(extreme))('stays drawable with %s', (_, picture) => {
    const text = html(picture);
    expect(text).not.toMatch(/NaN|Infinity|undefined/u);
    expect(parse(text).querySelector('svg')).not.toBeNull();
    for (const [, size] of text.matchAll(/\s(?:width|height|r)="([^"]*)"/gu)) {
      expect(Number(size)).toBeGreaterThanOrEqual(0);
    }
  });
});
