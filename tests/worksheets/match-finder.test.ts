import { describe, expect, test } from 'vitest';
import { evaluate, fillEntries, type Evaluation } from '../../src/worksheets/evaluate.ts';
import { worksheet } from '../../src/worksheets/match-finder.ts';

const run = (entries: Record<string, string> = {}): Evaluation =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries));

describe('worksheet match-finder', () => {
  test('names the best setting and says of each why it stands there', () => {
    const { outcome } = run({ exposureKind: 'free', readoutSeconds: '0' });
    expect(outcome?.verdict.sentence).toContain('film 18, camera 25, exposure 1/54');
    const [best] = outcome?.tables ?? [];
    expect(best?.rows.length).toBeGreaterThan(2);
    for (const { cells } of best?.rows ?? []) {
      expect(cells.at(-1)).toMatch(/ripple .*native.*whole frames need/u);
    }
  });

  test('assumes a whole camera frame of readout until one is measured, and says so', () => {
    const { outcome } = run({ exposureKind: 'free' });
    expect(outcome?.verdict.sentence).toContain('film 18, camera 50, exposure 1/54');
    expect(outcome?.verdict.sentence).toContain('not measured: a whole camera frame is assumed');
  });

  test('lists at most twelve settings and tells how many there are', () => {
    const { outcome } = run({
      exposureKind: 'free',
      filmKind: 'range',
      fromFps: '16',
      toFps: '20',
      stepFps: '0.1',
    });
    const [best] = outcome?.tables ?? [];
    expect(best?.rows).toHaveLength(12);
    expect(best?.caption).toContain(`of ${outcome?.answers['usable']?.text}`);
  });

  test('shows typical settings that fail, each with its reason', () => {
    const { outcome } = run();
    const reasons = outcome?.tables?.[1]?.rows.map(({ cells }) => cells.at(-1)).join('\n') ?? '';
    expect(reasons).toContain('times as long as a camera frame');
    expect(reasons).toContain('the limit is 2');
    expect(reasons).toContain('whole frames need');
  });

  test('the counts add up', () => {
    const { outcome } = run();
    const value = (key: string): number => outcome?.answers[key]?.value ?? Number.NaN;
    expect(value('usable') + value('tooLong') + value('tooMuchRipple') + value('blended')).toBe(
      value('combinations'),
    );
  });

  test('says what stands in the way when nothing works', () => {
    const flicker = run({ filmRates: '18; 24', exposureTimes: '1/25; 1/50; 1/100' }).outcome;
    expect(flicker?.verdict.level).toBe('stop');
    expect(flicker?.verdict.sentence).toContain('flicker');
    const blends = run({ filmRates: '18', exposureKind: 'free', cameraRates: '20' }).outcome;
    expect(blends?.verdict.sentence).toContain('blended frames');
    const long = run({ exposureTimes: '1/10', cameraRates: '25' }).outcome;
    expect(long?.verdict.sentence).toContain('too long');
  });

  test('refuses a step that would try thousands of film rates', () => {
    const entries = { filmKind: 'range', fromFps: '1', toFps: '60', stepFps: '0.01' };
    expect(Object.keys(run(entries).messages)).toEqual(['stepFps']);
    const backwards = { filmKind: 'range', fromFps: '20', toFps: '16' };
    expect(Object.keys(run(backwards).messages)).toEqual(['toFps']);
  });
});
