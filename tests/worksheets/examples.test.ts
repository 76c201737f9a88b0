import { describe, expect, it } from 'vitest';
import { evaluate, fillEntries } from '../../src/worksheets/machine/evaluate.ts';
import { findWorksheet, worksheets } from '../../src/worksheets/registry.ts';
import type { Worksheet } from '../../src/worksheets/machine/types.ts';
import type { Example } from '../../src/schemas/example.ts';
import { readExamples } from '../content/read-content.ts';

const examples = readExamples();
const all = [...examples].flatMap(([worksheetId, list]) =>
  list.map((example) => ({ worksheetId, example, id: example.id })),
);

/** Printed text with every kind of space as an ordinary one. */
const plainSpaces = (text: string): string => text.replaceAll(/\s+/gu, ' ').trim();

/** What an example says that the worksheet does not. */
function differences(worksheet: Worksheet, example: Example): readonly string[] {
  const specs = worksheet.inputs;
  const unknown = Object.keys(example.inputs).filter((key) => !Object.hasOwn(specs, key));
  if (unknown.length > 0) return unknown.map((key) => `there is no input “${key}”`);
  const evaluation = evaluate(worksheet, fillEntries(specs, example.inputs));
  const { outcome } = evaluation;
  if (outcome === undefined) {
    return [`it is refused: ${JSON.stringify([evaluation.messages, evaluation.message])}`];
  }
  return Object.entries(example.answers).flatMap(([key, printed]) => {
    const answer = outcome.answers[key];
    if (answer === undefined) {
      const known = Object.keys(outcome.answers).join(', ');
      return [`there is no answer “${key}”; known: ${known}`];
    }
    return plainSpaces(answer.text) === plainSpaces(printed)
      ? []
      : [`${key} prints “${plainSpaces(answer.text)}”, the example says “${printed}”`];
  });
}

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

  it.each(all)('$worksheetId / $id prints what the worksheet computes', (entry) => {
    expect(Object.keys(entry.example.answers).length).toBeGreaterThan(0);
    expect(differences(findWorksheet(entry.worksheetId), entry.example)).toEqual([]);
  });

  it('would be caught with a wrong answer, an unknown key or a refused entry', () => {
    const flashRate = findWorksheet('flash-rate');
    const example: Example = {
      id: 'a',
      title: 'A',
      story: 'A story.',
      inputs: { filmFps: '18' },
      answers: { flashRateHz: '54 Hz' },
      lesson: 'A lesson.',
    };
    expect(differences(flashRate, example)).toEqual([]);
    expect(differences(flashRate, { ...example, answers: { flashRateHz: '55 Hz' } })).toHaveLength(
      1,
    );
    expect(differences(flashRate, { ...example, answers: { flashRate: '54 Hz' } })).toHaveLength(1);
    expect(differences(flashRate, { ...example, inputs: { film: '18' } })).toHaveLength(1);
    expect(differences(flashRate, { ...example, inputs: { filmFps: '0' } })).toHaveLength(1);
  });
});
