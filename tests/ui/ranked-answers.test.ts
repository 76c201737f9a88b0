import { describe, expect, it } from 'vitest';
import { rankedAnswers } from '../../src/ui/AnswerList.tsx';
import type { Answer, VerdictLevel } from '../../src/worksheets/machine/types.ts';

const answers = (levels: readonly (VerdictLevel | undefined)[]): Readonly<Record<string, Answer>> =>
  Object.fromEntries(
    levels.map((level, at) => [`a${at}`, { label: `A ${at}`, text: '1', level } as Answer]),
  );
const keys = (lines: readonly (readonly [string, Answer])[]) => lines.map(([key]) => key);

describe('the answers of a sheet', () => {
  it('stand open as far as the first four, and the rest are folded', () => {
    const { main, others } = rankedAnswers(answers(Array.from({ length: 9 }, () => undefined)));
    expect(keys(main)).toEqual(['a0', 'a1', 'a2', 'a3']);
    expect(keys(others)).toEqual(['a4', 'a5', 'a6', 'a7', 'a8']);
  });

  it('never fold away one that warns', () => {
    const levels = [
      undefined,
      undefined,
      undefined,
      undefined,
      'good',
      'stop',
      'note',
      'care',
    ] as const;
    const { main, others } = rankedAnswers(answers(levels));
    expect(keys(main)).toEqual(['a0', 'a1', 'a2', 'a3', 'a5', 'a7']);
    expect(keys(others)).toEqual(['a4', 'a6']);
  });

  it('are all open where only one would be folded', () => {
    expect(
      rankedAnswers(answers([undefined, undefined, undefined, undefined, undefined])).others,
    ).toEqual([]);
    expect(rankedAnswers({})).toEqual({ main: [], others: [] });
  });
});
