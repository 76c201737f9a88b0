import { expect, test } from 'vitest';
import { findSoundSystem } from '../../../src/core/file/sound-separation.ts';

test('16 mm optical sound precedes its picture by 26 frames', () => {
  expect(findSoundSystem('16mm-optical').framesAhead).toBe(26);
});
