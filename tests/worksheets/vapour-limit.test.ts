import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries, type Evaluation } from '../../src/worksheets/evaluate.ts';
import { worksheet } from '../../src/worksheets/vapour-limit.ts';

const run = (entries: Record<string, string>): Evaluation =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries));

describe('the worksheet on vapour', () => {
  test('says stop at the limit and never says good below it', () => {
    const level = (readingPpm: string): string =>
      run({ vapour: 'acetic-acid', readingPpm }).outcome!.verdict.level;
    expect(level('10')).toBe('stop');
    expect(level('9.9')).toBe('care');
    expect(level('1')).toBe('care');
    expect(level('0.5')).toBe('note');
    expect(level('0')).toBe('note');
  });

  test('takes a reading over any estimate', () => {
    const evaluation = run({ readingPpm: '12', millilitresPerHour: '500' });
    expect(evaluation.outcome!.answers['ppm']!.value).toBe(12);
  });

  test('halves the estimate when the air is renewed twice as often', () => {
    const ppm = (airChangesPerHour: string): number =>
      run({ airChangesPerHour }).outcome!.answers['ppm']!.value!;
    expect(ppm('1') / ppm('2')).toBeCloseTo(2, 9);
  });

  test('tells acid vapour to be carried out, not to be used less', () => {
    const acid = run({ vapour: 'acetic-acid', readingPpm: '3' }).outcome!.verdict.sentence;
    expect(acid).toContain('take the film out');
    expect(acid).not.toContain('use less');
  });
});
