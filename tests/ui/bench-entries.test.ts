import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import { benchSchema } from '../../src/schemas/bench.ts';
import { benchOverlay, convertBenchText } from '../../src/ui/bench/bench-entries.ts';
import { parseBenchState } from '../../src/ui/bench/bench-schema.ts';
import { EMPTY_BENCH, type BenchState, type BenchTexts } from '../../src/ui/bench/bench-state.ts';
import { quantity as quantityAnswer } from '../../src/worksheets/machine/answers.ts';
import { benchReading, STORED_FIELDS } from '../../src/worksheets/machine/bench-fields.ts';
import type { BenchField } from '../../src/worksheets/machine/bench-table.ts';
import { BENCH_INPUTS } from '../../src/worksheets/bench/bench-inputs.ts';
import {
  evaluate,
  fillEntries,
  parseEntry,
  type Entries,
} from '../../src/worksheets/machine/evaluate.ts';
import { requireInterval } from '../../src/quantity/errors.ts';
import { worksheets } from '../../src/worksheets/registry.ts';
import { defineWorksheet } from '../../src/worksheets/machine/define-worksheet.ts';
import type { InputSpec, Worksheet } from '../../src/worksheets/machine/types.ts';
import { anyBench } from './any-bench.ts';

/** Entries of the bench in use that a worksheet accepts, over its defaults. */
const benchEntries = (worksheet: Worksheet, state: BenchState): Entries =>
  benchOverlay(worksheet, {}, state)?.entries ?? {};

const words = { label: 'L', help: 'H.', accepted: '1' };
const quantity = (
  unit: 's' | 'mm' | 'm' | 'one' | 'percent' | 'fps' | 'Hz',
  more: object = {},
): InputSpec => ({
  kind: 'quantity',
  unit,
  minimum: 0,
  maximum: 1e9,
  default: '1',
  ...words,
  ...more,
});

const described = (entries: BenchTexts, changes: Partial<BenchState> = {}): BenchState => ({
  ...EMPTY_BENCH,
  benches: [{ name: 'Club', entries }],
  ...changes,
});

const exampleStates = readdirSync('content/bench').map((file) => {
  const { name, region, bench, reel } = benchSchema.parse(
    parse(readFileSync(`content/bench/${file}`, 'utf8')),
  );
  const benches = [{ name, entries: bench }];
  return { file, ...parseBenchState({ version: 1, benches, reels: [reel], region }) };
});

/** Takes a film rate and a camera rate, and refuses an exposure longer than the camera frame. */
const sheet = defineWorksheet({
  id: 'sheet',
  title: 'Sheet',
  question: 'Does it fit?',
  chapter: 'gate/matching',
  inputs: {
    filmFps: {
      ...words,
      kind: 'quantity',
      label: 'Film rate',
      unit: 'fps',
      minimum: 1,
      maximum: 60,
      default: '18',
      bench: 'projector.filmFps',
    },
    cameraFps: {
      ...words,
      kind: 'quantity',
      label: 'Camera rate',
      unit: 'fps',
      minimum: 1,
      maximum: 100,
      default: '25',
      bench: 'camera.cameraFps',
    },
    exposureSeconds: {
      ...words,
      kind: 'quantity',
      label: 'Exposure time',
      unit: 's',
      minimum: 0,
      maximum: 1,
      default: '1/50',
    },
  },
  model: 'None.',
  cautions: [],
  sources: [],
  answers: { filmFps: 'Film rate' },
  find({ filmFps, cameraFps, exposureSeconds }) {
    requireInterval('exposureSeconds', exposureSeconds, { maximum: 1 / cameraFps });
    return { filmFps };
  },
  outcome: ({ filmFps }) => ({
    verdict: { level: 'note', sentence: 'It fits.' },
    answers: { filmFps: quantityAnswer(filmFps, 'fps') },
  }),
  working: () => [],
});

