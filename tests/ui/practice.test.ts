import { describe, expect, it } from 'vitest';
import { UNITS } from '../../src/quantity/units.ts';
import type { Practice } from '../../src/schemas/practice.ts';
import {
  bareUnit,
  drawProblem,
  drawRound,
  judge,
  type PracticeProblem,
} from '../../src/ui/practice/practice-problem.ts';
import { evaluate, fillEntries } from '../../src/worksheets/machine/evaluate.ts';
import { findWorksheet, worksheets } from '../../src/worksheets/registry.ts';
import { FakeStorage } from './fake-storage.ts';
import { makePracticeStore, PRACTICE_KEY } from '../../src/ui/practice/practice-store.ts';
import {
  EMPTY_TALLY,
  kindTally,
  kindWords,
  readTally,
  ROUND_LENGTH,
  roundsWords,
  tallyText,
  withRound,
  withTry,
} from '../../src/ui/practice/practice-tally.ts';
import { readChapters, readPractice } from '../content/read-content.ts';
import { componentUses } from '../content/mdx-blocks.ts';
import { hostileTexts } from '../worksheets/hostile-texts.ts';
import { seededChance, seedOf } from '../worksheets/random-entries.ts';

const kinds = readPractice();
const DRAWS = 200;

function draws(kind: Practice): readonly PracticeProblem[] {
  const random = seededChance(seedOf(kind.id));
  const worksheet = findWorksheet(kind.worksheet);
  return Array.from({ length: DRAWS }, () => drawProblem(kind, worksheet, random));
}

/** Every combination of the entries that a kind draws from. */
function combinations(kind: Practice): readonly Readonly<Record<string, string>>[] {
  return Object.entries(kind.vary).reduce<readonly Readonly<Record<string, string>>[]>(
    (before, [key, texts]) =>
      before.flatMap((entries) => texts.map((text) => ({ ...entries, [key]: text }))),
    [{}],
  );
}

describe('the kinds of practice problems', () => {
  it('have ids and titles of their own, and stand on the practice page', () => {
    expect(kinds.length).toBeGreaterThan(15);
    expect(new Set(kinds.map(({ id }) => id)).size).toBe(kinds.length);
    expect(new Set(kinds.map(({ title }) => title)).size).toBe(kinds.length);
    const shown = readChapters()
      .flatMap(({ body }) => componentUses(body))
      .filter(({ name }) => name === 'Practice')
      .map(({ attributes }) => attributes['id']);
    expect(shown.toSorted()).toEqual(kinds.map(({ id }) => id).toSorted());
  });

  it('come from every part of the book that computes', () => {
    const parts = new Set(kinds.map(({ worksheet }) => findWorksheet(worksheet).chapter));
    const names = new Set([...parts].map((chapter) => chapter.split('/')[0]));
    expect([...names].toSorted()).toEqual(['customer', 'file', 'gate', 'reel']);
  });
});

describe.each(kinds)('practice on $id', (kind) => {
  const problems = draws(kind);

  it('names a worksheet, its inputs and a unit that exist', () => {
    expect([...worksheets.keys()]).toContain(kind.worksheet);
    const inputs = Object.keys(findWorksheet(kind.worksheet).inputs);
    const named = [...Object.keys(kind.vary), ...Object.keys(kind.fixed)];
    expect(named.filter((key) => !inputs.includes(key))).toEqual([]);
    expect(new Set(named).size).toBe(named.length);
    expect(Object.keys(UNITS)).toContain(kind.unit);
    expect(Object.keys(UNITS)).toContain(bareUnit(kind));
    expect(UNITS[bareUnit(kind)].dimension).toBe(UNITS[kind.unit as keyof typeof UNITS].dimension);
  });

  it('has a number for nearly every combination of its entries', () => {
    const worksheet = findWorksheet(kind.worksheet);
    const all = combinations(kind);
    const numeric = all.filter((drawn) => {
      const entries = fillEntries(worksheet.inputs, { ...kind.fixed, ...drawn });
      return evaluate(worksheet, entries).outcome?.answers[kind.answer]?.value !== undefined;
    });
    expect(all.length).toBeGreaterThan(3);
    expect(numeric.length / all.length).toBeGreaterThanOrEqual(0.8);
  });

  it('asks different problems, each with an answer in the unit that is judged', () => {
    expect(new Set(problems.map(({ entries }) => JSON.stringify(entries))).size).toBeGreaterThan(3);
    expect(new Set(problems.map(({ answer }) => answer.text)).size).toBeGreaterThan(2);
    const { symbol } = UNITS[kind.unit as keyof typeof UNITS];
    for (const { answer, told, working } of problems) {
      expect(Number.isFinite(answer.value)).toBe(true);
      if (answer.unit !== undefined && answer.unit !== '') expect(answer.unit).toBe(symbol);
      expect(told.length).toBeGreaterThan(0);
      expect(working.length).toBeGreaterThan(0);
    }
  });

  it('takes the printed answer for right', () => {
    for (const problem of problems) {
      expect([problem.answer.text, judge(kind, problem, problem.answer.text)]).toEqual([
        problem.answer.text,
        { kind: 'right' },
      ]);
    }
  });

  it('takes the bare number in the unit beside the entry for right', () => {
    const { factor } = UNITS[kind.unit as keyof typeof UNITS];
    const bare = UNITS[bareUnit(kind)].factor;
    for (const problem of problems) {
      const text = ((problem.answer.value * factor) / bare).toPrecision(12);
      if (text.includes('e')) continue;
      expect([text, judge(kind, problem, text).kind]).toEqual([text, 'right']);
    }
  });

  it('takes an answer that is a fifth off for wrong, and says which way', () => {
    const { factor } = UNITS[kind.unit as keyof typeof UNITS];
    const bare = UNITS[bareUnit(kind)].factor;
    for (const problem of problems) {
      const { value } = problem.answer;
      const shift = value === 0 ? 0.2 : Math.abs(value) / 5;
      for (const [direction, wrong] of [
        ['less', value + shift],
        ['more', value - shift],
      ] as const) {
        const text = ((wrong * factor) / bare).toFixed(9);
        // A fifth off may be what a slip comes to; then its words stand beside the direction.
        expect([text, judge(kind, problem, text)]).toMatchObject([
          text,
          { kind: 'wrong', direction },
        ]);
      }
    }
  });

  it('accepts what it gives as a good entry', () => {
    const [problem] = problems;
    for (const text of kind.accepted.split(/,\s+| or /u)) {
      expect([text, judge(kind, problem!, text).kind]).not.toContain('unreadable');
    }
  });

  it('says what is expected for a text that it cannot read', () => {
    for (const text of ['', '   ', 'many', '12 bananas', '--', '1/0']) {
      const judgement = judge(kind, problems[0]!, text);
      if (judgement.kind !== 'unreadable') throw new Error(`“${text}” was read`);
      expect(judgement.reason).toContain(kind.accepted);
      expect(judgement.reason.length).toBeGreaterThan(kind.accepted.length + 8);
    }
  });

  it('never throws for a hostile text', () => {
    for (const text of hostileTexts) {
      const judgement = judge(kind, problems[0]!, text);
      expect(['right', 'wrong', 'unreadable']).toContain(judgement.kind);
    }
  });
});

