import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  benchFields,
  bookFields,
  fieldMessages,
  fieldSpec,
  gather,
  worksheetIds,
} from '../../../src/ui/gathered/gather.ts';
import type { Plan } from '../../../src/ui/gathered/plan.ts';
import { PLANS } from '../../../src/ui/gathered/plans.ts';
import {
  chosenFromQuery,
  gatheredAddressFault,
  fieldsFromQuery,
  sheetAddress,
} from '../../../src/ui/gathered/sheet-address.ts';
import { benchOverlay } from '../../../src/ui/bench/bench-entries.ts';
import { EMPTY_BENCH, type BenchState } from '../../../src/ui/bench/bench-state.ts';
import { gaugeWarning } from '../../../src/worksheets/bench/bench-warnings.ts';
import { evaluate, type Entries } from '../../../src/worksheets/machine/evaluate.ts';
import { findWorksheet, worksheets } from '../../../src/worksheets/registry.ts';
import { hostileTexts } from '../../worksheets/hostile-texts.ts';

const plans = [...PLANS.values()];
const jobSheet = PLANS.get('job-sheet')!;
const customerSheet = PLANS.get('customer-sheet')!;
const everyStep = (plan: Plan): ReadonlySet<string> =>
  new Set(plan.steps.filter(({ chosen }) => chosen !== undefined).map(({ id }) => id));

