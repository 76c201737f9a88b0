import { describe, expect, test } from 'vitest';
import { GAUGE_IDS, GAUGES } from '../../src/core/reel/gauges.ts';
import { evaluate, fillEntries, type Evaluation } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet as dimensions } from '../../src/worksheets/reel/gauge-dimensions/worksheet.ts';
import { worksheet as finder } from '../../src/worksheets/reel/gauge-finder/worksheet.ts';
import type { Worksheet } from '../../src/worksheets/machine/types.ts';
import { readSources } from '../content/read-content.ts';

const run = (worksheet: Worksheet, entries: Record<string, string> = {}): Evaluation =>
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
    expect(text(evaluation, 'gauge')).toMatch(/^(?:Super 8 or Standard 8|Standard 8 or Super 8)$/u);
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

  test('shows only films with the holes that were seen', () => {
    const { outcome } = run(finder, {
      filmWidthMillimetres: '16',
      pitchLengthMillimetres: '76.2',
      perforationPosition: 'both-edges-at-frame-line',
    });
    const [picture] = outcome?.pictures ?? [];
    if (picture?.name !== 'film-gauges') throw new Error('no films');
    expect(picture.rows.flat().map(({ label }) => label.at(-1))).toEqual(['two rows']);
  });

  test('does not take the number of rows as proof of sound or silence', () => {
    for (const { words } of [
      { words: [finder.model, ...finder.cautions].join(' ') },
      { words: run(dimensions, { gauge: '16mm' }).outcome?.verdict.sentence ?? '' },
    ]) {
      expect(words).not.toMatch(/silent|one row means/u);
    }
  });

  test.each([
    ['38.1', '8mm-type-r', 'super-8'],
    ['42.3', 'super-8', '8mm-type-r'],
  ])('stops ten pitches of %s mm on the other 8 mm projector', (length, own, other) => {
    const onOther = run(finder, { pitchLengthMillimetres: length, projectorGauge: other }).outcome;
    expect(onOther?.verdict.level).toBe('stop');
    expect(onOther?.verdict.sentence).toContain('0.424 mm');
    expect(onOther?.answers['onProjector']?.level).toBe('stop');
    const onOwn = run(finder, { pitchLengthMillimetres: length, projectorGauge: own }).outcome;
    expect(onOwn?.verdict.level).toBe('good');
    expect(onOwn?.answers['onProjector']?.level).toBe('good');
  });

  test('warns of the machine while two gauges are still possible', () => {
    const { outcome } = run(finder, { pitchLengthMillimetres: '', projectorGauge: 'super-8' });
    expect(outcome?.verdict.level).toBe('care');
    expect(outcome?.cautions?.join(' ')).toContain('Do not thread a Standard 8 reel');
  });

  test('does not call an unsaid projector fit', () => {
    expect(text(run(finder), 'onProjector')).toMatch(/^not yet/u);
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

  test('stops a Standard 8 reel on a Super 8 projector, and the other way round', () => {
    for (const [gauge, projectorGauge] of [
      ['8mm-type-r', 'super-8'],
      ['super-8', '8mm-type-r'],
      ['16mm', 'super-8'],
      ['super-16', '16mm'],
      ['35mm', '35mm'],
    ] as const) {
      const { outcome } = run(dimensions, { gauge, projectorGauge });
      expect(outcome?.verdict.level).toBe('stop');
      expect(outcome?.answers['onProjector']?.text).toBe(outcome?.verdict.sentence);
    }
    expect(run(dimensions, { projectorGauge: 'super-8' }).outcome?.verdict.level).toBe('note');
  });

  test('tries 18 first for striped Super 8, 16 for striped Standard 8, 24 for an optical track', () => {
    const first = (gauge: string, sound: string): string =>
      text(run(dimensions, { gauge, sound }), 'ratesToTry').split(' ')[0] ?? '';
    expect(first('super-8', 'magnetic')).toBe('18');
    expect(first('8mm-type-r', 'magnetic')).toBe('16');
    expect(first('16mm', 'optical')).toBe('24');
    expect(first('16mm', 'none')).toBe('16');
  });

  test('gives the frames to the metre both ways', () => {
    expect(text(run(dimensions, { gauge: '9.5mm' }), 'framesPerMetre')).toBe('132.63 frames');
    expect(text(run(dimensions, { gauge: '9.5mm' }), 'framesPerMetreByFoot')).toBe('131.23 frames');
    expect(text(run(dimensions, { gauge: '35mm' }), 'framesPerMetre')).toBe('52.632 frames');
  });
});
