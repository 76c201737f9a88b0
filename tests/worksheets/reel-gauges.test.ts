import { describe, expect, test } from 'vitest';
import { GAUGE_IDS, GAUGES } from '../../src/core/gauges.ts';
import { evaluate, fillEntries, type Evaluation } from '../../src/worksheets/evaluate.ts';
import { worksheet as dimensions } from '../../src/worksheets/gauge-dimensions.ts';
import { worksheet as finder } from '../../src/worksheets/gauge-finder.ts';
import type { AnyWorksheet } from '../../src/worksheets/types.ts';
import { readSources } from '../content/read-content.ts';

const run = (worksheet: AnyWorksheet, entries: Record<string, string> = {}): Evaluation =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries));
const text = (evaluation: Evaluation, key: string): string =>
  (evaluation.outcome?.answers[key]?.text ?? '').replaceAll(/\s/gu, ' ');

describe('worksheet gauge-finder', () => {
  test('knows Super 8 by ten pitches', () => {
    const evaluation = run(finder);
    expect(evaluation.outcome?.verdict.level).toBe('good');
    expect(text(evaluation, 'gauge')).toBe('Super 8');
  });

  test('asks for one more measurement when only the width is known', () => {
    const evaluation = run(finder, { pitchLengthMillimetres: '' });
    expect(evaluation.outcome?.verdict.level).toBe('care');
    expect(text(evaluation, 'gauge')).toMatch(
      /^(?:Super 8 or 8 mm type R|8 mm type R or Super 8)$/u,
    );
    expect(evaluation.outcome?.answers['pitchMillimetres']).toBeUndefined();
  });

  test('refers an unknown film and warns of nitrate', () => {
    const { outcome } = run(finder, { filmWidthMillimetres: '17.5', pitchLengthMillimetres: '' });
    expect(outcome?.verdict.level).toBe('stop');
    expect(outcome?.verdict.sentence).toContain('archive');
    expect(outcome?.cautions?.join(' ')).toContain('nitrate');
  });

  test('warns of nitrate with 35 mm film', () => {
    const { outcome } = run(finder, { filmWidthMillimetres: '35', pitchLengthMillimetres: '47.5' });
    expect(outcome?.answers['gauge']?.text).toBe('35 mm');
    expect(outcome?.cautions?.join(' ')).toContain('nitrate');
  });

  test('says for every rejected gauge what speaks against it', () => {
    const rows = run(finder).outcome?.tables?.[0]?.rows ?? [];
    expect(rows).toHaveLength(GAUGE_IDS.length + 1);
    for (const { cells } of rows) {
      expect(cells[1] === 'yes' ? cells[2] : (cells[2]?.length ?? 0) > 5).toBe(
        cells[1] === 'yes' ? '–' : true,
      );
    }
  });

  test('puts a picture wider than the film beside the picture', () => {
    const { messages } = run(finder, { pictureWidthMillimetres: '9' });
    expect(Object.keys(messages)).toEqual(['pictureWidthMillimetres']);
  });
});

describe('worksheet gauge-dimensions', () => {
  test.each(GAUGE_IDS)('draws %s to scale and says how each value is known', (gauge) => {
    const { outcome } = run(dimensions, { gauge });
    const [picture] = outcome?.pictures ?? [];
    if (picture?.name !== 'film-strip') throw new Error('no strip of film');
    expect(picture.widthMillimetres).toBe(GAUGES[gauge].filmWidth.millimetres);
    expect(picture.alternative).toContain(GAUGES[gauge].name);
    const known = new Set(readSources().map(({ id }) => id));
    const rows = outcome?.tables?.[0]?.rows ?? [];
    expect(rows.length).toBeGreaterThan(8);
    for (const { cells } of rows) expect(known.has(cells[3] ?? '')).toBe(true);
  });

  test('says about before every value from memory, and only there', () => {
    for (const gauge of GAUGE_IDS) {
      for (const { cells } of run(dimensions, { gauge }).outcome?.tables?.[0]?.rows ?? []) {
        const [, value = '', howKnown = ''] = cells;
        if (/\d/u.test(value)) {
          expect(value.startsWith('about ')).toBe(howKnown.startsWith('from memory'));
        }
      }
    }
  });

  test('cites every source of its table', () => {
    const cited = new Set(dimensions.sources);
    for (const gauge of GAUGE_IDS) {
      for (const { cells } of run(dimensions, { gauge }).outcome?.tables?.[0]?.rows ?? []) {
        expect([...cited, 'arithmetic']).toContain(cells[3]);
      }
    }
  });

  test('draws a sound track where there is one and refuses where there is none', () => {
    const picture = run(dimensions, { gauge: 'super-8', sound: 'magnetic' }).outcome?.pictures?.[0];
    expect(picture?.name === 'film-strip' ? picture.stripes : []).toHaveLength(1);
    const { messages } = run(dimensions, { gauge: '8mm-type-r', sound: 'optical' });
    expect(Object.keys(messages)).toEqual(['sound']);
  });

  test('gives the frames to the metre both ways', () => {
    expect(text(run(dimensions, { gauge: '9.5mm' }), 'framesPerMetre')).toBe('132.63 frames');
    expect(text(run(dimensions, { gauge: '9.5mm' }), 'framesPerMetreByFoot')).toBe('131.23 frames');
    expect(text(run(dimensions, { gauge: '35mm' }), 'framesPerMetre')).toBe('52.632 frames');
  });
});
