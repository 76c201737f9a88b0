import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';
import { isKept } from '../../tools/kept-by-rule.ts';
import {
  cameraFrameInReel,
  keepReelCsv,
  keepRulesOf,
  makeKeepReel,
} from '../../../src/core/file/keep-ties.ts';

const reelOf = (ties: readonly (readonly [number, number])[], filmFrames: number) =>
  makeKeepReel(
    ties.map(([filmFrame, cameraFrame]) => ({ filmFrame, cameraFrame })),
    new Fraction(18),
    new Fraction(50),
    filmFrames,
  );

describe('keep list through several ties', () => {
  test('meets every tie and goes straight in between', () => {
    const reel = reelOf(
      [
        [0, 10],
        [4, 20],
        [10, 38],
      ],
      11,
    );
    const kept = Array.from({ length: 11 }, (_, filmFrame) => cameraFrameInReel(reel, filmFrame));
    expect(kept).toEqual([10, 13, 15, 18, 20, 23, 26, 29, 32, 35, 38]);
  });

  test('follows the typed rates after the last tie', () => {
    const reel = reelOf(
      [
        [0, 0],
        [9, 27],
      ],
      19,
    );
    expect(cameraFrameInReel(reel, 18)).toBe(52);
  });

  test('the rules together keep exactly the frames of the list, each once', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            steps: fc.integer({ min: 1, max: 40 }),
            halves: fc.integer({ min: 0, max: 60 }),
          }),
          { minLength: 1, maxLength: 6 },
        ),
        fc.integer({ min: 0, max: 100 }),
        fc.integer({ min: 0, max: 30 }),
        (parts, firstHalf, after) => {
          const ties: [number, number][] = [[0, firstHalf / 2]];
          for (const { steps, halves } of parts) {
            const [filmFrame, cameraFrame] = ties.at(-1) ?? [0, 0];
            // At least one camera frame to each film frame.
            ties.push([filmFrame + steps, cameraFrame + steps + halves / 2]);
          }
          const filmFrames = (ties.at(-1)?.[0] ?? 0) + 1 + after;
          const reel = reelOf(ties, filmFrames);
          const kept = Array.from({ length: filmFrames }, (_, at) => cameraFrameInReel(reel, at));
          const rules = keepRulesOf(reel) ?? [];
          const picked: number[] = [];
          for (let frame = 0; frame <= (kept.at(-1) ?? 0) + 5; frame += 1) {
            const times = rules.filter((rule) => isKept(rule, frame)).length;
            expect(times).toBeLessThan(2);
            if (times === 1) picked.push(frame);
          }
          expect(picked).toEqual(kept);
        },
      ),
    );
  });

  test('refuses ties that go back, repeat or lie beyond the reel', () => {
    const bad = (ties: readonly (readonly [number, number])[]) => () => reelOf(ties, 100);
    expect(bad([[1, 3]])).toThrow(OutOfRangeError);
    expect(
      bad([
        [0, 3],
        [0, 6],
      ]),
    ).toThrow(OutOfRangeError);
    expect(
      bad([
        [0, 3],
        [50, 2],
      ]),
    ).toThrow(OutOfRangeError);
    expect(
      bad([
        [0, 3],
        [100, 400],
      ]),
    ).toThrow(OutOfRangeError);
  });

  test('writes one line for each film frame and says of each whether it is sure', () => {
    const reel = reelOf(
      [
        [0, 10],
        [2, 16],
      ],
      3,
    );
    expect(keepReelCsv(reel, 50, (filmFrame) => filmFrame !== 1)).toBe(
      'film_frame,camera_frame,time,whole\n0,10,0.200000,sure\n1,13,0.260000,unsure\n2,16,0.320000,sure\n',
    );
  });
});
