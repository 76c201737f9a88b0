import { describe, expect, test } from 'vitest';
import { formatQuantity } from '../../src/quantity/format.ts';
import { entryText } from '../../src/worksheets/machine/entry-text.ts';
import { evaluate, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import { worksheets } from '../../src/worksheets/registry.ts';
import { worksheet as densityRange } from '../../src/worksheets/gate/density-range/worksheet.ts';
import { worksheet as keepList } from '../../src/worksheets/file/keep-list/worksheet.ts';
import { worksheet as stopwatch } from '../../src/worksheets/gate/stopwatch/worksheet.ts';

const GAP = '\u00a0';

describe('an entry in a sentence', () => {
  test('has the unit that a bare number means', () => {
    expect(entryText(keepList.inputs.cameraFps, '50')).toBe(`50${GAP}frames/s`);
    expect(entryText(keepList.inputs.readoutSeconds, '16')).toBe(`16${GAP}ms`);
    expect(entryText(keepList.inputs.exposureSeconds, '1/54')).toBe(`1/54${GAP}s`);
    expect(entryText(keepList.inputs.readoutSeconds, '1/60')).toBe(`1/60${GAP}s`);
  });

  test('keeps a whole number and its fraction in one line', () => {
    expect(entryText(keepList.inputs.firstCameraFrame, '126 1/2')).toBe(`126${GAP}1/2${GAP}frames`);
  });

  test('puts units that are words in the number that fits', () => {
    expect(entryText(stopwatch.inputs.countErrorFrames, '1')).toBe(`1${GAP}frame`);
    expect(entryText(stopwatch.inputs.countErrorFrames, '2')).toBe(`2${GAP}frames`);
    expect(entryText(densityRange.inputs.cameraStops, '9')).toBe(`9${GAP}stops`);
    expect(entryText(densityRange.inputs.spacingStops, '1')).toBe(`1${GAP}stop`);
    expect(entryText(densityRange.inputs.spacingStops, '1,5')).toBe(`1,5${GAP}stops`);
    expect(formatQuantity(1, 'frames')).toBe(`1${GAP}frame`);
    expect(formatQuantity(1.2, 'frames')).toBe(`1.2${GAP}frames`);
  });

  test('stays as typed where the reader wrote a unit', () => {
    expect(entryText(keepList.inputs.readoutSeconds, '16 ms')).toBe('16 ms');
  });
});

describe('an entry at the end of its range', () => {
  // Rounded to its last digit it lies a hair outside: 0.02 mm, 2 mm, 1°.
  test.each<[string, string, string, Entries?]>([
    ['take-up-room', 'measuredMillimetres', '0.000787401574803 in'],
    ['gauge-finder', 'readingErrorMillimetres', '0,00656167979003 ft'],
    ['unequal-blades', 'bladeDegrees', '0.99999999999; 54; 72', { openDegrees: '60; 60; 113' }],
  ])('is taken by %s', (id, key, text, others = {}) => {
    const sheet = worksheets.get(id);
    if (sheet === undefined) throw new Error(`no worksheet ${id}`);
    const { messages, outcome } = evaluate(sheet, { ...others, [key]: text });
    expect(messages).toEqual({});
    expect(outcome).toBeDefined();
  });
});

test('a camera that needs more light than any lamp gives is told so, and no field is blamed', () => {
  const entries = {
    ...{ fNumber: '64', exposureSeconds: '0.1 ms', sensitivity: '1', lampLux: '' },
    ...{ sensorWidthMillimetres: '100', fillPercent: '100', openPercent: '20' },
  };
  const sheet = worksheets.get('film-light');
  if (sheet === undefined) throw new Error('no worksheet film-light');
  const { messages, outcome } = evaluate(sheet, entries);
  expect(messages).toEqual({});
  expect(outcome?.verdict.level).toBe('care');
});
