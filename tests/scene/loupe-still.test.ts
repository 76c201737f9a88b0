import { describe, expect, it } from 'vitest';
import { underLoupe } from '../../src/scene/loupe-still.ts';

/** A still whose every pixel names its place: row in the high half, column in the low. */
const WIDTH = 64;
const named = Uint32Array.from(
  { length: WIDTH * 48 },
  (_, at) => (Math.floor(at / WIDTH) << 16) | (at % WIDTH),
);
const columnOf = (pixel: number): number => pixel & 0xffff;
const rowOf = (pixel: number): number => pixel >> 16;

describe('a still under the loupe', () => {
  it('shows a quarter of the width about its place, each pixel as a hard square', () => {
    const seen = underLoupe(named, WIDTH, 32, { x: 0.5, y: 0.5 });
    expect(seen).toHaveLength(32 * 24);
    const columns = new Set([...seen].map(columnOf));
    const rows = new Set([...seen].map(rowOf));
    expect([Math.min(...columns), Math.max(...columns), columns.size]).toEqual([24, 39, 16]);
    expect([Math.min(...rows), Math.max(...rows), rows.size]).toEqual([18, 29, 12]);
    expect(seen[0]).toBe(seen[1]);
    expect(seen[0]).toBe(seen[32]);
  });

  it('stays inside the picture at its corners', () => {
    const corner = underLoupe(named, WIDTH, 32, { x: 1, y: 1 });
    expect(columnOf(corner.at(-1)!)).toBe(63);
    expect(rowOf(corner.at(-1)!)).toBe(47);
    expect(underLoupe(named, WIDTH, 32, { x: 0, y: 0 })[0]).toBe(0);
  });
});
