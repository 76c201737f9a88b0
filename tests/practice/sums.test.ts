import { describe, expect, it } from 'vitest';
import { readPractice } from '../content/read-content.ts';
import { judge, drawProblem } from '../../src/ui/practice/practice-problem.ts';
import { findWorksheet } from '../../src/worksheets/registry.ts';
import { checkSums } from './sums.ts';

const kinds = readPractice();

describe.each(kinds)('sums of $id', (kind) => {
  it('are accepted as printed and typed, and every slip is refused and named', () => {
    const named = checkSums(kind, 100);
    expect([...named].toSorted()).toEqual(kind.slips.map(({ words }) => words).toSorted());
    expect(named.size).toBeGreaterThanOrEqual(2);
  });
});

describe('a slip', () => {
  const problemOf = (id: string): Parameters<typeof judge> => {
    const kind = kinds.find((each) => each.id === id)!;
    return [kind, drawProblem(kind, findWorksheet(kind.worksheet), () => 0), ''];
  };
  // Worked out by hand from the first numbers of each kind in content/practice.yaml.
  it.each([
    ['flash-rate', '2', /flashes of one frame/u],
    ['matching-time', '1/16', /frames for flashes/u],
    ['repeats', '0.64', /upside down/u],
    ['frames-on-a-length', '1219.2', /foot/u],
    ['speed-change', '33.33', /divided by the shown rate/u],
    ['sound-ahead', '0.889', /upside down/u],
    ['size-by-bit-rate', '2', /Eight bits/u],
  ])('in %s is known by its figure %s', (id, typed, words) => {
    const [kind, problem] = problemOf(id);
    const judged = judge(kind, problem, typed);
    expect(judged.kind === 'wrong' && judged.slip).toMatch(words);
  });
});
