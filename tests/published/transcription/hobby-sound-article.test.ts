import { expect, test } from 'vitest';
import { findSoundSystem } from '../../../src/core/file/sound-separation.ts';

test('Super 8 magnetic sound lies 18 frames ahead, that of standard 8 56 frames', () => {
  expect(findSoundSystem('super-8-magnetic').framesAhead).toBe(18);
  expect(findSoundSystem('8mm-type-r-magnetic').framesAhead).toBe(56);
});
