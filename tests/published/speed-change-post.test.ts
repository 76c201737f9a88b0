import { expect, test } from 'vitest';
import { pitchSemitones } from '../../src/core/sound-retiming.ts';

test('4.096 % up is 69.5 cents, 4.096 % down is −72.4 cents', () => {
  expect(100 * pitchSemitones(1.04096)).toBeCloseTo(69.5, 1);
  expect(100 * pitchSemitones(0.95904)).toBeCloseTo(-72.4, 1);
});

test('up and down again by the same percentage does not come back to the same pitch', () => {
  expect(pitchSemitones(1.04096) + pitchSemitones(0.95904)).toBeLessThan(-0.02);
});
