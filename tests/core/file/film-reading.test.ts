// Parts of the reading of a film recording against sums written here.
import { inv, det, type Matrix } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { bandMotionOfPictures, gramAccumulator } from '../../../src/core/file/band-motion.ts';
import { cameraSlots } from '../../../src/core/file/camera-slots.ts';
import { frameTest } from '../../../src/core/file/frame-filter.ts';
import { checkResult } from '../../../src/core/file/result-check.ts';
import { scaledInverse } from '../../../src/core/file/scaled-inverse.ts';
import { makeChance } from '../../tools/film-clip/chance.ts';

describe('what is kept of pictures', () => {
  const chance = makeChance(7);
  const pictures = Array.from({ length: 9 }, () =>
    Float64Array.from({ length: 48 * 36 }, () => chance.between(0.2, 0.8)),
  );
  const seconds = pictures.map((_, frame) => frame / 25);

  /** Rows brought to 0.4, differences and products by plain sums. */
  function product(frame: number, band: number, lag: number): number {
    const level = (picture: Float64Array, row: number, column: number): number => {
      let sum = 0;
      for (let each = 0; each < 48; each += 1) sum += picture[row * 48 + each]!;
      return (0.4 * picture[row * 48 + column]!) / (sum / 48);
    };
    let sum = 0;
    for (let row = band * 3; row < band * 3 + 3; row += 1) {
      for (let column = 0; column < 48; column += 1) {
        const change = (at: number): number =>
          level(pictures[at]!, row, column) - level(pictures[at - 1]!, row, column);
        sum += change(frame) * change(frame - lag);
      }
    }
    return sum / 144;
  }

  it('are the products of differences, band by band', () => {
    const { gram } = bandMotionOfPictures(pictures, seconds);
    expect(gram).toHaveLength(9 * 72);
    for (const [frame, band, lag] of [
      [1, 0, 0],
      [5, 11, 4],
      [8, 6, 5],
      [8, 3, 1],
    ] as const) {
      expect(gram[(frame * 12 + band) * 6 + lag]).toBeCloseTo(product(frame, band, lag), 12);
    }
    // No difference before the second picture.
    expect(gram.slice(0, 72).every((number) => number === 0)).toBe(true);
    expect(gram[(2 * 12 + 4) * 6 + 2]).toBe(0);
  });

  it('is exactly 0 where a band falls behind a blade', () => {
    const dark = pictures[3]!.map((luma, at) => (at < 144 ? luma * 0.3 : luma));
    const { gram } = bandMotionOfPictures(
      pictures.map((picture, frame) => (frame === 3 ? dark : picture)),
      seconds,
    );
    expect(gram[3 * 72]).toBe(0);
    expect(gram[3 * 72 + 6]).toBeGreaterThan(0);
  });

  it('does not change with the brightness of a row', () => {
    const dimmed = pictures.map((picture, frame) =>
      picture.map((luma, at) => luma * (0.8 + 0.2 * Math.sin(frame + Math.floor(at / 48)))),
    );
    const { gram } = bandMotionOfPictures(pictures, seconds);
    const { gram: dim } = bandMotionOfPictures(dimmed, seconds);
    for (const [at, number] of gram.entries()) expect(dim[at]).toBeCloseTo(number, 10);
  });

  it('refuses pictures of another size, and other counts', () => {
    expect(() => gramAccumulator().add(new Float64Array(100))).toThrow(RangeError);
    expect(() => bandMotionOfPictures(pictures, [0, 1])).toThrow(RangeError);
  });
});

