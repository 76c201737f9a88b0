import { describe, expect, test } from 'vitest';
import { worksheet as acidLevel } from '../../src/worksheets/reel/acid-level/worksheet.ts';
import { worksheet as triage } from '../../src/worksheets/reel/condition-triage/worksheet.ts';
import { evaluate, fillEntries, type Evaluation } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet as shrinkage } from '../../src/worksheets/reel/shrinkage/worksheet.ts';
import { worksheet as climate } from '../../src/worksheets/reel/storage-climate/worksheet.ts';
import type { Worksheet } from '../../src/worksheets/machine/types.ts';

const run = (worksheet: Worksheet, entries: Record<string, string> = {}): Evaluation =>
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
    const level = (length: string): string | undefined =>
      run(shrinkage, {
        ...sixteen,
        measuredMillimetres: length,
        middleMillimetres: length,
        endMillimetres: length,
      }).outcome?.verdict.level;
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

  test('takes a film longer than new for a miscount, and says so', () => {
    const { outcome } = run(shrinkage, { gauge: 'super-8', measuredMillimetres: '427.6' });
    expect(outcome?.verdict.level).toBe('stop');
    expect(outcome?.verdict.sentence).toContain('Longer than new film');
    const hidden = { measuredMillimetres: '421', middleMillimetres: '427.6' };
    expect(run(shrinkage, hidden).outcome?.verdict.sentence).toContain('count again');
  });

  test('calls no reel unshrunk that was measured at one place', () => {
    const exact = { ...sixteen, measuredMillimetres: '762' };
    const one = run(shrinkage, exact).outcome;
    expect(one?.verdict.level).toBe('care');
    expect(one?.verdict.sentence).toContain('measure the middle and the end');
    const two = run(shrinkage, { ...exact, middleMillimetres: '762' }).outcome;
    expect(two?.verdict.sentence).toContain('measure the end');
    const leader = run(shrinkage, { ...exact, method: 'leader', leaderPitches: '100' }).outcome;
    expect(leader?.verdict.level).not.toBe('good');
  });

  test('lets the shortest of three places decide, wherever it is', () => {
    const lengths = ['762', '761', '755'];
    for (const [head, middle, end] of [
      [0, 1, 2],
      [1, 2, 0],
      [2, 0, 1],
    ]) {
      const evaluation = run(shrinkage, {
        ...sixteen,
        measuredMillimetres: lengths[head ?? 0] ?? '',
        middleMillimetres: lengths[middle ?? 0] ?? '',
        endMillimetres: lengths[end ?? 0] ?? '',
      });
      expect(value(evaluation, 'shrinkagePercent')).toBeCloseTo((100 * 7) / 762, 6);
      expect(value(evaluation, 'spreadPercent')).toBeCloseTo((100 * 7) / 762, 6);
      expect(evaluation.outcome?.verdict.level).toBe('stop');
    }
  });

  test('names the place whose length cannot be', () => {
    const { messages } = run(shrinkage, { ...sixteen, measuredMillimetres: '21' });
    expect(Object.keys(messages)).toEqual(['measuredMillimetres']);
    const end = run(shrinkage, { ...sixteen, measuredMillimetres: '762', endMillimetres: '21' });
    expect(Object.keys(end.messages)).toEqual(['endMillimetres']);
  });

  test('hands the triage an upper bound that the triage reads the same way', () => {
    const rest = {
      base: 'acetate',
      gauge: '16mm',
      year: '1974',
      acidLevel: 'level-0',
      smell: 'none',
      deposit: 'none',
      mould: 'none',
      warp: 'flat',
      brittleness: 'supple',
      perforations: 'none',
      splices: 'sound',
      stripe: 'none',
    };
    let checked = 0;
    for (let length = 680; length <= 775; length += 0.5) {
      const places = String(length);
      const sheet = run(shrinkage, {
        ...sixteen,
        measuredMillimetres: places,
        middleMillimetres: places,
        endMillimetres: places,
      });
      const shrinkagePercent = String(value(sheet, 'mostPercent'));
      const { outcome } = run(triage, { ...rest, shrinkagePercent });
      // One sheet may not let through what the other one stops.
      expect(`${places}: ${outcome?.verdict.level}`).toBe(
        `${places}: ${sheet.outcome?.verdict.level}`,
      );
      checked += 1;
    }
    expect(checked).toBeGreaterThan(150);
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

  test('gives no class and nothing for the triage while one place of several is a misreading', () => {
    // 762 mm is new film; 783 mm is longer than any film, so a pitch too many was counted there.
    const { outcome } = run(shrinkage, {
      ...sixteen,
      measuredMillimetres: '759',
      middleMillimetres: '783',
      endMillimetres: '759',
    });
    expect(outcome?.verdict.level).toBe('stop');
    expect(outcome?.verdict.sentence).toContain('count again');
    expect(outcome?.answers['class']?.text).toBe('none: count again');
    expect(outcome?.answers['mostPercent']?.note).toContain('count again first');
    const sound = run(shrinkage, { ...sixteen, measuredMillimetres: '759' }).outcome?.answers;
    expect(sound?.['class']?.text).toContain('Slightly shrunk');
    expect(sound?.['mostPercent']?.note).toBe('Take this one to the triage of the reel.');
  });
});

