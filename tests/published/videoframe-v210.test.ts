import { expect, test } from 'vitest';
import { v210LineBytes, v210PackedLineBytes } from '../../src/core/file/frame-bytes.ts';

test('a line of 1,280 pixels is 214 groups, 3,424 bytes', () => {
  expect(v210PackedLineBytes(1280)).toBe(3424);
  expect(v210PackedLineBytes(1280) / 16).toBe(214);
});

test('with the padding of the format it is 3,456 bytes', () => {
  expect(v210LineBytes(1280)).toBe(3456);
});
