import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bookFields,
  fieldMessages,
  fieldSpec,
  gather,
  worksheetIds,
} from '../../../src/ui/gathered/gather.ts';
import { PLANS } from '../../../src/ui/gathered/plans.ts';
import { fieldsFromQuery, sheetAddress } from '../../../src/ui/gathered/sheet-address.ts';
import { evaluate } from '../../../src/worksheets/evaluate.ts';
import { findWorksheet, worksheets } from '../../../src/worksheets/registry.ts';
import type { InputSpecs } from '../../../src/worksheets/types.ts';
import { hostileTexts } from '../../worksheets/hostile-texts.ts';

const plans = [...PLANS.values()];
const jobSheet = PLANS.get('job-sheet')!;

describe.each(plans)('the $id', (plan) => {
  it('names only worksheets, inputs and answers that exist', () => {
    for (const step of plan.steps) {
      const worksheet = findWorksheet(step.worksheet);
      const inputs = worksheet.inputs as InputSpecs;
      for (const key of Object.keys(step.inputs)) expect(Object.keys(inputs)).toContain(key);
      const { outcome } = evaluate(worksheet, {});
      for (const { key } of step.answers) expect(Object.keys(outcome!.answers)).toContain(key);
      if (step.table !== undefined) expect(outcome!.tables?.length).toBeGreaterThan(0);
    }
    expect(plan.steps.length).toBeGreaterThan(3);
  });

  it('asks for each field at one step, and uses every field', () => {
    const asked = plan.steps.flatMap(({ fields }) => fields);
    expect(asked.toSorted()).toEqual(Object.keys(plan.fields).toSorted());
    const used = plan.steps.flatMap(({ inputs }) =>
      Object.values(inputs).flatMap((from) => ('field' in from ? [from.field] : [])),
    );
    expect([...new Set(used)].toSorted()).toEqual(asked.toSorted());
  });

  it('takes answers only from earlier steps', () => {
    plan.steps.forEach(({ inputs }, index) => {
      const earlier = plan.steps.slice(0, index);
      for (const from of Object.values(inputs)) {
        if (!('step' in from)) continue;
        const step = earlier.find(({ id }) => id === from.step);
        expect(step, from.step).toBeDefined();
        const { outcome } = evaluate(findWorksheet(step!.worksheet), {});
        expect(outcome!.answers[from.answer]?.value, from.answer).toBeTypeOf('number');
      }
    });
  });

  it('opens with the book’s texts and answers at every step', () => {
    const steps = gather(plan, worksheets, bookFields(plan, worksheets));
    for (const { step, evaluation } of steps) {
      expect(evaluation.messages, step.id).toEqual({});
      expect(evaluation.outcome, step.id).toBeDefined();
    }
    expect(fieldMessages(steps)).toEqual({});
  });

  it('has fields that can be told apart', () => {
    const labels = Object.values(plan.fields).map((field) => fieldSpec(field, worksheets).label);
    expect(new Set(labels).size).toBe(labels.length);
  });

  it('keeps what was typed through its address, names on the blank lines excepted', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ maxLength: 20 }), { minLength: 1 }), (texts) => {
        const fields = Object.fromEntries(
          Object.keys(plan.fields).map((id, index) => [id, texts[index % texts.length]!]),
        );
        const address = sheetAddress(plan, fields);
        expect(fieldsFromQuery(plan, new URL(address, 'https://x.invalid').search)).toEqual(
          Object.fromEntries(
            // A lone surrogate cannot stand in an address.
            Object.entries(fields).map(([id, text]) => [id, text.toWellFormed()]),
          ),
        );
      }),
    );
    expect(fieldsFromQuery(plan, '?w=flash-match')).toBeUndefined();
  });

  it('bears whatever is typed: each step has an answer or says why not', () => {
    const ids = Object.keys(plan.fields);
    const book = bookFields(plan, worksheets);
    const anyText = fc.oneof(fc.constantFrom(...hostileTexts), fc.string({ maxLength: 12 }));
    fc.assert(
      fc.property(fc.constantFrom(...ids), anyText, (id, text) => {
        const steps = gather(plan, worksheets, { ...book, [id]: text });
        for (const { evaluation } of steps) {
          const says =
            evaluation.outcome !== undefined ||
            evaluation.message !== undefined ||
            Object.keys(evaluation.messages).length > 0;
          expect(says).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('hands answers on as texts that the next worksheet reads', () => {
    const book = bookFields(plan, worksheets);
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 600, noNaN: true }), (metres) => {
        const steps = gather(plan, worksheets, { ...book, lengthMetres: `${metres.toFixed(6)} m` });
        for (const { step, evaluation } of steps) expect(evaluation.messages, step.id).toEqual({});
      }),
      { numRuns: 60 },
    );
  });

  it('runs each worksheet that it names, each once in the list to load', () => {
    const ids = worksheetIds(plan);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.toSorted()).toEqual(
      [...new Set(plan.steps.map(({ worksheet }) => worksheet))].toSorted(),
    );
  });
});

describe('a job sheet', () => {
  const book = bookFields(jobSheet, worksheets);
  const at = (id: string, fields = book) =>
    gather(jobSheet, worksheets, fields).find(({ step }) => step.id === id)!;

  it('carries 100 ft of Super 8 from the reel to the keep list, the file and the time', () => {
    const fields = { ...book, lengthMetres: '100 ft' };
    expect(at('reel', fields).evaluation.outcome?.answers['frames']?.value).toBe(7200);
    expect(at('keep', fields).entries?.['filmFrames']).toBe('7200');
    expect(at('time', fields).entries?.['framesPerReel']).toBe('7200');
    // 7200 frames at 18 are 400 s; at 25 pictures a second of 5 529 600 bytes each.
    expect(at('files', fields).evaluation.outcome?.answers['totalBytes']?.value).toBeCloseTo(
      400 * 25 * 5_529_600,
      0,
    );
  });

  it('waits at the steps that need a wrong entry, and goes on at the others', () => {
    const fields = { ...book, lengthMetres: 'as long as it is' };
    const steps = gather(jobSheet, worksheets, fields);
    const done = steps.filter(({ evaluation }) => evaluation.outcome !== undefined);
    expect(done.map(({ step }) => step.id)).toEqual(['match', 'light', 'whole']);
    expect(Object.keys(fieldMessages(steps))).toEqual(['lengthMetres']);
    expect(at('keep', fields).evaluation.message).toBe('This waits for an entry above.');
  });
});
