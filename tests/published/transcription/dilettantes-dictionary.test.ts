import { expect, test } from 'vitest';
import { findSoundSystem } from '../../../src/core/file/sound-separation.ts';

test('16 mm sound is advanced 26 frames, 35 mm sound 20', () => {
  expect(findSoundSystem('16mm-optical').framesAhead).toBe(26);
  expect(findSoundSystem('35mm-optical').framesAhead).toBe(20);
});
