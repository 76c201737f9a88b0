import { describe, expect, it } from 'vitest';
import { seededChance } from '../../src/practice/chance.ts';
import { readCaseKinds } from '../content/read-content.ts';
import { checkCase, checkSafety, drawn, drawnCases, mustNotRun } from './case-checks.ts';

const kinds = readCaseKinds();
/** In the fuzz run it is a thousand. */
const SEEDS = 100;

describe('the kinds of cases', () => {
  it('are more than a dozen, over all parts of the book', () => {
    expect(kinds.length).toBeGreaterThanOrEqual(12);
    const parts = new Set(kinds.map(({ part }) => part));
    expect([...parts].toSorted()).toEqual(['customer', 'file', 'gate', 'reel']);
    expect(new Set(kinds.map(({ title }) => title)).size).toBe(kinds.length);
  });
});

describe.each(kinds)('cases of $id', (kind) => {
  const cases = [...drawnCases(kind, SEEDS)];

  it('have one right choice, no two alike, and a reason for every wrong one', () => {
    expect(cases).toHaveLength(3 * SEEDS);
    for (const each of cases) checkCase(each);
  });

  it('are never answered unsafely', () => {
    for (const each of cases) checkSafety(each);
  });

  it('are the same for the same seed, and differ between seeds', () => {
    const again = drawn(kind, 2, 'spring class');
    expect(drawn(kind, 2, 'spring class')).toEqual(again);
    const asked = new Set(
      cases.map(({ told, choices }) => JSON.stringify([told, choices.map(({ text }) => text)])),
    );
    expect(asked.size).toBeGreaterThan(20);
  });

  it('do not give the answer away by its place or by always being the same', () => {
    const places = new Set(cases.map(({ choices }) => choices.findIndex(({ isRight }) => isRight)));
    expect(places.size).toBeGreaterThanOrEqual(2);
    const answers = cases.map(({ choices }) => choices.find(({ isRight }) => isRight)?.text);
    const most = Math.max(
      ...[...new Set(answers)].map((text) => answers.filter((each) => each === text).length),
    );
    expect(most / answers.length).toBeLessThan(0.75);
  });
});

describe('the rule for reels', () => {
  it('would find a case that lets an untested reel run', () => {
    const told = [
      { label: 'Gauge', text: 'Super 8' },
      { label: 'Base', text: 'acetate' },
      { label: 'Acid level', text: 'not tested' },
    ];
    expect(mustNotRun(told)).toEqual(['acid not tested']);
    expect(() => {
      checkSafety({
        ...drawn(kinds[0]!, 1, '1'),
        told,
        choices: [{ text: 'Run it.', isRight: true, reason: '' }],
      });
    }).toThrow(/Acid level/u);
  });
});

describe('the chance of a seed', () => {
  it('is even, and another for another seed', () => {
    const chance = seededChance('class of spring');
    const drawnNumbers = Array.from({ length: 10_000 }, () => chance());
    const mean = drawnNumbers.reduce((sum, each) => sum + each, 0) / drawnNumbers.length;
    expect(mean).toBeGreaterThan(0.48);
    expect(mean).toBeLessThan(0.52);
    expect(Math.min(...drawnNumbers)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...drawnNumbers)).toBeLessThan(1);
    expect(seededChance('a')()).not.toBe(seededChance('b')());
  });
});
