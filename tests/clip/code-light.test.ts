import { describe, expect, it } from 'vitest';
import { codeLevels, codeLight, rangeEnds } from '../../src/clip/read/code-light.ts';

const limited = { bitDepth: 8, isFullRange: false, transfer: 'bt709' };

describe('code values as light', () => {
  it('take black and white from the range, in 8 and in 10 bits', () => {
    expect(codeLevels(limited)[16]).toBe(0);
    expect(codeLevels(limited)[235]).toBe(1);
    expect(codeLevels(limited)[0]).toBe(0);
    expect(codeLevels({ ...limited, bitDepth: 10 })[940]).toBe(1);
    expect(codeLevels({ ...limited, bitDepth: 10 })[64]).toBe(0);
    expect(codeLevels({ ...limited, isFullRange: true })[255]).toBe(1);
  });

  it('undo the camera curve: coding light and reading it back gives the same light', () => {
    const light = codeLight(limited);
    const white = light[235]!;
    for (const share of [0.005, 0.0179, 0.0181, 0.18, 0.5, 0.9]) {
      // BT.709, item 1.2, from memory.
      const signal = share < 0.018 ? 4.5 * share : 1.099 * share ** 0.45 - 0.099;
      const code = Math.round(16 + 219 * signal);
      expect(Math.abs(light[code]! / white - share)).toBeLessThan(0.005);
    }
    expect(Math.max(...light)).toBe(1);
  });

  it.each(['bt709', 'smpte170m', 'iec61966-2-1', 'linear', 'hlg', 'pq', undefined, 'toString'])(
    'rise from nothing to one for the curve %s',
    (transfer) => {
      const light = codeLight({ bitDepth: 10, isFullRange: true, transfer });
      expect(light[0]).toBe(0);
      expect(light.at(-1)).toBeCloseTo(1, 12);
      expect(light.every((each, at) => at === 0 || each >= light[at - 1]!)).toBe(true);
    },
  );

  it('use 2.2 where the curve is unknown', () => {
    const light = codeLight({ bitDepth: 8, isFullRange: true, transfer: undefined });
    expect(light[128]).toBeCloseTo((128 / 255) ** 2.2, 12);
  });

  it('are clipped where a camera stops: at white, or at the top above it', () => {
    const counts = new Float64Array(256);
    counts[100] = 900;
    counts[235] = 100;
    expect(rangeEnds(counts, limited).clippedShare).toBeCloseTo(0.1, 12);
    // Light goes on above white here, and nothing is at the top.
    counts[245] = 100;
    expect(rangeEnds(counts, limited).clippedShare).toBe(0);
    counts[254] = 100;
    expect(rangeEnds(counts, limited).clippedShare).toBeCloseTo(100 / 1200, 12);
    counts[16] = 800;
    expect(rangeEnds(counts, limited).blackShare).toBeCloseTo(0.4, 12);
    expect(rangeEnds([], limited)).toEqual({ clippedShare: 0, blackShare: 0 });
  });
});
