import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';
import {
  tachometerErrorFps,
  tachometerFilmFps,
  tachometerReading,
} from '../../../src/core/gate/tachometer.ts';

/** Turns a shaft in small steps for a while and counts marks and film frames as they go by. */
function turnAndCount(
  shaftTurnsPerSecond: number,
  marksPerTurn: number,
  turnsPerFrame: number,
): { readonly marksPerMinute: number; readonly framesPerSecond: number } {
  const seconds = 600;
  const turns = shaftTurnsPerSecond * seconds;
  let marks = 0;
  let frames = 0;
  for (let mark = 1; mark / marksPerTurn <= turns + 1e-9; mark += 1) marks += 1;
  for (let frame = 1; frame * turnsPerFrame <= turns + 1e-9; frame += 1) frames += 1;
  return { marksPerMinute: (marks * 60) / seconds, framesPerSecond: frames / seconds };
}

const gearing = {
  marks: fc.integer({ min: 1, max: 12 }),
  turns: fc.double({ min: 0.05, max: 6, noNaN: true }),
  filmFps: fc.double({ min: 0.5, max: 200, noNaN: true }),
  unit: fc.constantFrom('perMinute' as const, 'perSecond' as const),
};

describe('tachometer', () => {
  test('agrees with counting marks and frames on a shaft that is really turned', () => {
    for (const [shaft, marks, turns] of [
      [18, 1, 1],
      [50, 2, 3],
      [8.25, 4, 0.5],
      [1.5, 6, 1 / 12],
    ] as const) {
      const counted = turnAndCount(shaft, marks, turns);
      const filmFps = tachometerFilmFps(counted.marksPerMinute, 'perMinute', marks, turns);
      expect(filmFps).toBeCloseTo(counted.framesPerSecond, 2);
    }
  });

  test('gives the same film rate for a reading in rev/min and in rev/s', () => {
    expect(tachometerFilmFps(1000, 'perMinute', 1, 1)).toBeCloseTo(50 / 3, 12);
    expect(tachometerFilmFps(1000 / 60, 'perSecond', 1, 1)).toBeCloseTo(50 / 3, 12);
  });

  test('transcription: reading and film rate are inverse to each other', () => {
    fc.assert(
      fc.property(
        gearing.filmFps,
        gearing.unit,
        gearing.marks,
        gearing.turns,
        (filmFps, unit, marks, turns) => {
          const reading = tachometerReading(filmFps, unit, marks, turns);
          const back = tachometerFilmFps(reading, unit, marks, turns);
          expect(Math.abs(back / filmFps - 1)).toBeLessThan(1e-12);
        },
      ),
    );
  });

  test('the true rate lies within the error for every true reading that would show the same', () => {
    fc.assert(
      fc.property(
        gearing.filmFps,
        gearing.unit,
        gearing.marks,
        gearing.turns,
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (trueFps, unit, marks, turns, step, drift) => {
          const resolution = 0.5;
          const accuracyPercent = 1;
          // The instrument errs by a share of what it shows and by up to one step.
          const trueReading = tachometerReading(trueFps, unit, marks, turns);
          const shown = (trueReading + step * resolution) / (1 - (drift * accuracyPercent) / 100);
          fc.pre(shown > 0);
          const filmFps = tachometerFilmFps(shown, unit, marks, turns);
          const error = tachometerErrorFps(shown, unit, marks, turns, resolution, accuracyPercent);
          expect(Math.abs(filmFps - trueFps)).toBeLessThanOrEqual(error * (1 + 1e-9));
        },
      ),
    );
  });

  test('more marks or more turns for the same reading mean a slower film', () => {
    fc.assert(
      fc.property(gearing.filmFps, gearing.marks, gearing.turns, (filmFps, marks, turns) => {
        const reading = tachometerReading(filmFps, 'perMinute', marks, turns);
        expect(tachometerFilmFps(reading, 'perMinute', marks + 1, turns)).toBeLessThan(filmFps);
        expect(tachometerFilmFps(reading, 'perMinute', marks, turns * 1.01)).toBeLessThan(filmFps);
      }),
    );
  });

  test('refuses a reading beyond any projector and names it', () => {
    expect(() => tachometerFilmFps(100_000, 'perMinute', 1, 1)).toThrow(OutOfRangeError);
    expect(() => tachometerFilmFps(100_000, 'perMinute', 1, 1)).toThrow(/^reading:/u);
    expect(() => tachometerFilmFps(0, 'perMinute', 1, 1)).toThrow(/^reading:/u);
    expect(() => tachometerFilmFps(10, 'perMinute', 1.5, 1)).toThrow(/^marksPerTurn:/u);
  });
});
