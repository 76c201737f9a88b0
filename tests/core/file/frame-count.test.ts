import { describe, expect, test } from 'vitest';
import { expectedFrames } from '../../../src/core/file/frame-count.ts';
import { evaluate, fillEntries } from '../../../src/worksheets/machine/evaluate.ts';
import { worksheet } from '../../../src/worksheets/file/frame-count/worksheet.ts';

const run = (entries: Record<string, string>) =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries)).outcome!;

describe('the frames on a reel', () => {
  test('are 14,323 on 60.40 m of Super 8 shrunk by 0.4 %', () => {
    expect(Math.round(expectedFrames(60_400, 4.234, 0.4, 0, 0).frames)).toBe(14_323);
  });

  test('may be off by what both measurements allow, at every corner', () => {
    const { frames, errorFrames } = expectedFrames(60_400, 4.234, 0.4, 100, 0.1);
    let widest = 0;
    for (const length of [60_300, 60_500]) {
      for (const shrinkage of [0.003, 0.005]) {
        // Counted frame by frame along the film.
        let along = 0;
        let count = 0;
        while (along + 4.234 * (1 - shrinkage) <= length) {
          along += 4.234 * (1 - shrinkage);
          count += 1;
        }
        widest = Math.max(widest, Math.abs(count - frames));
      }
    }
    expect(Math.abs(errorFrames - widest)).toBeLessThan(1.5);
  });

  test('are accounted for, missing or too many', () => {
    const exact = { lengthErrorMetres: '0.01', shrinkageErrorPercent: '0' };
    expect(run({ ...exact, foundFrames: '14321', lostFrames: '2' }).verdict.level).toBe('note');
    const few = run({ ...exact, foundFrames: '14000', lostFrames: '2' }).verdict;
    expect(few.level).toBe('stop');
    expect(few.sentence).toMatch(/too few/u);
    expect(run({ ...exact, foundFrames: '14500' }).verdict.sentence).toMatch(/too many/u);
  });
});
