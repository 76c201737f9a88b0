import { expect, test } from 'vitest';
import { findSoundSystem } from '../../../src/core/file/sound-separation.ts';

test('16 mm optical prints carry their sound 26 frames ahead (page 70)', () => {
  expect(findSoundSystem('16mm-optical').framesAhead).toBe(26);
});
