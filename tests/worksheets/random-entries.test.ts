import { describe, expect, it } from 'vitest';
import { worksheets } from '../../src/worksheets/registry.ts';
import { defineWorksheet } from '../../src/worksheets/machine/define-worksheet.ts';
import { SAMPLES } from '../tools/sample-sizes.ts';
import { runRandomEntries } from './random-run.ts';

const ROUNDS = SAMPLES.entries.command;

describe.each([...worksheets.values()])('worksheet $id', (worksheet) => {
  it(`stands up to ${ROUNDS} random entries`, () => {
    const { faults, outcomes } = runRandomEntries(worksheet, ROUNDS);
    expect(faults).toEqual([]);
    // Most entries must be usable, or the run would prove little.
    expect(outcomes).toBeGreaterThan(ROUNDS / 20);
  });
});

describe('the random run', () => {
  const faulty = (compute: (x: number) => number) =>
    defineWorksheet({
      id: 'faulty',
      title: 'Faulty',
      question: 'Does it break?',
      chapter: 'none/none',
      inputs: {
        x: {
          kind: 'quantity',
          label: 'x',
          unit: 'one',
          minimum: -2,
          maximum: 2,
          default: '1',
          accepted: '1',
          help: 'A number.',
        },
      },
      model: 'None.',
      answers: { y: 'y' },
      find: ({ x }) => compute(x),
      outcome: (y) => ({
        verdict: { level: 'note', sentence: 'It is done.' },
        answers: { y: { text: String(y), value: y } },
      }),
      working: () => [{ words: 'Done.' }],
      cautions: [],
      sources: [],
    });

  it('catches a NaN, an infinity and an exception', () => {
    expect(runRandomEntries(faulty(Math.sqrt), 200).faults[0]?.fault).toContain('NaN');
    expect(
      runRandomEntries(
        faulty((x) => 1 / (x + 2)),
        200,
      ).faults[0]?.fault,
    ).toContain('Infin');
    const thrown = runRandomEntries(
      faulty(() => {
        throw new TypeError('broken');
      }),
      200,
    );
    expect(thrown.faults[0]?.fault).toContain('throws TypeError: broken');
    expect(
      runRandomEntries(
        faulty((x) => x * 2),
        200,
      ),
    ).toMatchObject({ faults: [] });
  });

  it('repeats itself exactly', () => {
    const [worksheet] = worksheets.values();
    expect(runRandomEntries(worksheet!, 200)).toEqual(runRandomEntries(worksheet!, 200));
  });
});