describe('the slots of camera frames', () => {
  it('keep a camera rate through times rounded to a millisecond', () => {
    const times = Float64Array.from({ length: 600 }, (_, at) => Math.round(at * 33.3666667) / 1000);
    const slots = cameraSlots(times);
    if ('irregularSeconds' in slots) throw new Error('refused');
    expect(slots.cameraFps).toBeCloseTo(30_000 / 1001, 3);
    expect(slots.slots).toBe(600);
  });

  it('leave a slot empty for each frame that the camera dropped', () => {
    const shown = Array.from({ length: 100 }, (_, at) => at).filter(
      (at) => ![7, 50, 51].includes(at),
    );
    const slots = cameraSlots(Float64Array.from(shown, (at) => 2 + at / 50));
    if ('irregularSeconds' in slots) throw new Error('refused');
    expect([...slots.slotOfFrame]).toEqual(shown);
    expect(slots.firstSeconds).toBeCloseTo(2, 9);
  });

  it('are refused where a gap is no whole number of frames, with the place', () => {
    const times = Float64Array.from({ length: 100 }, (_, at) => at / 50 + (at >= 60 ? 0.01 : 0));
    expect(cameraSlots(times)).toHaveProperty('irregularSeconds');
    expect(cameraSlots(Float64Array.from([0, 0.02, 0.02, 0.06]))).toEqual({
      irregularSeconds: 0.02,
    });
  });
});

it('a scaled inverse is the inverse times the root of the determinant', () => {
  const matrix = [
    [4, 1, 0.5],
    [1, 3, -0.2],
    [0.5, -0.2, 2],
  ];
  const expected = (inv(matrix) as unknown as number[][]).flat();
  const root = det(matrix as unknown as Matrix) ** (1 / 3);
  const found = scaledInverse(Float64Array.from(matrix.flat()), 3);
  for (const [at, number] of expected.entries()) expect(found[at]).toBeCloseTo(number * root, 12);
});

describe('the test of a frame number', () => {
  /** Arguments of a call, split at the commas that stand in no inner bracket. */
  const splitArguments = (text: string): readonly string[] => {
    const parts: string[] = [''];
    let depth = 0;
    for (const sign of text) {
      if (sign === '(') depth += 1;
      if (sign === ')') depth -= 1;
      if (sign === ',' && depth === 0) parts.push('');
      else parts[parts.length - 1] += sign;
    }
    return parts;
  };
  /** The tool's three words, read as it reads them. */
  const holds = (text: string, n: number): boolean => {
    const [, name, inner] = /^(if|lt|eq)\((.*)\)$/u.exec(text)!;
    const [first, second, third] = splitArguments(inner!);
    if (name === 'if') return holds(first!, n) ? holds(second!, n) : holds(third!, n);
    expect(first).toBe('n');
    return name === 'lt' ? n < Number(second) : n === Number(second);
  };

  it('is true for exactly the listed frames', () => {
    const chance = makeChance(3);
    for (const count of [1, 2, 3, 17, 200]) {
      const frames = [
        ...new Set(Array.from({ length: count }, () => Math.floor(chance.between(0, 900)))),
      ];
      frames.sort((a, b) => a - b);
      const text = frameTest(frames);
      const found = Array.from({ length: 900 }, (_, n) => n).filter((n) => holds(text, n));
      expect(found).toEqual(frames);
    }
  });

  it('is refused for a list that is empty or does not ascend', () => {
    for (const frames of [[], [3, 3], [5, 4], [1.5], [-1]])
      expect(() => frameTest(frames)).toThrow(RangeError);
  });
});

describe('the check of a result', () => {
  const recording = Array.from({ length: 300 }, (_, at) => `picture ${at}`);
  const list = Array.from({ length: 100 }, (_, at) => at * 3 + 1);
  const right = list.map((frame) => recording[frame]!);

  it('passes exactly the listed frames', () => {
    expect(checkResult(recording, list, right)).toEqual({ isExact: true, missing: [], extra: [] });
  });

  it.each([
    ['one missing', [...right.slice(0, 40), ...right.slice(41)], [40], []],
    ['the first missing', right.slice(1), [0], []],
    ['the end missing', right.slice(0, 97), [97, 98, 99], []],
    ['one twice', [...right.slice(0, 41), right[40]!, ...right.slice(41)], [], [[41, 121]]],
    ['a neighbour', right.with(60, recording[182]!), [60], [[60, 182]]],
    ['a strange picture', right.with(60, 'blend'), [60], [[60, undefined]]],
  ] as const)('names %s', (_, result, missing, extra) => {
    const check = checkResult(recording, list, result);
    expect(check.isExact).toBe(false);
    expect(check.missing).toEqual(missing);
    expect(check.extra.map(({ resultFrame, cameraFrame }) => [resultFrame, cameraFrame])).toEqual(
      extra,
    );
  });
});
