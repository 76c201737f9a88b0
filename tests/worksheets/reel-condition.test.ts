import { describe, expect, test } from 'vitest';
import { worksheet as acidLevel } from '../../src/worksheets/acid-level.ts';
import { worksheet as triage } from '../../src/worksheets/condition-triage.ts';
import { evaluate, fillEntries, type Evaluation } from '../../src/worksheets/evaluate.ts';
import { worksheet as shrinkage } from '../../src/worksheets/shrinkage.ts';
import { worksheet as climate } from '../../src/worksheets/storage-climate.ts';
import type { AnyWorksheet } from '../../src/worksheets/types.ts';

const run = (worksheet: AnyWorksheet, entries: Record<string, string> = {}): Evaluation =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries));
const value = (evaluation: Evaluation, key: string): number =>
  evaluation.outcome?.answers[key]?.value ?? Number.NaN;
const plain = (text: string | undefined): string => (text ?? '').replaceAll(/\s/gu, ' ');

describe('worksheet shrinkage', () => {
  const sixteen = { gauge: '16mm', readingErrorMillimetres: '0' };

  test.each([
    ['381', '8mm-type-r', 0],
    ['379.095', '8mm-type-r', 0.5],
    ['754.38', '16mm', 1],
    ['750.57', '16mm', 1.5],
    ['738.92', '9.5mm', 2],
  ])('%s mm over a hundred pitches of %s is %d %%', (measuredMillimetres, gauge, percent) => {
    const evaluation = run(shrinkage, { gauge, measuredMillimetres });
    expect(value(evaluation, 'shrinkagePercent')).toBeCloseTo(percent, 6);
  });

  test('passes a new film, warns of a slight shrinkage and stops at the limit', () => {
    const level = (measuredMillimetres: string): string | undefined =>
      run(shrinkage, { ...sixteen, measuredMillimetres }).outcome?.verdict.level;
    expect(level('762')).toBe('good');
    expect(level('759')).toBe('care');
    expect(level('756')).toBe('stop');
    expect(level('750')).toBe('stop');
  });

  test('takes a miscount for what it is', () => {
    const { outcome } = run(shrinkage, { gauge: 'super-8', measuredMillimetres: '381' });
    expect(outcome?.verdict.level).toBe('stop');
    expect(outcome?.verdict.sentence).toContain('count again');
    expect(plain(outcome?.verdict.sentence)).toContain('89.99 pitches');
  });

  test('shows both counting traps', () => {
    const leader = run(shrinkage, { method: 'leader', pitchCount: '101', leaderPitches: '100' });
    expect(value(leader, 'countedPercent')).toBeCloseTo(0.990099, 6);
    expect(value(run(shrinkage), 'falsePercent')).toBe(1);
  });

  test('is less sure beside a leader, which has a tolerance of its own', () => {
    const spread = (evaluation: Evaluation): number =>
      value(evaluation, 'mostPercent') - value(evaluation, 'leastPercent');
    const rule = run(shrinkage, { ...sixteen, measuredMillimetres: '754.38' });
    const leader = run(shrinkage, { ...sixteen, method: 'leader', leaderPitches: '99' });
    expect(spread(leader)).toBeGreaterThan(spread(rule));
    expect(value(leader, 'shrinkagePercent')).toBeCloseTo(value(rule, 'shrinkagePercent'), 6);
  });

  test('leaves out the short pitch where there is none', () => {
    const { outcome } = run(shrinkage, { gauge: '9.5mm', measuredMillimetres: '750' });
    expect(outcome?.answers['shortPitchPercent']).toBeUndefined();
  });
});

describe('worksheet condition-triage', () => {
  const sound = { base: 'acetate', year: '1974', shrinkagePercent: '0.1', acidLevel: '0' };

  test('lets a sound reel run', () => {
    const { outcome } = run(triage, sound);
    expect(outcome?.verdict.level).toBe('good');
    expect(outcome?.tables).toBeUndefined();
  });

  test('gives every reason with its sources', () => {
    const { outcome } = run(triage, { ...sound, mould: 'active', perforations: 'few' });
    const rows = outcome?.tables?.[0]?.rows ?? [];
    expect(rows).toHaveLength(2);
    expect(rows[0]?.cells[2]).toBe('national-archives-mould');
    expect(outcome?.answers['verdict']?.text).toContain('refer to a specialist');
    expect(outcome?.cautions?.join(' ')).toContain('FFP2');
  });

  test('lets suspected nitrate win over everything', () => {
    const { outcome } = run(triage, { ...sound, base: 'nitrate-suspected' });
    expect(outcome?.verdict.sentence).toContain('nitrate');
    expect(outcome?.cautions?.join(' ')).toContain('Never project');
  });

  test('is careful when nothing was said', () => {
    const { outcome } = run(triage);
    expect(outcome?.verdict.level).toBe('care');
    const { outcome: nothing } = run(triage, {
      base: 'unknown',
      gauge: 'other',
      smell: 'not-noted',
      mould: 'not-noted',
    });
    expect(nothing?.verdict.level).toBe('stop');
  });

  test('cites at its foot every source that a reason can name', () => {
    const cited = new Set(triage.sources);
    for (const [key, spec] of Object.entries(triage.inputs)) {
      if (spec.kind !== 'choice') continue;
      for (const option of Object.keys(spec.options)) {
        const { outcome } = run(triage, { gauge: '35mm', shrinkagePercent: '0.9', [key]: option });
        for (const { cells } of outcome?.tables?.[0]?.rows ?? []) {
          for (const id of (cells[2] ?? '').split(', ')) expect([...cited]).toContain(id);
        }
      }
    }
  });
});

describe('worksheet acid-level', () => {
  test('counts a shade in between as the higher level', () => {
    expect(value(run(acidLevel, { shade: '1.75' }), 'acidLevel')).toBe(2);
    expect(value(run(acidLevel, { shade: '0.5' }), 'acidLevel')).toBe(1);
    expect(run(acidLevel, { shade: '1.75' }).outcome?.verdict.sentence).toMatch(/^Take it as/u);
  });

  test('refuses a level that is not on the chart', () => {
    expect(Object.keys(run(acidLevel, { shade: '1.6' }).messages)).toEqual(['shade']);
  });

  test('says that level 3 is partly from memory', () => {
    expect(run(acidLevel, { shade: '3' }).outcome?.answers['howKnown']?.text).toContain('memory');
    expect(run(acidLevel, { shade: '3' }).outcome?.cautions?.join(' ')).toContain('gloves');
  });
});

describe('worksheet storage-climate', () => {
  test.each([
    ['26', '45', 'temperatureCelsius'],
    ['20', '61', 'relativeHumidityPercent'],
    ['20', '15', 'relativeHumidityPercent'],
  ])('has no published value for %s °C and %s %%', (temperatureCelsius, humidity, key) => {
    const { messages, outcome } = run(climate, {
      temperatureCelsius,
      relativeHumidityPercent: humidity,
    });
    expect(outcome).toBeUndefined();
    expect(messages[key]).toContain('no published value');
  });

  test('gives no years of life anywhere', () => {
    const { outcome } = run(climate, { temperatureCelsius: '-5', relativeHumidityPercent: '30' });
    expect(outcome?.verdict.level).toBe('good');
    expect(JSON.stringify(outcome)).not.toMatch(/\d+ years/u);
  });

  test('says that the limits for acetate are from memory', () => {
    const { outcome } = run(climate, {
      film: 'acetate-colour',
      temperatureCelsius: '1',
      relativeHumidityPercent: '25',
    });
    expect(outcome?.verdict.sentence).toContain('from memory');
  });
});
