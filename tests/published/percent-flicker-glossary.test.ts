import { expect, test } from 'vitest';
import { makeLamp, switchedLevels } from '../../src/core/lamp-flicker.ts';

test('transcription: percent flicker is 100 × (most − least) ÷ (most + least)', () => {
  for (const depthPercent of [0, 10, 35, 100]) {
    for (const onPercent of [20, 50, 80]) {
      const { high, low } = switchedLevels(makeLamp('switched', 200, depthPercent, onPercent));
      expect((100 * (high - low)) / (high + low)).toBeCloseTo(depthPercent, 9);
    }
  }
});

test('0 % is steady; 100 % turns fully off in each cycle', () => {
  expect(switchedLevels(makeLamp('switched', 200, 0)).low).toBe(1);
  expect(switchedLevels(makeLamp('switched', 200, 100)).low).toBe(0);
});