describe('worksheet condition-triage', () => {
  const sound = {
    base: 'acetate',
    gauge: 'super-8',
    year: '1974',
    shrinkagePercent: '0.1',
    acidLevel: 'level-0',
    smell: 'none',
    deposit: 'none',
    mould: 'none',
    warp: 'flat',
    brittleness: 'supple',
    perforations: 'none',
    splices: 'sound',
    stripe: 'none',
  };
  const everything = 'everything was looked at';

  test('opens with nothing looked at, and every choice says so', () => {
    for (const [key, spec] of Object.entries(triage.inputs)) {
      if (spec.kind === 'choice') {
        expect(Object.values(spec.options)[0], key).toMatch(/^not /u);
        expect(Object.keys(spec.options)[0], key).toBe(spec.default);
      } else {
        expect(spec.default, key).toBe('');
      }
    }
    const { outcome } = run(triage);
    expect(outcome?.verdict.level).toBe('stop');
    expect(outcome?.answers['verdict']?.text).toBe('not yet: do this first');
    expect(outcome?.answers['nitrate']?.text).toContain('not ruled out');
    expect(outcome?.cautions?.join(' ')).toContain('treat the can as nitrate');
    const steps = outcome?.tables?.[0];
    expect(steps?.caption).toContain('in this order');
    expect(steps?.rows.map(({ cells }) => cells[0])).toEqual(
      Array.from({ length: 12 }, (_, index) => String(index + 1)),
    );
    expect(steps?.rows[0]?.cells[1]).toMatch(/^Name the gauge\. /u);
  });

  test('lists the acid levels in their order', () => {
    expect(Object.values(triage.inputs.acidLevel.options)).toEqual([
      'not tested',
      'level 0',
      'between 0 and 1',
      'level 1',
      'level 1.5',
      'level 2',
      'level 3',
    ]);
  });

  test('lets a sound reel run, and says that everything was looked at only when it was', () => {
    const { outcome } = run(triage, sound);
    expect(outcome?.verdict.level).toBe('good');
    expect(outcome?.verdict.sentence).toContain(everything);
    expect(outcome?.tables).toBeUndefined();
    const noStripe = run(triage, { ...sound, stripe: 'not-noted' }).outcome;
    expect(noStripe?.verdict.level).toBe('good');
    expect(noStripe?.verdict.sentence).not.toContain(everything);
    expect(noStripe?.verdict.sentence).toContain('look along both edges before you thread it');
    expect(noStripe?.verdict.sentence).toContain('clean it dry only');
    const polyester = {
      ...sound,
      base: 'polyester',
      acidLevel: 'not-tested',
      shrinkagePercent: '',
    };
    const { outcome: short } = run(triage, polyester);
    expect(short?.verdict.level).toBe('good');
    expect(short?.verdict.sentence).not.toContain(everything);
    expect(short?.verdict.sentence).toContain('which polyester does not need');
    for (const [key, spec] of Object.entries(triage.inputs)) {
      if (key === 'year') continue;
      const { outcome: less } = run(triage, { ...sound, [key]: spec.default });
      expect(less?.verdict.sentence, key).not.toContain(everything);
    }
  });

  test('gives every reason with its sources', () => {
    const { outcome } = run(triage, { ...sound, mould: 'active', perforations: 'few' });
    const rows = outcome?.tables?.find(({ caption }) => caption.startsWith('Reasons'))?.rows ?? [];
    expect(rows).toHaveLength(2);
    expect(rows[0]?.cells[2]).toBe('national-archives-mould');
    expect(outcome?.answers['verdict']?.text).toContain('refer to a specialist');
    expect(outcome?.cautions?.join(' ')).toContain('FFP2');
  });

  test('lets suspected nitrate win over everything, with no step that opens the can', () => {
    const { outcome } = run(triage, { ...sound, base: 'nitrate-suspected', mould: 'not-noted' });
    expect(outcome?.verdict.sentence).toContain('nitrate');
    expect(outcome?.cautions?.join(' ')).toContain('Never project');
    expect(outcome?.tables?.some(({ columns }) => columns[0] === 'Step')).toBe(false);
  });

  test('calls nitrate unlikely only when gauge, base, smell and powder were looked at', () => {
    const nitrate = (changes: Record<string, string>): string | undefined =>
      run(triage, { ...sound, ...changes }).outcome?.answers['nitrate']?.text;
    expect(nitrate({})).toBe('nothing speaks for it');
    for (const key of ['gauge', 'base', 'smell', 'deposit']) {
      expect(nitrate({ [key]: 'not-noted' }), key).toContain('not ruled out');
    }
  });

  test('says that slowly needs cool light, and that a stripe is cleaned dry', () => {
    const text = (changes: Record<string, string>): string =>
      run(triage, { ...sound, ...changes }).outcome?.cautions?.join(' ') ?? '';
    expect(text({ warp: 'slight' })).toContain('cool light');
    expect(text({ warp: 'slight' })).toContain('heat flap');
    expect(text({})).not.toContain('heat flap');
    expect(text({ stripe: 'striped' })).toContain('dry only');
    expect(text({ stripe: 'striped' })).toContain('sours sooner');
    expect(text({ stripe: 'striped', base: 'polyester' })).not.toContain('sours sooner');
    expect(text({})).not.toContain('dry only');
  });

  test('calls a shrinkage that cannot be a misreading and asks to measure again', () => {
    for (const shrinkagePercent of ['-1.2', '10', '40']) {
      const { outcome } = run(triage, { ...sound, shrinkagePercent });
      expect(outcome?.answers['verdict']?.text).toBe('not yet: do this first');
      expect(outcome?.answers['nextStep']?.text).toBe('Measure the shrinkage again');
      expect(outcome?.answers['firstReason']?.text).toContain('misreading');
    }
  });

  test('cites at its foot every source that a reason can name', () => {
    const cited = new Set<string>(triage.sources);
    for (const [key, spec] of Object.entries(triage.inputs)) {
      const options =
        spec.kind === 'choice' ? Object.keys(spec.options) : ['', '0.9', '-2', '1900'];
      for (const option of options) {
        for (const base of ['acetate', 'polyester']) {
          for (const gauge of ['35mm', 'super-8', '16mm']) {
            const given = { base, gauge, shrinkagePercent: '0.9', year: '1920', [key]: option };
            const { outcome } = run(triage, given);
            for (const { columns, rows } of outcome?.tables ?? []) {
              if (columns[2] !== 'Sources') continue;
              for (const { cells } of rows) {
                for (const id of (cells[2] ?? '').split(', ')) expect([...cited]).toContain(id);
              }
            }
          }
        }
      }
    }
  });
});

