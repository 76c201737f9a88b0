import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { projectFolder } from '../walls/source-files.ts';
import { worksheet as customerOptions } from '../../src/worksheets/customer/customer-options/worksheet.ts';
import { evaluate, fillEntries, type Evaluation } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet as jobTime } from '../../src/worksheets/customer/job-time/worksheet.ts';
import { worksheet as quotation } from '../../src/worksheets/customer/quotation/worksheet.ts';
import type { Worksheet } from '../../src/worksheets/machine/types.ts';
import { writtenText } from './written-text.ts';

const run = (worksheet: Worksheet, entries: Record<string, string>): Evaluation =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries));
const value = (evaluation: Evaluation, key: string): number =>
  evaluation.outcome!.answers[key]!.value!;

describe('the worksheet on the time of a job', () => {
  test('is the same job when both machines are equally fast', () => {
    const evaluation = run(jobTime, { filmFps: '18', singleFps: '18' });
    expect(value(evaluation, 'ratio')).toBe(1);
    expect(value(evaluation, 'days')).toBe(value(evaluation, 'singleDays'));
  });

  test('counts hands-on time apart from the run', () => {
    const evaluation = run(jobTime, {
      reelCount: '1',
      handlingSeconds: '10',
      afterWorkSeconds: '5',
      repeatPercent: '100',
    });
    expect(value(evaluation, 'handsOnSeconds')).toBeCloseTo(2 * 600 + 300, 9);
  });

  test('draws lines that pass through the reader’s reel', () => {
    const evaluation = run(jobTime, { framesPerReel: '28800', singleFps: '3' });
    const [picture] = evaluation.outcome!.pictures!;
    if (picture?.name !== 'curve') throw new Error('no curve is drawn');
    const [own] = picture.marks;
    expect(own!.x).toBeCloseTo(value(evaluation, 'runSeconds') / 60, 9);
    const middleHours = picture.curves.map(({ points: [from, to] }) => {
      const share = (own!.x - from!.x) / (to!.x - from!.x);
      return from!.y + share * (to!.y - from!.y);
    });
    const handsSeconds = value(evaluation, 'reelSeconds') - value(evaluation, 'runSeconds');
    const singleSeconds = handsSeconds + value(evaluation, 'singleRunSeconds');
    expect(middleHours[0]! * 3600).toBeCloseTo(singleSeconds, 6);
    expect(middleHours[1]! * 3600).toBeCloseTo(value(evaluation, 'reelSeconds'), 6);
  });

  test('tells long times to the minute and keeps the exact value behind', () => {
    const evaluation = run(jobTime, { handlingSeconds: '1000 s', afterWorkSeconds: '0' });
    expect(evaluation.outcome!.answers['reelSeconds']!.text).toMatch(/20\u00a0min$/u);
    expect(value(evaluation, 'reelSeconds')).toBe(1200);
    expect(evaluation.outcome!.answers['totalSeconds']!.text).not.toMatch(/\ds$|\u00a0s$/u);
  });
});

describe('a file for an editing program', () => {
  test('is at the film’s own speed, in the sheet as in the chapter’s table', () => {
    const { tables, answers } = run(customerOptions, {}).outcome!;
    const [keep, , straightOn] = tables![0]!.rows.map(({ cells }) => cells);
    expect(keep!.at(-1)).toContain('one for an editing program too');
    expect(keep![1]).toBe(answers['ownSeconds']!.text);
    expect(straightOn![0]).toContain('played straight on');
    expect(straightOn!.at(-1)).toMatch(/^only an editing program that takes no other rate/u);
    const chapter = readFileSync(
      join(projectFolder, 'content/chapters/04-customer/01-options.mdx'),
      'utf8',
    );
    const row = chapter.split('\n').filter((line) => line.startsWith('| editing program |'));
    expect(row).toHaveLength(1);
    expect(row[0]).toContain("at the film's own speed");
  });
});

