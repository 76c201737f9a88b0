import { describe, expect, test } from 'vitest';
import { splitRecording } from '../../../src/core/file/card-split.ts';
import {
  azimuthDecibels,
  firstNullHz,
  SCANNED_TRACKS,
  spacingDecibels,
  wavelengthMillimetres,
  type ScannedTrackId,
} from '../../../src/core/file/head-losses.ts';
import { humReadings, printedHumHz } from '../../../src/core/file/printed-hum.ts';
import { evaluate, fillEntries } from '../../../src/worksheets/machine/evaluate.ts';
import { worksheet as cardSheet } from '../../../src/worksheets/file/card-split/worksheet.ts';
import { worksheet as humSheet } from '../../../src/worksheets/file/printed-hum/worksheet.ts';
import { expectRelative } from '../relative.ts';

// Track, film rate, loss at 5 kHz for 5, 15 and 30 minutes of arc, dB; first null at 30 minutes, kHz.
const AZIMUTH: readonly (readonly [ScannedTrackId, number, number, number, number, number])[] = [
  ['super-8-stripe', 18, -0.06, -0.56, -2.4, 12.7],
  ['super-8-stripe', 24, -0.03, -0.32, -1.3, 16.9],
  ['8mm-stripe', 16, -0.12, -1.1, -4.7, 9.2],
  ['16mm-stripe', 24, -0.15, -1.4, -6.1, 8.3],
  ['16mm-edge-stripe', 24, -0.01, -0.13, -0.5, 26],
  ['16mm-optical', 24, -0.07, -0.67, -2.8, 11.6],
];

describe('a head out of square', () => {
  test.each(AZIMUTH)('%s at %d frames/s', (track, filmFps, five, fifteen, thirty, kilohertz) => {
    const { gauge, widthMillimetres } = SCANNED_TRACKS[track];
    const wave = wavelengthMillimetres(gauge, filmFps, 5000);
    const lossAt = (minutes: number) => azimuthDecibels(widthMillimetres, wave, minutes);
    expect(lossAt(5)).toBeCloseTo(five, 1);
    expect(Math.abs(lossAt(15) - fifteen)).toBeLessThan(0.06);
    expect(Math.abs(lossAt(30) - thirty)).toBeLessThan(0.08);
    expectRelative(firstNullHz(widthMillimetres, wave * 5000, 30) / 1000, kilohertz, 0.01);
  });

  test('sums the waves of every strip of the track', () => {
    const wave = 0.0152;
    const width = 0.69;
    for (const minutes of [5, 15, 30, 60]) {
      const shift = width * Math.tan((minutes / 60) * (Math.PI / 180));
      let real = 0;
      let imaginary = 0;
      const strips = 4000;
      for (let strip = 0; strip < strips; strip += 1) {
        const phase = (2 * Math.PI * shift * (strip + 0.5)) / strips / wave;
        real += Math.cos(phase) / strips;
        imaginary += Math.sin(phase) / strips;
      }
      const summed = 20 * Math.log10(Math.hypot(real, imaginary));
      expect(azimuthDecibels(width, wave, minutes)).toBeCloseTo(summed, 3);
    }
  });

  test('dirt costs 3.6 dB of Super 8 at 18 and 1.5 dB of 16 mm, at 5 kHz', () => {
    expect(spacingDecibels(0.001, wavelengthMillimetres('super-8', 18, 5000))).toBeCloseTo(-3.6, 1);
    expect(spacingDecibels(0.001, wavelengthMillimetres('16mm', 24, 5000))).toBeCloseTo(-1.5, 1);
  });
});

describe('printed hum', () => {
  test.each([
    [50, 25, 24, 52.1],
    [50, 50 / 3, 18, 46.3],
    [60, 25, 24, 62.5],
  ])('%d Hz, run at %d, laid at %d is heard at %d Hz', (mains, run, laid, heard) => {
    expectRelative(printedHumHz(mains, run, laid), heard, 0.001);
    const found = humReadings(mains, run, printedHumHz(mains, run, laid));
    expect(found[0]!.laidFps).toBeCloseTo(laid, 9);
    // A tape with that hum, played at the run rate, counted wave by wave.
    const framesInAMinute = run * 60;
    const waves = (framesInAMinute / laid) * mains;
    expectRelative(waves / 60, printedHumHz(mains, run, laid), 1e-12);
  });

  test('37.5 Hz at 18 was laid at 24, and the second harmonic says the same', () => {
    const rates = (heard: number) =>
      humReadings(50, 18, heard)
        .filter(({ usualFps }) => usualFps !== undefined)
        .map(({ laidFps }) => Math.round(laidFps));
    expect(rates(37.5)).toContain(24);
    expect(rates(75)).toContain(24);
  });

  test('hum at the mains frequency may be that of the bench', () => {
    const run = (entries: Record<string, string>) =>
      evaluate(humSheet, fillEntries(humSheet.inputs, entries)).outcome!;
    expect(run({ heardHz: '50' }).verdict.sentence).toMatch(/perhaps your own/u);
    expect(run({ heardHz: '100.2' }).answers['ownHum']!.text).toMatch(/possible/u);
    expect(run({}).verdict.sentence).toMatch(/laid at about 24/u);
  });
});

describe('files on a card', () => {
  test.each([
    [25, 22.9],
    [50, 11.5],
    [100, 5.73],
    [150, 3.82],
    [200, 2.86],
    [400, 1.43],
  ])('%d Mbit/s fill one in %d minutes', (megabits, minutes) => {
    expectRelative(splitRecording(megabits * 1e6, 60).secondsPerFile / 60, minutes, 0.005);
  });

  test('13 minutes at 100 Mbit/s are three files, written second by second', () => {
    let files = 1;
    let written = 0;
    for (let second = 0; second < 13 * 60; second += 1) {
      written += 12_500_000;
      if (written > 4_294_967_296) {
        files += 1;
        written = 12_500_000;
      }
    }
    expect(files).toBe(3);
    expect(splitRecording(100e6, 13 * 60).files).toBe(3);
  });

  test('a limit that nobody tried is taken at half an hour', () => {
    const run = (entries: Record<string, string>) =>
      evaluate(cardSheet, fillEntries(cardSheet.inputs, entries)).outcome!.verdict.level;
    expect(run({ runSeconds: '35' })).toBe('stop');
    expect(run({ runSeconds: '35', limitSeconds: '120' })).toBe('care');
    expect(run({ runSeconds: '4' })).toBe('good');
    expect(run({ runSeconds: '20', cardGigabytes: '10' })).toBe('stop');
  });
});
