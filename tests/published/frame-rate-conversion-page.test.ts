import Fraction from 'fraction.js';
import { expect, test } from 'vitest';
import { shownSeconds } from '../../src/core/speed-change.ts';
import { pitchSemitones, speedRatio } from '../../src/core/sound-retiming.ts';

const native = new Fraction(24_000, 1001);
const ratio = speedRatio(native, new Fraction(25));

// One hour at 24000/1001 shown at 25.
test('the speed ratio is 104.271 %', () => {
  expect(100 * ratio.valueOf()).toBeCloseTo(104.271, 3);
});

test('the pitch rises by 72.4 cents', () => {
  expect(100 * pitchSemitones(ratio.valueOf())).toBeCloseTo(72.4, 1);
});

test('an hour lasts 57:32.56, 147.44 s less', () => {
  // The page counts 86,314 whole frames, up to 0.02 s more than an hour holds.
  const seconds = shownSeconds(3600, native.valueOf(), 25);
  expect(Math.abs(seconds - (57 * 60 + 32.56))).toBeLessThan(0.02);
  expect(Math.abs(3600 - seconds - 147.44)).toBeLessThan(0.02);
});

test('24 shown at 25 is 4.17 % fast and about 71 cents up', () => {
  const fast = speedRatio(new Fraction(24), new Fraction(25)).valueOf();
  expect(100 * (fast - 1)).toBeCloseTo(4.17, 2);
  expect(Math.round(100 * pitchSemitones(fast))).toBe(71);
});