describe('the worksheet on quotations', () => {
  const amounts = (evaluation: Evaluation): readonly number[] =>
    evaluation.outcome!.tables![0]!.rows.map(({ cells }) =>
      Number(cells.at(-1)!.replaceAll('\u202f', '').replace('−', '-')),
    );

  test('prints lines that add up to what is to be paid', () => {
    for (const entries of [
      {},
      { discountPercent: '7.5', taxPercent: '19' },
      { reelCount: '1', carrierCount: '0', fixedPrice: '0', taxPercent: '21' },
      { pricePerMinute: '0.333', runningSeconds: '4:07', discountPercent: '3' },
    ]) {
      const rows = run(quotation, entries).outcome!.tables![0]!.rows;
      const labels = rows.map(({ cells }) => cells[0]!);
      const all = amounts(run(quotation, entries));
      const sumAt = labels.indexOf('Sum');
      const cents = (list: readonly number[]): number =>
        list.reduce((total, amount) => total + Math.round(amount * 100), 0);
      expect(cents(all.slice(0, sumAt))).toBe(cents([all[sumAt]!]));
      const closing = all.filter((_, index) => index >= sumAt && labels[index] !== 'Before tax');
      expect(cents(closing.slice(0, -1))).toBe(cents(closing.slice(-1)));
    }
  });

  test('leaves out lines of nothing', () => {
    const { rows } = run(quotation, {
      carrierCount: '0',
      fixedPrice: '0',
      minimumCharge: '0',
    }).outcome!.tables![0]!;
    const labels = rows.map(({ cells }) => cells[0]);
    expect(labels).toEqual(['Reels', 'Minutes of film', 'Sum', 'To pay']);
  });

  test('counts begun minutes reel by reel', () => {
    const exact = run(quotation, { reelCount: '3', runningSeconds: '2:30' });
    const begun = run(quotation, { reelCount: '3', runningSeconds: '2:30', minuteRule: 'begun' });
    expect(value(exact, 'minutes')).toBe(7.5);
    expect(value(begun, 'minutes')).toBe(9);
  });

  test('hands over a table that a spreadsheet reads', () => {
    const { files, tables } = run(quotation, {
      reelCount: '12',
      carrierCount: '2',
      discountPercent: '10',
    }).outcome!;
    const lines = writtenText(files![0]).split('\r\n');
    expect(lines).toHaveLength(tables![0]!.rows.length + 1);
    expect(writtenText(files![0])).toContain('"Discount 10 %","","","-12.40"');
    for (const line of lines) expect(line.match(/","/gu)).toHaveLength(3);
  });
});

describe('the reel behind time and price', () => {
  test('is its length by the foot, unless frames or minutes are typed', () => {
    const reel = { gauge: '16mm', lengthMetres: '400 ft' };
    expect(value(run(jobTime, reel), 'frames')).toBe(16_000);
    expect(value(run(jobTime, { ...reel, framesPerReel: '123' }), 'frames')).toBe(123);
    // A count is whole: a part of a frame is refused, not rounded in silence.
    for (const framesPerReel of ['1.19', '3600 1/2', '0.5e1/2']) {
      const { messages, outcome } = run(jobTime, { ...reel, framesPerReel });
      expect(outcome).toBeUndefined();
      expect(Object.keys(messages)).toEqual(['framesPerReel']);
    }
    expect(run(jobTime, { framesPerReel: '1.19' }).messages['framesPerReel']).toBe(
      'Expected whole film frames, because nobody counts a part of one. An entry looks like 3600 or 14 400.',
    );
    const price = run(quotation, { ...reel, nativeFps: '24' });
    expect(value(price, 'reelSeconds')).toBeCloseTo(16_000 / 24, 9);
    const typed = run(quotation, { ...reel, nativeFps: '24', runningSeconds: '5' });
    expect(value(typed, 'reelSeconds')).toBe(300);
  });

  test('multiplies the minutes that it prints, so that a pocket calculator agrees', () => {
    for (const lengthMetres of ['15 m', '14.9 m', '61 m', '7.3 m']) {
      const { rows } = run(quotation, { lengthMetres, reelCount: '7', pricePerMinute: '1.37' })
        .outcome!.tables![0]!;
      const [, quantity, price, amount] = rows.find(
        ({ cells }) => cells[0] === 'Minutes of film',
      )!.cells;
      expect(Number(amount)).toBeCloseTo(
        Math.round(Number(quantity) * Number(price) * 100) / 100,
        9,
      );
    }
  });

  test('counts a reel of whole minutes as whole, not one more', () => {
    // 75 ft of Super 8 at 18 run for exactly five minutes.
    const begun = run(quotation, { lengthMetres: '75 ft', minuteRule: 'begun' });
    expect(value(begun, 'minutes')).toBe(5);
  });
});