describe('a text of the bench in a field of a worksheet', () => {
  it.each<[BenchField, string, InputSpec, string | undefined]>([
    ['projector.filmFps', '16 2/3', quantity('fps'), '16 2/3'],
    ['projector.openPercent', '50 %', quantity('percent'), '50 %'],
    ['projector.openPercent', '50 %', quantity('one'), '0.5'],
    ['projector.openPercent', '45', quantity('one'), '0.45'],
    ['camera.readoutSeconds', '16', quantity('s', { entryUnit: 'ms' }), '16'],
    ['camera.readoutSeconds', '16', quantity('s'), '16 ms'],
    ['camera.readoutSeconds', '1/60', quantity('s'), '1/60'],
    ['camera.exposureSeconds', '180°', quantity('s', { angleOf: 'cameraFps' }), '180°'],
    ['camera.exposureSeconds', '180°', quantity('s'), undefined],
    ['reel.lengthMetres', '15', quantity('m'), '15'],
    ['reel.lengthMetres', '15', quantity('mm'), '15 m'],
    ['reel.lengthMetres', '50 ft', quantity('mm'), '50 ft'],
    ['reel.lengthMetres', '15', quantity('s'), undefined],
    [
      'projector.flashesPerFrame',
      '3',
      { kind: 'count', minimum: 1, maximum: 9, default: '2', ...words },
      '3',
    ],
    ['projector.flashesPerFrame', '3', quantity('one'), '3'],
    ['region.mainsHz', '50', quantity('Hz'), '50'],
    [
      'region.mainsHz',
      '50',
      { kind: 'choice', options: { '50': '50 Hz', '60': '60 Hz' }, default: '60', ...words },
      '50',
    ],
    [
      'region.deliveryFps',
      '30000/1001',
      { kind: 'choice', options: { '25': 'a', '30000/1001': 'b' }, default: '25', ...words },
      '30000/1001',
    ],
    [
      'camera.cameraFps',
      '25.0',
      { kind: 'choice', options: { '24': 'a', '25': 'b' }, default: '24', ...words },
      '25',
    ],
    [
      'reel.gauge',
      'super-8',
      { kind: 'choice', options: { 'super-8': 'a' }, default: 'super-8', ...words },
      'super-8',
    ],
    [
      'reel.gauge',
      '16mm',
      { kind: 'choice', options: { 'super-8': 'a', '16': 'b' }, default: 'super-8', ...words },
      undefined,
    ],
    ['reel.gauge', '16mm', quantity('mm'), undefined],
    [
      'reel.gauge',
      '16mm',
      {
        kind: 'choice',
        options: { 'super-8-magnetic': 'a', '16mm-optical': 'b', '16mm-magnetic': 'c' },
        default: 'super-8-magnetic',
        ...words,
      },
      '16mm-optical',
    ],
    [
      'camera.cameraRates',
      '25; 50',
      { kind: 'list', unit: 'fps', minimum: 1, maximum: 99, longest: 9, default: '25', ...words },
      '25; 50',
    ],
    ['projector.filmFps', 'fast', quantity('fps'), undefined],
  ])('%s “%s” goes in as what it means', (field, text, spec, wanted) => {
    expect(convertBenchText(field, text, spec)).toBe(wanted);
  });

  it('means the same length in whatever unit the worksheet counts', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2_000_000 }), (thousandths) => {
        // Four decimals, because three could be thousands.
        const text = (thousandths / 1000).toFixed(4);
        const converted = convertBenchText('reel.lengthMetres', text, quantity('mm'));
        const read = parseEntry(quantity('mm'), converted ?? '');
        expect(read.ok && read.value.value).toBeCloseTo(thousandths, 6);
      }),
    );
  });
});

describe('what the bench says to a worksheet', () => {
  it('nothing while nothing is described', () => {
    expect(benchOverlay(sheet, {}, EMPTY_BENCH)).toBeUndefined();
    expect(benchEntries(sheet, EMPTY_BENCH)).toEqual({});
    expect(benchOverlay(sheet, {}, described({ 'camera.pixelsAcross': '1920' }))).toBeUndefined();
  });

  it('its entries, under the name of the bench', () => {
    const state = described({ 'projector.filmFps': '24', 'camera.cameraFps': '25' });
    expect(benchOverlay(sheet, {}, state)).toEqual({
      name: 'Club',
      entries: { filmFps: '24', cameraFps: '25' },
      leftOut: [],
    });
  });

  it('not what the worksheet cannot take; that is named', () => {
    const state = described({ 'projector.filmFps': 'fast', 'camera.cameraFps': '240' });
    expect(benchOverlay(sheet, {}, state)).toMatchObject({
      entries: {},
      leftOut: ['Film rate', 'Camera rate'],
    });
  });

  it('not the one entry that does not go with the book’s other numbers', () => {
    const state = described({ 'projector.filmFps': '24', 'camera.cameraFps': '60' });
    expect(benchOverlay(sheet, {}, state)).toMatchObject({
      entries: { filmFps: '24' },
      leftOut: ['Camera rate'],
    });
    // The chapter's own shorter exposure goes with it.
    expect(benchOverlay(sheet, { exposureSeconds: '1/100' }, state)?.entries).toEqual({
      filmFps: '24',
      cameraFps: '60',
    });
  });

  it('the one rate of a machine that has only one, and no guess among several', () => {
    expect(benchEntries(sheet, described({ 'projector.filmRates': '24' }))).toEqual({
      filmFps: '24',
    });
    const several = described({ 'projector.filmRates': '18; 24' });
    expect(benchOverlay(sheet, {}, several)).toBeUndefined();
  });
});

