import { expect, test } from 'vitest';
import { DPX_HEADER_BYTES, dpxFrameBytes } from '../../../src/core/file/frame-bytes.ts';

// The table places the first field of the image part at byte 768 and the part of the user at 2048.
test('the standard parts of the header end where the part of the user starts, at byte 2048', () => {
  expect(DPX_HEADER_BYTES).toBe(2048);
  expect(dpxFrameBytes(1, 1)).toBe(2048 + 4);
});