describe('the drawing of problems', () => {
  it('gives up on a kind that has no number for any combination', () => {
    const [kind] = kinds;
    expect(() =>
      drawProblem({ ...kind!, answer: 'no-such-answer' }, findWorksheet(kind!.worksheet), () => 0),
    ).toThrow(/no combination/u);
  });

  it('is the same for the same numbers, so that the static page and the live one agree', () => {
    for (const kind of kinds) {
      const worksheet = findWorksheet(kind.worksheet);
      const first = drawProblem(kind, worksheet, () => 0);
      expect(drawProblem(kind, worksheet, () => 0).entries).toEqual(first.entries);
    }
  });
});

describe('a round', () => {
  it('asks ten kinds, each once while there are enough, and then stops', () => {
    for (let seed = 1; seed < 50; seed += 1) {
      const round = drawRound(kinds, ROUND_LENGTH, seededChance(seed));
      expect(round).toHaveLength(10);
      expect(new Set(round.map(({ id }) => id)).size).toBe(10);
    }
    expect(drawRound(['a', 'b', 'c'], 7, seededChance(3))).toHaveLength(7);
    expect(drawRound([], 10, Math.random)).toEqual([]);
  });

  it('is drawn from all kinds', () => {
    const random = seededChance(9);
    const rounds = Array.from({ length: 60 }, () => drawRound(kinds, ROUND_LENGTH, random));
    const seen = new Set(rounds.flat().map(({ id }) => id));
    expect(seen.size).toBe(kinds.length);
  });
});

describe('each question', () => {
  it.each(kinds)('$id asks one thing', ({ question }) => {
    expect(question.match(/\?/gu)).toHaveLength(1);
    expect(question).not.toMatch(/, and (?:which|what|how|where|when)\b/iu);
  });
});

describe('the tally', () => {
  it('lasts: a new page finds what the last one kept', () => {
    const storage = new FakeStorage();
    makePracticeStore(() => storage).update((tally) => withTry(tally, 'beat', true));
    makePracticeStore(() => storage).update((tally) => withTry(tally, 'beat', false));
    makePracticeStore(() => storage).update((tally) => withRound(tally, 8, 10));
    const kept = makePracticeStore(() => storage).read();
    expect(kindTally(kept, 'beat')).toEqual({ right: 1, tried: 2, row: 0 });
    expect(kept.rounds).toEqual([{ right: 8, of: 10 }]);
    expect(roundsWords(kept.rounds)).toContain('8 of 10');
    expect(kindWords(kindTally(kept, 'beat'))).toBe('1 right of 2 at the first try');
  });

  it('counts what is right in a row', () => {
    const after = [true, false, true, true, true].reduce(
      (tally, isRight) => withTry(tally, 'beat', isRight),
      EMPTY_TALLY,
    );
    expect(kindWords(kindTally(after, 'beat'))).toBe(
      '4 right of 5 at the first try, the last 3 in a row',
    );
  });

  it('lasts as long as the page where the browser keeps nothing', () => {
    const store = makePracticeStore(() => {
      throw new Error('blocked');
    });
    store.update((tally) => withTry(tally, 'beat', true));
    expect(kindTally(store.read(), 'beat').right).toBe(1);
  });

  it('leaves a tally of a later version alone', () => {
    const storage = new FakeStorage();
    storage.setItem(PRACTICE_KEY, '{"version":2,"kinds":"other"}');
    makePracticeStore(() => storage).update((tally) => withTry(tally, 'beat', true));
    expect(storage.getItem(PRACTICE_KEY)).toBe('{"version":2,"kinds":"other"}');
  });

  it.each([
    '',
    'null',
    '[]',
    '{"kinds":5}',
    '{"version":1,"kinds":{"__proto__":{"right":9}}}',
    '{',
  ])('is empty for what cannot be read: %s', (text) => {
    expect(readTally(text)).toEqual(EMPTY_TALLY);
    expect(kindTally(readTally(text)!, '__proto__')).toEqual({ right: 0, tried: 0, row: 0 });
  });

  it('reads what it writes', () => {
    const tally = withRound(withTry(EMPTY_TALLY, '__proto__', true), 10, 10);
    expect(readTally(tallyText(tally))).toEqual(tally);
  });
});
