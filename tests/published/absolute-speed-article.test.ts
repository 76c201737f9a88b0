import { expect, test } from 'vitest';
import { pitchSemitones } from '../../src/core/file/sound-retiming.ts';
import { speedChangePercent } from '../../src/core/file/speed-change.ts';

test('a semitone is a factor of 1.05946, about 6 %', () => {
  expect(pitchSemitones(1.05946)).toBeCloseTo(1, 3);
  expect(pitchSemitones(1.06)).toBeCloseTo(1, 1);
});

test('films shown at 25 run 4.166 % fast, close to a semitone sharp', () => {
  // 4.1667: the page cuts off the last digit.
  expect(Math.floor(1000 * speedChangePercent(24, 25)) / 1000).toBe(4.166);
  expect(pitchSemitones(25 / 24)).toBeGreaterThan(0.5);
});
