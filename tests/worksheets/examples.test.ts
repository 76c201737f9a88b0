import { describe, expect, it } from 'vitest';
import { exampleFaults } from '../../src/book/example-faults.ts';
import { findWorksheet, worksheets } from '../../src/worksheets/registry.ts';
import type { Example } from '../../src/schemas/example.ts';
import { readExamples } from '../content/read-content.ts';

const examples = readExamples();
const all = [...examples].flatMap(([worksheetId, list]) =>
  list.map((example) => ({ worksheetId, example, id: example.id })),
);

describe('the worked examples', () => {
  it('exist, each file for a worksheet', () => {
    expect(all.length).toBeGreaterThan(0);
    expect([...examples.keys()].filter((id) => !worksheets.has(id))).toEqual([]);
  });

  it('cover every worksheet', () => {
    expect([...worksheets.keys()].filter((id) => !examples.has(id))).toEqual([]);
  });

  it('have ids and titles of their own', () => {
    const ids = all.map(({ id }) => id);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
    const titles = all.map(({ example }) => example.title);
    expect(titles.filter((title, index) => titles.indexOf(title) !== index)).toEqual([]);
  });

  it.each(all)(
    '$worksheetId / $id states the verdict and the answers of the worksheet',
    (entry) => {
      expect(Object.keys(entry.example.answers).length).toBeGreaterThan(0);
      expect(exampleFaults(findWorksheet(entry.worksheetId), entry.example)).toEqual([]);
    },
  );

  it('would be caught with a wrong verdict, a wrong answer, an unknown key or a refused entry', () => {
    const flashRate = findWorksheet('flash-rate');
    const example: Example = {
      id: 'a',
      title: 'A',
      story: 'A story.',
      entries: { filmFps: '18' },
      verdict: { level: 'note', sentence: 'The gate lights up 54 times a second.' },
      answers: { flashRateHz: '54 Hz' },
      lesson: 'A lesson.',
    };
    expect(exampleFaults(flashRate, example)).toEqual([]);
    const { verdict } = example;
    expect(
      exampleFaults(flashRate, { ...example, verdict: { ...verdict, level: 'good' } }),
    ).toHaveLength(1);
    const sentence = 'The gate lights up 45 times a second.';
    expect(
      exampleFaults(flashRate, { ...example, verdict: { ...verdict, sentence } }),
    ).toHaveLength(1);
    expect(
      exampleFaults(flashRate, { ...example, answers: { flashRateHz: '55 Hz' } }),
    ).toHaveLength(1);
    expect(exampleFaults(flashRate, { ...example, answers: { flashRate: '54 Hz' } })).toHaveLength(
      1,
    );
    expect(exampleFaults(flashRate, { ...example, entries: { film: '18' } })).toHaveLength(1);
    expect(exampleFaults(flashRate, { ...example, entries: { filmFps: '0' } })).toHaveLength(1);
  });
});
