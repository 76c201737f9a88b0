import { describe, expect, test } from 'vitest';
import { v210LineBytes, v210PackedLineBytes } from '../../../src/core/file/frame-bytes.ts';

describe('the description of v210', () => {
  test('holds three samples in 32 bits, so six pixels (twelve samples) in four words', () => {
    const samples = 2 * 6;
    expect(v210PackedLineBytes(6)).toBe((samples / 3) * 4);
    expect(v210PackedLineBytes(12)).toBe(2 * v210PackedLineBytes(6));
  });

  test('starts every line at a multiple of 128 bytes', () => {
    for (let width = 1; width <= 4096; width += 1) {
      const bytes = v210LineBytes(width);
      expect(bytes % 128).toBe(0);
      expect(bytes).toBeGreaterThanOrEqual(v210PackedLineBytes(width));
      expect(bytes - v210PackedLineBytes(width)).toBeLessThan(128);
    }
  });
});