describe('the worksheet on the options of a customer', () => {
  test('never prices the file to keep as one to watch', () => {
    for (const entries of [{}, { keepWidth: '1440', keepHeight: '1080', keepSamples: '8' }]) {
      const options = run(customerOptions, entries);
      expect(value(options, 'keepMostBytes')).toBeGreaterThan(8 * value(options, 'watchBytes'));
      expect(value(options, 'bothMostBytes')).toBe(
        value(options, 'keepMostBytes') + value(options, 'watchBytes'),
      );
    }
  });

  const option = (evaluation: Evaluation, index: number): readonly string[] =>
    evaluation.outcome!.tables![0]!.rows[index]!.cells;

  test('offers four ways, each with all columns filled', () => {
    const { rows, columns } = run(customerOptions, {}).outcome!.tables![0]!;
    expect(rows).toHaveLength(4);
    for (const { cells } of rows) {
      expect(cells).toHaveLength(columns.length);
      for (const cell of cells) expect(cell).not.toBe('');
    }
  });

  test('finds no difference when film and screen have the same rate', () => {
    const evaluation = run(customerOptions, { nativeFps: '25', deliveryFps: '25' });
    expect(evaluation.outcome!.verdict.level).toBe('good');
    expect(option(evaluation, 1)[3]).toBe('every picture once: as it was');
    expect(option(evaluation, 2)[3]).toBe('as it was');
    expect(option(evaluation, 2)[1]).toBe(option(evaluation, 0)[1]);
  });

  test('speaks of pitch only where there is sound', () => {
    const silent = run(customerOptions, { nativeFps: '18', sound: 'silent' });
    expect(option(silent, 2)[4]).toBe('none');
    const loud = run(customerOptions, { nativeFps: '18', sound: 'sound' });
    expect(option(loud, 2)[4]).toContain('too high');
    // 200 s of two channels at 48 kHz: 24 bits in the file to keep, 16 in the one to watch.
    const more = (key: string): number => value(loud, key) - value(silent, key);
    expect(more('keepMostBytes')).toBeCloseTo(200 * 48_000 * 2 * 3, 3);
    expect(more('watchBytes')).toBeCloseTo(200 * 48_000 * 2 * 2, 3);
  });

  test('warns of a screen that is slower than the film', () => {
    const evaluation = run(customerOptions, { nativeFps: '30', deliveryFps: '25' });
    expect(option(evaluation, 1)[3]).toContain('left out');
    expect(option(evaluation, 2)[3]).toContain('too slow');
  });

  test('plays every picture once in the time that the pictures take', () => {
    const evaluation = run(customerOptions, { lengthMetres: '50 ft' });
    expect(value(evaluation, 'frames')).toBeCloseTo(3600, 6);
    expect(value(evaluation, 'ownSeconds') * 18).toBeCloseTo(3600, 6);
    expect(value(evaluation, 'fastSeconds') * 25).toBeCloseTo(3600, 6);
  });
});
