import { describe, expect, it } from 'vitest';
import { convertBenchText } from '../../src/ui/bench/bench-entries.ts';
import { hasOwnUnit } from '../../src/ui/own-unit.ts';
import { BENCH_INPUTS } from '../../src/worksheets/bench/bench-inputs.ts';
import { entryText, entryUnitSymbol } from '../../src/worksheets/machine/entry-text.ts';
import { evaluate, fillEntries, parseEntry } from '../../src/worksheets/machine/evaluate.ts';
import { findWorksheet, worksheets } from '../../src/worksheets/registry.ts';
import type { InputSpec } from '../../src/worksheets/machine/types.ts';
import { hostileTexts } from './hostile-texts.ts';

const fields = [...worksheets.values()].flatMap(({ id, inputs }) =>
  Object.entries(inputs).map(([key, spec]) => ({ name: `${id} ${key}`, spec })),
);

const input = (id: string, key: string): InputSpec => {
  const spec = findWorksheet(id).inputs[key];
  if (spec === undefined) throw new Error(`${id} has no ${key}`);
  return spec;
};

const read = (spec: InputSpec, text: string, rate?: number): unknown => {
  const found = parseEntry(spec, text, rate);
  return found.ok ? found.value.value : found.reason;
};

describe('entries in the fields of the worksheets', () => {
  it('take the commonest rates of half the world as they are written there', () => {
    const rates = fields.filter(
      ({ spec }) => spec.kind === 'quantity' && spec.unit === 'fps' && spec.maximum >= 24,
    );
    expect(rates.length).toBeGreaterThan(20);
    for (const { name, spec } of rates) {
      expect([name, read(spec, '23,976')]).toEqual([name, 23.976]);
      expect([name, read(spec, '16,667')]).toEqual([name, 16.667]);
      expect([name, read(spec, '16⅔')]).toEqual([name, 50 / 3]);
      expect([name, read(spec, '18 frames / s')]).toEqual([name, 18]);
    }
  });

  it('take an exposure time as it is marked, in whatever slash', () => {
    const times = fields.filter(
      ({ spec }) => spec.kind === 'quantity' && spec.angleOf !== undefined,
    );
    expect(times.length).toBeGreaterThan(4);
    for (const { name, spec } of times) {
      for (const text of ['1/50', '1⁄50', '1／50', '\u200e1/50', '1/50 s', '20 ms', '180º']) {
        expect([name, text, read(spec, text, 25)]).toEqual([name, text, expect.closeTo(0.02, 12)]);
      }
    }
  });

  it('take a bare fraction in the unit of the field', () => {
    const inMinutes = fields.filter(
      ({ spec }) => spec.kind === 'quantity' && spec.unit === 's' && spec.entryUnit === 'min',
    );
    expect(inMinutes.length).toBeGreaterThan(3);
    for (const { name, spec } of inMinutes) {
      for (const text of ['1/2', '½', '0,5', '30 s', '0:30', '1/2 min']) {
        expect([name, text, read(spec, text)]).toEqual([name, text, 30]);
      }
      expect([name, read(spec, '1\'30"')]).toEqual([name, 90]);
    }
    expect(read(input('job-time', 'hoursPerDay'), '1/2')).toBe(0.5);
    // A camera time in ms is one of the fractions of a second that are marked on cameras.
    const readout = input('flash-match', 'readoutSeconds');
    expect(read(readout, '1/50')).toBeCloseTo(0.02, 12);
    expect([entryUnitSymbol(readout, '1/50'), entryUnitSymbol(readout, '20')]).toEqual(['s', 'ms']);
    expect(entryText(readout, '1⁄50')).toBe('1⁄50\u00a0s');
  });

  it('keep stops, densities, bits and bytes apart', () => {
    const density = input('density-range', 'minimumDensity');
    expect(read(density, '1 stop')).toBeCloseTo(0.30103, 5);
    expect(read(density, '0.3 px')).toContain('this field takes a density');
    expect(read(input('density-range', 'cameraStops'), '3 D')).toBeCloseTo(9.9658, 4);
    const rate = input('file-size', 'megabitsPerSecond');
    expect(read(rate, '50 Mb/s')).toBe(50);
    expect(read(rate, '6 MB/s')).toBe(48);
    expect(read(rate, '50 mb/s')).toContain('“mb/s” could mean');
    const frames = input('film-length', 'frames');
    expect(read(frames, '3600 frames')).toBe(3600);
    expect(read(frames, '3600 ft')).toContain('this field takes a number of frames');
    expect(read(input('file-size', 'widthPixels'), '1920 px')).toBe(1920);
    expect(read(input('lens-setup', 'fNumber'), 'f/2.8')).toBe(2.8);
    expect(read(input('light-stops', 'toSensitivity'), 'ISO 400')).toBe(400);
  });

  it('refuse a length that could be one foot or a thousand, and say how to write each', () => {
    const length = input('film-length', 'lengthMetres');
    for (const text of ['1,000 ft', '1.000 ft']) {
      expect(read(length, text)).toBe(
        `“${text}” could mean 1 ft or 1000 ft: write it as one of these. Try 50 ft, 15 m or 4 ft 6 in.`,
      );
    }
    expect(read(length, '1000 ft')).toBeCloseTo(304.8, 9);
  });

  it('have no unit of a plain number where the quantity has a kind of its own', () => {
    const plain = fields.filter(({ spec }) => 'unit' in spec && spec.unit === 'one');
    // Pure ratios, an exponent, and a tachometer whose unit is chosen beside it.
    for (const { name } of plain) {
      expect(name).toMatch(
        /pupilRatio|turnsRatio|gamma|tachometer (?:reading|resolution)|condition-triage year/u,
      );
    }
  });

  it('go from the bench into a sheet in any of these forms', () => {
    const spec = input('film-length', 'lengthMetres');
    expect(convertBenchText('reel.lengthMetres', '50’', spec)).toBe('50’');
    expect(convertBenchText('projector.filmFps', '16⅔', input('flash-match', 'filmFps'))).toBe(
      '16⅔',
    );
    const inMillimetres = input('stopwatch', 'lengthMillimetres');
    expect(convertBenchText('reel.lengthMetres', '15½', inMillimetres)).toBe('15½');
    expect(read(BENCH_INPUTS['camera.cameraFps'], '23,976')).toBe(23.976);
  });
});

