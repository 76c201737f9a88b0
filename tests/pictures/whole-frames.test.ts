import { describe, expect, test } from 'vitest';
import { Picture } from '../../src/pictures/whole-frames.tsx';
import { draw, numberOf, texts } from './draw.ts';
import { wholeFrames } from './samples.ts';

describe('whole frames', () => {
  test('divides a blended frame by the shares, the earlier film frame on the left', () => {
    const root = draw(Picture, wholeFrames);
    const shares = root.querySelectorAll('rect.pic-share');
    expect(shares).toHaveLength(1);
    const mains = root.querySelectorAll('rect.pic-tint');
    const [, main] = mains;
    expect(numberOf(main, 'width') / numberOf(shares[0], 'width')).toBeCloseTo(3, 1);
    expect(numberOf(shares[0], 'x')).toBeLessThan(numberOf(main, 'x'));
  });

  test('puts a later film frame on the right', () => {
    const root = draw(Picture, {
      ...wholeFrames,
      cameraFrames: [{ filmFrame: 4, purity: 0.6, otherFilmFrame: 5 }],
    });
    const share = root.querySelector('rect.pic-share');
    const main = root.querySelector('rect.pic-tint');
    expect(numberOf(share, 'x')).toBeCloseTo(numberOf(main, 'x') + numberOf(main, 'width'), 1);
  });

  test('names every share in words, and hatches what is blended', () => {
    const root = draw(Picture, wholeFrames);
    expect(texts(root).filter((text) => text === 'whole')).toHaveLength(2);
    expect(texts(root)).toEqual(expect.arrayContaining(['2: 75 %', '1: 25 %']));
    expect(root.querySelector('rect.pic-share')?.getAttribute('fill')).toBe(
      'url(#sheet-picture-0-hatch)',
    );
  });

  test('never calls a blended frame wholly one film frame', () => {
    const root = draw(Picture, {
      ...wholeFrames,
      cameraFrames: [{ filmFrame: 7, purity: 0.999, otherFilmFrame: 8 }],
    });
    expect(texts(root)).toEqual(expect.arrayContaining(['7: >99 %', '8: <1 %']));
  });

  test('draws the first of many and says how many are left out', () => {
    const cameraFrames = Array.from({ length: 100 }, (_, index) => ({
      filmFrame: index + 1,
      purity: 1,
    }));
    const root = draw(Picture, { ...wholeFrames, cameraFrames });
    expect(root.querySelectorAll('rect.pic-tint')).toHaveLength(12);
    expect(texts(root)).toContain('88 more not drawn');
  });
});
