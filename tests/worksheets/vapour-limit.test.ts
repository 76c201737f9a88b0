import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries, type Evaluation } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet } from '../../src/worksheets/reel/vapour-limit/worksheet.ts';

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

  test('opens with the strictest limit, not with the laxest', () => {
    const { answers, verdict } = run({}).outcome!;
    expect(answers['dayLimitPpm']!.value).toBe(200);
    expect(answers['sharePercent']!.value).toBeCloseTo(80, 0);
    expect(verdict.level).toBe('care');
  });

  test('never says that a law sets a limit without naming it', () => {
    const words = [worksheet.model, ...worksheet.cautions].join(' ');
    expect(words).not.toMatch(/\blaw sets\b|\blaw says\b/u);
  });

  test('does not print 500 ppm as a limit of OSHA, nor 15 ppm', () => {
    for (const vapour of ['isopropanol', 'acetic-acid']) {
      const { outcome } = run({ vapour, limit: 'osha' });
      expect(outcome!.answers['shortLimit']!.text).toBe('none from this publisher');
    }
  });

  test('asks for the number of a limit of one’s own, and warns when it is laxer', () => {
    expect(Object.keys(run({ limit: 'own' }).messages)).toEqual(['ownLimitPpm']);
    const lax = run({ limit: 'own', ownLimitPpm: '400' }).outcome!;
    expect(lax.answers['dayLimitPpm']!.value).toBe(400);
    expect(lax.cautions!.join(' ')).toContain('200');
    expect(run({ limit: 'own', ownLimitPpm: '100' }).outcome!.cautions).toEqual([]);
  });

  test('says how far the air is below what explodes, and stops at a tenth of it', () => {
    const { answers } = run({ readingPpm: '200' }).outcome!;
    expect(answers['explosivePercent']!.value).toBeCloseTo(1, 9);
    expect(answers['explosiveMargin']!.text).toContain('100 times below');
    const high = run({ limit: 'own', ownLimitPpm: '10000', readingPpm: '2000' }).outcome!.verdict;
    expect(high.level).toBe('stop');
    expect(high.sentence).toContain('explosive limit');
  });
});