describe('the unit beside a field', () => {
  it('goes where the entry says its own, and stays for every form of a bare number', () => {
    for (const text of [
      '',
      '18',
      '16⅔',
      '16 2/3',
      '１８',
      '١٨',
      '1⁄54',
      '−3',
      '\u200e18',
      '24; 25',
    ]) {
      expect([text, hasOwnUnit(text)]).toEqual([text, false]);
    }
    for (const text of ['50 ft', '50’', '3:20', '180°', '45 %', 'abc']) {
      expect([text, hasOwnUnit(text)]).toEqual([text, true]);
    }
  });
});

describe('what a field says of a text that it refuses', () => {
  const unseen = /[\p{Default_Ignorable_Code_Point}\p{Cf}\p{Cc}\p{Cs}]/u;
  const texts = [...hostileTexts, '\u200e', '\u2066x\u2069', 'x\u202e', '1⁄0', '18 \u200fparsecs'];

  it.each([...worksheets.values()])('$id: shows nothing that cannot be seen', (worksheet) => {
    const specs = worksheet.inputs;
    for (const key of Object.keys(specs)) {
      for (const text of texts) {
        const { messages } = evaluate(worksheet, { ...fillEntries(specs, {}), [key]: text });
        for (const message of Object.values(messages)) expect(message).not.toMatch(unseen);
      }
    }
  });
});
