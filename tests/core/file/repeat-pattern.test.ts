import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import {
  filmFrameAtOutput,
  lostFilmFrames,
  outputFramesFor,
  repeatPattern,
} from '../../../src/core/file/repeat-pattern.ts';

const fraction = (top: number, bottom = 1): Fraction => new Fraction(top, bottom);

/** Plays a film onto a timeline with a clock of whole ticks and notes which frame is up. */
function playByClock(
  nativeFps: Fraction,
  deliveryFps: Fraction,
  outputFrames: number,
): readonly number[] {
  // In ticks of 1/(f·g) of the common denominators every frame of either lasts a whole number.
  const filmTicks = deliveryFps.n * nativeFps.d;
  const outputTicks = nativeFps.n * deliveryFps.d;
  const shown: number[] = [];
  let film = 0;
  let filmEnds = filmTicks;
  let now = 0n;
  for (let output = 0; output < outputFrames; output += 1) {
    while (filmEnds <= now) {
      film += 1;
      filmEnds += filmTicks;
    }
    shown.push(film);
    now += outputTicks;
  }
  return shown;
}

const anyRate = fc
  .tuple(fc.integer({ min: 10, max: 130 }), fc.constantFrom(1, 2, 3, 1.001))
  .map(([whole, divisor]) => new Fraction(whole).div(String(divisor)));

describe('repeat pattern', () => {
  test('18 in 50 is threes and twos, 25 output frames for 9 film frames', () => {
    const pattern = repeatPattern(fraction(18), fraction(50));
    expect(pattern.repeats).toEqual([3, 3, 3, 3, 2, 3, 3, 3, 2]);
    expect(pattern.filmFramesPerPeriod).toBe(9n);
    expect(pattern.outputFramesPerPeriod).toBe(25n);
    expect([pattern.fewestRepeats, pattern.mostRepeats]).toEqual([2, 3]);
  });

  test('16 2/3 in 25 is twos and ones', () => {
    expect(repeatPattern(fraction(50, 3), fraction(25)).repeats).toEqual([2, 1]);
  });

  test('agrees with playing the film by a clock', () => {
    fc.assert(
      fc.property(anyRate, anyRate, (nativeFps, deliveryFps) => {
        const shown = playByClock(nativeFps, deliveryFps, 200);
        for (const [output, film] of shown.entries()) {
          expect(filmFrameAtOutput(output, nativeFps, deliveryFps)).toBe(film);
        }
        const { repeats } = repeatPattern(nativeFps, deliveryFps);
        const lastFilm = shown.at(-1) ?? 0;
        for (let film = 0; film < Math.min(lastFilm, repeats.length); film += 1) {
          expect(repeats[film]).toBe(shown.filter((one) => one === film).length);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('each film frame is shown the lower or the upper whole number of times', () => {
    fc.assert(
      fc.property(anyRate, anyRate, (nativeFps, deliveryFps) => {
        const pattern = repeatPattern(nativeFps, deliveryFps);
        const ratio = deliveryFps.div(nativeFps).valueOf();
        for (const repeats of pattern.repeats) {
          expect([Math.floor(ratio), Math.ceil(ratio)]).toContain(repeats);
        }
        if (pattern.keepsEveryFrame) expect(pattern.repeats).not.toContain(0);
        else if (pattern.filmFramesPerPeriod < 200n) expect(pattern.repeats).toContain(0);
      }),
    );
  });

  test('a whole period fills its output frames exactly', () => {
    fc.assert(
      fc.property(anyRate, anyRate, (nativeFps, deliveryFps) => {
        const pattern = repeatPattern(nativeFps, deliveryFps);
        fc.pre(BigInt(pattern.repeats.length) === pattern.filmFramesPerPeriod);
        const total = pattern.repeats.reduce((sum, repeats) => sum + repeats, 0);
        expect(BigInt(total)).toBe(pattern.outputFramesPerPeriod);
      }),
    );
  });

  test('frames are lost only when the delivery is slower than the film, as many as are short', () => {
    fc.assert(
      fc.property(anyRate, anyRate, (nativeFps, deliveryFps) => {
        const filmFrames = 300;
        const outputs = outputFramesFor(filmFrames, nativeFps, deliveryFps);
        const shown = new Set<number>();
        for (let output = 0; output < outputs; output += 1) {
          shown.add(filmFrameAtOutput(output, nativeFps, deliveryFps));
        }
        expect(Math.max(...shown)).toBeLessThan(filmFrames);
        const lost = filmFrames - shown.size;
        expect(lostFilmFrames(filmFrames, nativeFps, deliveryFps)).toBe(lost);
        // Over a short film a delivery that is a trace slower has not lost a whole frame yet.
        const short = new Fraction(1).sub(deliveryFps.div(nativeFps)).mul(filmFrames).floor();
        expect(lost).toBe(Math.max(0, short.valueOf()));
        if (deliveryFps.gte(nativeFps)) expect(lost).toBe(0);
      }),
      { numRuns: 60 },
    );
  });

  test('a phase moves the pattern along and leaves the counts as they are', () => {
    fc.assert(
      fc.property(
        anyRate,
        anyRate,
        fc.integer({ min: 0, max: 11 }),
        (nativeFps, deliveryFps, twelfths) => {
          const phase = new Fraction(twelfths, 12);
          const ratio = deliveryFps.div(nativeFps).valueOf();
          const counts = new Map<number, number>();
          for (let output = 0; output < 300; output += 1) {
            const film = filmFrameAtOutput(output, nativeFps, deliveryFps, phase);
            counts.set(film, (counts.get(film) ?? 0) + 1);
          }
          const films = [...counts.keys()].sort((a, b) => a - b).slice(1, -1);
          for (const film of films) {
            expect([Math.floor(ratio), Math.ceil(ratio)]).toContain(counts.get(film));
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('a pattern that never comes back is listed in part', () => {
    const pattern = repeatPattern(new Fraction('17.98765'), fraction(25));
    expect(pattern.repeats).toHaveLength(200);
    expect(pattern.filmFramesPerPeriod > 200n).toBe(true);
  });
});
