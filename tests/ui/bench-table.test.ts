import { h } from 'preact';
import renderToString from 'preact-render-to-string';
import { describe, expect, it, vi } from 'vitest';
import { withTableWritten } from '../../src/build/bench-table.mjs';
import { setText, takeOffer } from '../../src/ui/bench/bench-edits.ts';
import { benchOverlay } from '../../src/ui/bench/bench-entries.ts';
import { BenchForm } from '../../src/ui/bench/BenchForm.tsx';
import { benchMessage } from '../../src/ui/bench/BenchFields.tsx';
import { benchLink, parseBenchLink } from '../../src/ui/bench/bench-link.ts';
import { benchJson } from '../../src/ui/bench/bench-schema.ts';
import { EMPTY_BENCH } from '../../src/ui/bench/bench-state.ts';
import { parseStoredText } from '../../src/ui/bench/bench-text.ts';
import { entriesFromQuery, permalink } from '../../src/ui/permalink.ts';
import { fieldsAt, LINK_CODES } from '../../src/worksheets/bench/bench-inputs.ts';
import { quantity } from '../../src/worksheets/machine/answers.ts';
import { benchColumns } from '../../src/worksheets/machine/bench-columns.ts';
import { benchReading, STORED_FIELDS } from '../../src/worksheets/machine/bench-fields.ts';
import { benchInput } from '../../src/worksheets/machine/bench-input.ts';
import {
  BENCH_TABLE,
  type BenchPlace,
  type FilledRow,
  type RegionRow,
  type StoredField,
} from '../../src/worksheets/machine/bench-table.ts';
import { defineWorksheet } from '../../src/worksheets/machine/define-worksheet.ts';
import { worksheets } from '../../src/worksheets/registry.ts';

// One row is added to the table here and nothing else in the project.
vi.mock(import('../../src/worksheets/machine/bench-table.ts'), async (original) => {
  const { BENCH_TABLE: table } = await original();
  const planted: FilledRow = {
    shelf: 'benches',
    place: 'projector-more',
    link: 'pw',
    field: {
      kind: 'quantity',
      label: 'Height of the lamp',
      unit: 'mm',
      minimum: 5,
      maximum: 500,
      accepted: '40 or 4 cm',
      help: 'Planted by a test.',
    },
  };
  const withOneMore = Object.assign({ 'projector.lampMillimetres': planted }, table);
  return { BENCH_TABLE: withOneMore as unknown as typeof table };
});

const planted = 'projector.lampMillimetres' as StoredField;
const rows = Object.entries(BENCH_TABLE) as unknown as [StoredField, FilledRow | RegionRow][];

const sheet = defineWorksheet({
  id: 'lamp-height',
  title: 'Height of the lamp',
  question: 'How high does the lamp stand?',
  chapter: 'gate/light',
  inputs: {
    lampMillimetres: {
      kind: 'quantity',
      label: 'Height',
      unit: 'm',
      minimum: 0,
      maximum: 1,
      default: '0.1',
      accepted: '0.1',
      help: 'Planted by a test.',
      bench: planted,
    },
  },
  model: 'None.',
  cautions: [],
  sources: [],
  answers: { lampMillimetres: 'Height' },
  find: ({ lampMillimetres }) => ({ lampMillimetres }),
  outcome: ({ lampMillimetres }) => ({
    verdict: { level: 'note', sentence: 'It stands.' },
    answers: { lampMillimetres: quantity(lampMillimetres, 'm') },
  }),
  working: () => [],
});

describe('a row that is added to the bench table', () => {
  const state = setText(EMPTY_BENCH, planted, '40');

  it('stands on the form, at its place, under its label, with its help and message', () => {
    const form = renderToString(h(BenchForm, { examples: [] }));
    const field =
      /<details><summary>More about the projector.*?<\/details>/su.exec(form)?.[0] ?? '';
    expect(field).toContain('Height of the lamp');
    expect(field).toContain('Planted by a test.');
    expect(benchMessage(planted, { [planted]: '2 m' })).toContain('outside the range 5 to 500');
    expect(benchMessage(planted, { [planted]: '4 cm' })).toBeUndefined();
  });

  it('is kept and read again', () => {
    expect(parseStoredText(benchJson(state))).toEqual({ kind: 'read', state, faults: [] });
    expect(state.benches[0]?.entries).toEqual({ [planted]: '40' });
  });

  it('goes through a link', () => {
    const link = benchLink(state);
    expect(link).toContain('pw=40');
    const reading = parseBenchLink(link.slice(link.indexOf('#')));
    if (reading?.ok !== true) throw new Error('the link was not read');
    expect(reading.faults).toEqual([]);
    expect(takeOffer(EMPTY_BENCH, reading.offer).benches[0]?.entries).toEqual({ [planted]: '40' });
  });

  it('opens a sheet with what it means, and from there a permalink', () => {
    const entries = benchOverlay(sheet, {}, state)?.entries;
    expect(entries).toEqual({ lampMillimetres: '40 mm' });
    const address = permalink('/gate/light/', 'lamp-height', entries ?? {});
    expect(
      entriesFromQuery(new URL(address, 'https://x.invalid').search, 'lamp-height', sheet.inputs),
    ).toEqual(entries);
  });
});

