import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { outputFramesFor, repeatPattern } from '../../src/core/file/repeat-pattern.ts';
import { speedChangePercent } from '../../src/core/file/speed-change.ts';

const film = new Fraction(24);
const fields = new Fraction(60);

describe('the glossary on pulldown', () => {
  test('12 fields are added to each 24 film frames, 30 frames in all', () => {
    const filled = outputFramesFor(24, film, fields);
    expect(filled - 2 * 24).toBe(12);
    expect(filled / 2).toBe(30);
  });

  test('four film frames make ten fields and five frames', () => {
    const pattern = repeatPattern(film, fields);
    expect(outputFramesFor(4, film, fields)).toBe(10);
    expect([pattern.fewestRepeats, pattern.mostRepeats]).toEqual([2, 3]);
    expect(outputFramesFor(4, film, fields) / 2).toBe(5);
  });

  test('slowing by one in a thousand is 1000/1001 to the four digits printed', () => {
    expect(speedChangePercent(24, 24_000 / 1001)).toBeCloseTo(-0.1, 3);
  });
});