describe('worksheet acid-level', () => {
  test('lists its shades in the order of the chart, “not tested” first', () => {
    expect(Object.values(acidLevel.inputs.shade.options)).toEqual([
      'not tested',
      'level 0',
      'between 0 and 1',
      'level 1',
      'between 1 and 1.5',
      'level 1.5',
      'between 1.5 and 2',
      'level 2',
      'between 2 and 3',
      'level 3',
    ]);
  });

  test('opens as not tested, which is not good', () => {
    const { outcome } = run(acidLevel);
    expect(outcome?.verdict.level).toBe('stop');
    expect(outcome?.answers['mayRun']?.text).toBe('not before it is tested');
  });

  test('counts a shade in between as the higher level', () => {
    expect(value(run(acidLevel, { shade: 'between-1.5-and-2' }), 'acidLevel')).toBe(2);
    expect(value(run(acidLevel, { shade: 'between-0-and-1' }), 'acidLevel')).toBe(1);
    expect(run(acidLevel, { shade: 'between-1.5-and-2' }).outcome?.verdict.sentence).toMatch(
      /^Take it as/u,
    );
  });

  test.each([
    ['level-0', 'good'],
    ['between-0-and-1', 'care'],
    ['level-1', 'care'],
    ['level-1.5', 'care'],
    ['between-1.5-and-2', 'stop'],
    ['level-2', 'stop'],
    ['level-3', 'stop'],
  ])('calls %s %s', (shade, level) => {
    expect(run(acidLevel, { shade }).outcome?.verdict.level).toBe(level);
  });

  test('agrees with the triage about every level that both know', () => {
    const rest = { base: 'acetate', gauge: '16mm', shrinkagePercent: '0.1' };
    const looked = {
      smell: 'none',
      deposit: 'none',
      mould: 'none',
      warp: 'flat',
      brittleness: 'supple',
      perforations: 'none',
      splices: 'sound',
      stripe: 'none',
    };
    for (const level of Object.keys(triage.inputs.acidLevel.options)) {
      const judged = run(triage, { ...rest, ...looked, acidLevel: level }).outcome?.verdict.level;
      expect(`${level} ${run(acidLevel, { shade: level }).outcome?.verdict.level}`).toBe(
        `${level} ${judged}`,
      );
    }
  });

  test('says how to freeze wherever it says freeze, with sources and a specialist', () => {
    for (const shade of Object.keys(acidLevel.inputs.shade.options)) {
      const { outcome } = run(acidLevel, { shade });
      const action = outcome?.answers['action']?.text ?? '';
      const how = outcome?.tables?.find(({ caption }) => caption.startsWith('How to freeze'));
      expect(`${shade} ${how !== undefined}`).toBe(`${shade} ${/freeze/iu.test(action)}`);
      if (how === undefined) continue;
      expect(action).toContain('specialist');
      const text = how.rows.map(({ cells }) => cells.join(' ')).join(' ');
      for (const word of ['bag', 'humidity card', 'stages', 'Thaw it closed', 'specialist']) {
        expect(text).toContain(word);
      }
      const cited = new Set<string>(acidLevel.sources);
      for (const { cells } of how.rows) {
        for (const id of (cells[2] ?? '').split(', ')) expect([...cited]).toContain(id);
      }
    }
  });

  test('refuses a level that is not on the chart', () => {
    expect(Object.keys(run(acidLevel, { shade: '1.6' }).messages)).toEqual(['shade']);
  });

  test('says that level 3 is partly from memory', () => {
    const { outcome } = run(acidLevel, { shade: 'level-3' });
    expect(outcome?.answers['howKnown']?.text).toContain('memory');
    expect(outcome?.cautions?.join(' ')).toContain('gloves');
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
    const { outcome } = run(climate, {
      stripe: 'none',
      temperatureCelsius: '-5',
      relativeHumidityPercent: '30',
    });
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

  test('calls its answer for acetate the optimistic reading, more so with a stripe', () => {
    const cold = { temperatureCelsius: '-5', relativeHumidityPercent: '30' };
    const { outcome: plainFilm } = run(climate, { ...cold, stripe: 'none' });
    expect(plainFilm?.verdict.sentence).toContain('optimistic');
    expect(plainFilm?.answers['trust']?.text).toContain('optimistic');
    for (const stripe of ['striped', 'not-noted']) {
      const { outcome } = run(climate, { ...cold, stripe });
      expect(outcome?.verdict.level).toBe('care');
      expect(outcome?.answers['trust']?.text).toContain('sours sooner');
    }
    const { outcome: polyester } = run(climate, { ...cold, film: 'polyester-colour' });
    expect(polyester?.verdict.level).toBe('good');
    expect(JSON.stringify(polyester)).not.toContain('optimistic');
    expect([...climate.sources]).toEqual(expect.arrayContaining(['ahmad-2020', 'bigourdan-2006']));
  });
});