describe('the bench table', () => {
  it('has a row for every field that a worksheet opens with', () => {
    const asked = [...worksheets.values()].flatMap(({ id, inputs }) =>
      Object.entries(inputs).flatMap(([key, { bench }]) =>
        bench === undefined ? [] : [{ from: `${id} ${key}`, bench }],
      ),
    );
    expect(asked.length).toBeGreaterThan(40);
    expect(asked.filter(({ bench }) => !Object.hasOwn(BENCH_TABLE, bench))).toEqual([]);
    // A field that no sheet asks for would be typed for nothing.
    const unasked = rows
      .map(([field]) => field)
      .filter((field) => !asked.some(({ bench }) => bench === field));
    expect(
      unasked.filter((field) => field !== planted && field !== ('region.mainsHz' as string)),
    ).toEqual([]);
  });

  it('puts every field on the form, once', () => {
    const places: readonly BenchPlace[] = [
      'projector',
      'projector-more',
      'camera',
      'camera-more',
      'reel',
      'times',
      'prices',
    ];
    expect(places.flatMap(fieldsAt).sort()).toEqual([...STORED_FIELDS].sort());
    const form = renderToString(h(BenchForm, { examples: [] }));
    for (const field of STORED_FIELDS) expect(form.split(`name="${field}"`)).toHaveLength(2);
  });

  it('lets only fields of the same kind of reading stand in for each other', () => {
    const standIns = rows.flatMap(([field, row]) =>
      'standIn' in row ? [[field, row.standIn as StoredField] as const] : [],
    );
    expect(standIns.length).toBeGreaterThan(4);
    for (const [field, standIn] of standIns) {
      expect(STORED_FIELDS).toContain(standIn);
      const [one, other] = [benchReading(field), benchReading(standIn)];
      expect('unit' in one ? one.unit : one.kind).toBe('unit' in other ? other.unit : other.kind);
    }
  });

  // Links are out in the world: a code that is lost or changes its meaning falsifies them.
  it('keeps the codes of the links that were ever given out', () => {
    const given =
      'pg gauge pf filmFps pn flashesPerFrame po openPercent pk filmRateChoice ps filmRates pa slowestFps pz fastestFps pt turnsPerFrame cf cameraFps cu exposureSeconds cr cameraRates ce exposureTimes ct readoutSeconds cx exposureChoice cw sensorWidthMillimetres cp pixelsAcross cl lensSteps rg gauge rf nativeFps rl lengthMetres rn count';
    const groups: Readonly<Record<string, string>> = { p: 'projector', c: 'camera', r: 'reel' };
    const words = given.split(' ');
    const wanted = words.flatMap((code, index) =>
      index % 2 === 0 ? [[`${groups[code.slice(0, 1)]}.${words[index + 1]}`, code]] : [],
    );
    const codes = Object.fromEntries(LINK_CODES);
    expect(codes).toMatchObject(Object.fromEntries(wanted));
    expect(new Set(LINK_CODES.values()).size).toBe(LINK_CODES.size);
    // Codes of the link itself.
    for (const code of LINK_CODES.values()) expect(code).toMatch(/^[a-z]{2}$/u);
    expect([...LINK_CODES.keys()].filter((field) => /^(?:times|prices)\./u.test(field))).toEqual(
      [],
    );
  });

  it('is written into a script as a call would give it', () => {
    const script = [
      "import { benchInput } from '../machine/bench-input.ts';",
      "[{ ...benchInput('camera.readoutSeconds') },benchInput(\n  'reel.gauge',\n),benchColumns()]",
    ].join('\n');
    const written = withTableWritten(script, benchInput, benchColumns);
    expect(written).not.toMatch(/import|benchInput|benchColumns/u);
    expect(JSON.parse(written.replace('...{', '"spread":{'))).toEqual([
      { spread: benchInput('camera.readoutSeconds') },
      benchInput('reel.gauge'),
      benchColumns(),
    ]);
  });
});