describe('the worksheets of the book', () => {
  const fed = [...worksheets.values()].flatMap((worksheet) =>
    Object.entries(worksheet.inputs).flatMap(([key, spec]) =>
      spec.bench === undefined ? [] : [{ worksheet, key, spec, field: spec.bench }],
    ),
  );

  it('ask the bench only for what it can say', () => {
    expect(fed.length).toBeGreaterThan(10);
    const samples: Partial<Record<BenchField, string>> = {
      'region.mainsHz': '50',
      'region.deliveryFps': '25',
    };
    const unfit = fed.filter(({ field, spec }) => {
      const own = field.startsWith('region.')
        ? undefined
        : BENCH_INPUTS[field as keyof typeof BENCH_INPUTS];
      const options = own?.kind === 'choice' ? Object.keys(own.options).filter(Boolean) : [];
      const accepted = own === undefined || own.kind === 'choice' ? undefined : own.accepted;
      const texts =
        own?.kind === 'choice' ? options : [samples[field] ?? accepted?.split(/, | or /u)[0] ?? ''];
      return texts.every((text) => convertBenchText(field, text, spec) === undefined);
    });
    expect(unfit.map(({ worksheet, key }) => `${worksheet.id}: ${key}`)).toEqual([]);
  });

  it('on sound do not keep Super 8 for a reel of 16 mm', () => {
    const reel = { 'reel.gauge': '16mm', 'reel.nativeFps': '24' } as const;
    const state = { ...EMPTY_BENCH, reels: [{ name: 'Sound', entries: reel }] };
    expect(benchEntries(worksheets.get('sound-offset')!, state)).toMatchObject({
      system: '16mm-optical',
      filmFps: '24',
    });
    expect(benchEntries(worksheets.get('sound-retiming')!, state)).toMatchObject({
      nativeFps: '24',
      shownFps: '24',
    });
  });

  it('open with answers on every bench of the book, and leave nothing of it out', () => {
    expect(exampleStates.length).toBeGreaterThan(1);
    const faults = exampleStates.flatMap(({ file, state }) =>
      [...worksheets.values()].flatMap((worksheet) => {
        const overlay = benchOverlay(worksheet, {}, state);
        const { outcome } = evaluate(
          worksheet,
          fillEntries(worksheet.inputs, overlay?.entries ?? {}),
        );
        return [
          ...(outcome === undefined ? [`${worksheet.id} does not open on ${file}`] : []),
          ...(overlay?.leftOut ?? []).map(
            (label) => `${worksheet.id} leaves out ${label} of ${file}`,
          ),
        ];
      }),
    );
    expect(faults).toEqual([]);
  });

  it('open with answers whatever a bench says', () => {
    fc.assert(
      fc.property(anyBench, fc.constantFrom(...worksheets.values()), (state, worksheet) => {
        const entries = fillEntries(worksheet.inputs, benchEntries(worksheet, state));
        expect(evaluate(worksheet, entries).outcome).toBeDefined();
      }),
      { numRuns: 1000 },
    );
  });
});

describe('the fields of the bench', () => {
  it('each have a form of the kind that is read', () => {
    expect(Object.keys(BENCH_INPUTS).sort()).toEqual([...STORED_FIELDS].sort());
    for (const field of STORED_FIELDS)
      expect(BENCH_INPUTS[field].kind).toBe(benchReading(field).kind);
  });

  it.each(STORED_FIELDS)('%s accepts the examples it shows, and says no to nonsense', (field) => {
    const spec: InputSpec = BENCH_INPUTS[field];
    if (spec.kind === 'choice') {
      expect(parseEntry(spec, '').ok).toBe(true);
      expect(parseEntry(spec, 'nonsense').ok).toBe(false);
      return;
    }
    const separator = spec.kind === 'list' ? / or /u : /, | or /u;
    for (const text of spec.accepted.split(separator)) {
      expect(parseEntry(spec, text, 25), text).toMatchObject({ ok: true });
    }
    expect(parseEntry(spec, 'nonsense').ok).toBe(false);
  });

  it('of the book’s own benches can all be read', () => {
    for (const { file, state, faults } of exampleStates) {
      expect(faults).toEqual([]);
      const all = { ...state.benches[0]?.entries, ...state.reels[0]?.entries };
      const refused = STORED_FIELDS.filter((field) => {
        const text = all[field];
        return text !== undefined && !parseEntry(BENCH_INPUTS[field], text).ok;
      });
      expect(refused, file).toEqual([]);
    }
  });
});

describe('the triage of a reel', () => {
  it('takes its gauge from the reel, and nothing from the projector', () => {
    const triage = worksheets.get('condition-triage')!;
    const projector = { 'projector.gauge': 'super-8' };
    expect(benchOverlay(triage, {}, described(projector))).toBeUndefined();
    const reels = [{ name: 'Regatta', entries: { 'reel.gauge': '16mm' } }];
    expect(benchEntries(triage, described(projector, { reels }))).toEqual({ gauge: '16mm' });
  });
});