describe.each(plans)('the $id', (plan) => {
  it('names only worksheets, inputs and answers that exist', () => {
    for (const step of plan.steps) {
      const worksheet = findWorksheet(step.worksheet);
      const inputs = worksheet.inputs;
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
        const address = sheetAddress(plan, fields, everyStep(plan));
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
    expect(at('time', fields).entries?.['framesPerReel']).toBe('7200 frames');
    // 15 m hold 3543.3 frames: the time is that of whole ones.
    const metric = { ...book, lengthMetres: '15 m' };
    expect(at('time', metric).entries?.['framesPerReel']).toBe('3543 frames');
    expect(at('time', metric).evaluation.outcome).toBeDefined();
    // Uncompressed 10 bit 4:2:2 is 20 bits for each of 2048 × 1556 pixels; at most 80 % of it is left.
    expect(at('files', fields).evaluation.outcome?.answers['bothMostBytes']?.value).toBeCloseTo(
      0.8 * ((7200 * 2048 * 1556 * 20) / 8) + (400 * 20e6) / 8,
      0,
    );
    expect(at('copies', fields).entries?.['copies']).toBe('3');
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

describe('the sheets and the reel on the table', () => {
  const bench: BenchState = {
    ...EMPTY_BENCH,
    benches: [
      {
        name: 'Club',
        entries: {
          'projector.gauge': '16mm',
          'projector.filmFps': '24',
          'times.handlingSeconds': '30',
          'prices.perReel': '7.50',
          'prices.perMinute': '2',
          'prices.fixed': '0',
          'prices.minimum': '0',
          'prices.carrier': '11',
        },
      },
    ],
    reels: [
      {
        name: 'Boathouse',
        entries: { 'reel.gauge': '16mm', 'reel.nativeFps': '24', 'reel.lengthMetres': '400 ft' },
      },
    ],
  };
  const own = (plan: Plan, state: BenchState): Entries => ({
    ...bookFields(plan, worksheets),
    ...benchFields(plan, worksheets, state),
  });
  const outcome = (plan: Plan, id: string, fields: Entries) =>
    gather(plan, worksheets, fields).find(({ step }) => step.id === id)!.evaluation.outcome!;

  it('price one reel as one, by its own length and the bench’s own list', () => {
    const price = outcome(customerSheet, 'price', own(customerSheet, bench));
    // 400 ft × 40 frames ÷ 24 a second are 666 2/3 s, 11.11 minutes.
    expect(price.answers['minutes']?.value).toBe(11.11);
    // 7.50 for the reel, 11.11 × 2 for the minutes, 11 for one stick.
    expect(price.answers['total']?.value).toBe(7.5 + 22.22 + 11);
  });

  it('count as many reels as the reel on the table stands for', () => {
    const [reel] = bench.reels;
    const entries = { ...reel!.entries, 'reel.count': '12' };
    const dozen = { ...bench, reels: [{ ...reel!, entries }] };
    const price = outcome(customerSheet, 'price', own(customerSheet, dozen));
    expect(price.answers['total']?.value).toBe(12 * 7.5 + 2 * 133.33 + 11);
  });

  it('take the time of the reel on the table and of the bench', () => {
    const book = outcome(jobSheet, 'time', own(jobSheet, EMPTY_BENCH)).answers;
    const mine = outcome(jobSheet, 'time', own(jobSheet, bench)).answers;
    expect(book['runSeconds']?.value).toBe(200);
    expect(mine['runSeconds']?.value).toBeCloseTo(16_000 / 24, 9);
    expect(mine['reelSeconds']?.value).toBeCloseTo(30 * 60 + 16_000 / 24 + 20 * 60, 9);
  });

  it('open the worksheets on time and quotation with it as well', () => {
    const entriesOf = (id: string) => benchOverlay(findWorksheet(id), {}, bench)?.entries;
    expect(entriesOf('job-time')).toMatchObject({ gauge: '16mm', lengthMetres: '400 ft' });
    expect(entriesOf('quotation')).toMatchObject({
      gauge: '16mm',
      lengthMetres: '400 ft',
      nativeFps: '24',
      pricePerReel: '7.50',
    });
    expect(entriesOf('customer-options')).toMatchObject({ gauge: '16mm', lengthMetres: '400 ft' });
  });

  it('open with one reel while nobody has said how many', () => {
    expect(bookFields(customerSheet, worksheets)['reelCount']).toBe('1');
    expect(outcome(customerSheet, 'time', own(customerSheet, EMPTY_BENCH)).answers).toMatchObject({
      days: { value: 1 },
    });
  });
});

describe('what the customer is shown', () => {
  const secrets = ['pricePerReel', 'pricePerMinute', 'handlingSeconds', 'afterWorkSeconds'];
  const fields = bookFields(customerSheet, worksheets);

  it('holds no price and no minutes of ours unless the workshop chooses them', () => {
    for (const step of customerSheet.steps) {
      const asked = step.fields.filter((id) => secrets.includes(id));
      if (asked.length === 0) continue;
      expect(step.chosen, step.id).toBeDefined();
      expect(step.workshopFields).toEqual(expect.arrayContaining(asked));
    }
    const shown = customerSheet.steps.flatMap(({ answers }) => answers.map(({ key }) => key));
    expect(shown).not.toContain('reelSeconds');
    expect(shown).not.toContain('handsOnSeconds');
  });

  it('keeps them out of the address until then', () => {
    const closed = new URL(sheetAddress(customerSheet, fields, new Set()), 'https://x.invalid');
    for (const id of secrets) expect(closed.searchParams.has(id), id).toBe(false);
    expect(closed.searchParams.has('lengthMetres')).toBe(true);
    const open = new URL(sheetAddress(customerSheet, fields, new Set(['price'])), closed);
    expect(open.searchParams.get('pricePerReel')).toBe('4.00');
    expect(open.searchParams.has('handlingSeconds')).toBe(false);
    expect([...chosenFromQuery(customerSheet, open.search)]).toEqual(['price']);
    expect([...chosenFromQuery(customerSheet, '?shown=__proto__,found,nonsense')]).toEqual([]);
    expect(gatheredAddressFault(customerSheet, open.search)).toBeUndefined();
    expect(gatheredAddressFault(customerSheet, '?shown=price,found&reels=3')).toMatch(
      /“reels”, “found” from the link and left them out/u,
    );
  });
});

describe('the job sheet on paper', () => {
  const lines = [...(jobSheet.before ?? []), ...(jobSheet.after ?? [])].flatMap(
    ({ lines: all }) => all,
  );

  it('has a line for everything that is found and measured by hand', () => {
    const words = lines.map(({ label, parts = [] }) => [label, ...parts].join(' '));
    for (const wanted of [
      /Triage/u,
      /Base.*how known/u,
      /Shrinkage.*head middle end/u,
      /Acid.*level/u,
      /Splices/u,
      /Film rate measured.*head middle tail/u,
      /other damage/u,
      /Not looked at/u,
      /expected found lost/u,
    ]) {
      expect(
        words.some((line) => wanted.test(line)),
        String(wanted),
      ).toBe(true);
    }
  });

  it('asks only for files that a step of the book makes', () => {
    const files = jobSheet.steps.find(({ id }) => id === 'files')!;
    expect(files.answers.map(({ key }) => key)).toEqual(['keep', 'watchBytes', 'bothMostBytes']);
  });

  it('gives the f-number in the steps of the lens', () => {
    const book = bookFields(jobSheet, worksheets);
    const light = (lensSteps: string) =>
      gather(jobSheet, worksheets, { ...book, exposureSeconds: '1/27', lensSteps }).find(
        ({ step }) => step.id === 'light',
      )!.evaluation.outcome!.answers['setFNumber']!.value;
    // 1/50 to 1/27 s asks for f/7.62.
    expect(light('third')).toBe(8);
    expect(light('half')).toBe(8);
    expect(light('whole')).toBe(8);
    expect(light('free')).toBeCloseTo(5.6 * Math.sqrt(50 / 27), 9);
  });
});

describe('the warning about the gauge', () => {
  it('stops a Standard 8 reel on a Super 8 projector, and the other way round', () => {
    for (const [reel, projector, step, claw] of [
      ['8mm-type-r', 'super-8', '3.810', '4.234'],
      ['super-8', '8mm-type-r', '4.234', '3.810'],
    ] as const) {
      const words = gaugeWarning(reel, projector)!;
      expect(words).toMatch(/^Do not thread/u);
      expect(words).toContain(step);
      expect(words).toContain(claw);
    }
  });

  it('says nothing while the gauges agree or one is not said', () => {
    expect(gaugeWarning('super-8', 'super-8')).toBeUndefined();
    expect(gaugeWarning('', 'super-8')).toBeUndefined();
    expect(gaugeWarning('constructor', 'super-8')).toBeUndefined();
  });

  it('stops every pair of different widths, and what has no place on this bench', () => {
    const width = { '8mm-type-r': 8, 'super-8': 8, '9.5mm': 9.5, '16mm': 16 };
    for (const [reel, wide] of Object.entries(width)) {
      for (const [projector, wideToo] of Object.entries(width)) {
        const expected = wide !== wideToo || (reel !== projector && wide === 8);
        expect(gaugeWarning(reel, projector) !== undefined, `${reel} on ${projector}`).toBe(
          expected,
        );
      }
    }
    for (const reel of ['35mm', 'super-16']) {
      expect(gaugeWarning(reel, '16mm')).toMatch(/does not belong on this bench/u);
    }
  });
});
