import { describe, expect, it } from 'vitest';
import { makePaper } from '../../../src/ui/box/papers/papers.ts';
import {
  countWords,
  PAPER_NAMES,
  type Paper,
  type PaperId,
} from '../../../src/ui/box/papers/paper.ts';
import type { Job } from '../../../src/worksheets/box/job.ts';
import { makeJob, makeReel } from './some-box.ts';

const job: Job = {
  ...makeJob([
    makeReel(1, {
      boxWords: 'Regatta 1974',
      gauge: 'Super 8',
      size: '50 ft',
      nativeFps: '18',
      'consent.run': 'no',
      'finding.smell': 'vinegar',
      spentSeconds: '47',
      notes: 'Cousin of the mayor',
      done: 'Two splices remade',
    }),
    { ...makeReel(2, { boxWords: 'Old tin', refusal: 'May be nitrate' }), state: 'quarantine' },
  ]),
  texts: { number: '2026-014', customer: 'Rowing Club', 'consent.run': 'yes', elsewhereCount: '1' },
};
const bench = {
  'prices.perReel': '4.37',
  'times.handlingSeconds': '53',
  'projector.gauge': 'super-8',
} as const;
const ids = Object.keys(PAPER_NAMES) as PaperId[];
const paper = (id: PaperId, of: Job = job): Paper => makePaper(id, of, of.reels, bench);
const text = (id: PaperId, of: Job = job): string => JSON.stringify(paper(id, of));

describe('the papers of a job', () => {
  it('keep the workshop’s prices, times and notes off whatever the customer gets', () => {
    for (const id of ids) {
      const said = text(id);
      expect(said, id).not.toMatch(/Cousin of the mayor|47|53/u);
      if (id !== 'quotation') expect(said, id).not.toContain('4.37');
    }
    expect(text('quotation')).toContain('4.37');
  });

  it('list every reel by number and words on the receipt, and its count in words', () => {
    const said = text('receipt');
    for (const words of ['r001', 'Regatta 1974', 'r002', 'Old tin', 'in words two']) {
      expect(said).toContain(words);
    }
  });

  it('print what was said, and leave open what was not: no consent is made up', () => {
    const ticks = paper('consent').sheets[0]!.blocks.flatMap((block) =>
      block.kind === 'ticks' ? block.rows : [],
    );
    expect(ticks.find((row) => row.text.includes('run it through'))?.ticked).toBe('yes');
    expect(ticks.filter((row) => row.ticked !== '')).toHaveLength(1);
    const table = paper('consent').sheets[0]!.blocks.find((block) => block.kind === 'table');
    expect(table?.kind === 'table' && table.rows[0]).toEqual([
      'r001',
      'Regatta 1974',
      'run it through the projector',
      'no',
    ]);
  });

  it('tick “not looked at” beside every finding that nobody made', () => {
    const [first, second] = paper('condition').sheets.map((sheet) =>
      sheet.blocks.flatMap((block) => (block.kind === 'table' ? block.rows : [])),
    );
    const smell = first?.find(([label]) => label === 'Smell');
    expect(smell).toEqual(['Smell', 'vinegar', '', '']);
    expect(second?.filter(([, , tick]) => tick === '☒').length).toBeGreaterThan(12);
    expect(text('jobSheets')).toContain('NOT LOOKED AT');
  });

  it('balance what came in against what goes back', () => {
    expect(text('returnNote')).toContain('DOES NOT BALANCE');
    const back = {
      ...job,
      reels: job.reels.map((reel, index) =>
        index === 0 ? { ...reel, state: 'returned' as const } : reel,
      ),
    };
    expect(text('returnNote', back)).toContain('in = back + elsewhere');
    expect(text('returnNote', back)).toContain('Two splices remade');
    expect(text('returnNote', back)).toContain('May be nitrate');
  });

  it('say on the return note how long each film lasts, by the frames that were found', () => {
    const run = makeReel(3, { nativeFps: '24', framesFound: '14321' });
    // 14321 ÷ 24 = 596.7 s.
    expect(text('returnNote', { ...job, reels: [run] })).toMatch(
      /j2026-014-r003a_undated_untitled_t01_view; lasts 9\smin\s57\ss/u,
    );
  });

  it('give each reel a sheet or a label, and each drive', () => {
    expect(paper('condition').sheets).toHaveLength(2);
    expect(paper('jobSheets').sheets).toHaveLength(2);
    const labels = paper('labels').sheets.map((sheet) =>
      sheet.blocks.flatMap((block) => (block.kind === 'labels' ? block.labels : [])),
    );
    expect(labels.map((each) => each.length)).toEqual([2, 2, 3]);
  });

  it('say where the prices come from when there are none', () => {
    const said = JSON.stringify(makePaper('quotation', job, [], {}));
    expect(said).toContain('no price on the bench');
    expect(text('quotation')).toContain('May be nitrate');
  });

  it('print prices as money, in the currency of the workshop', () => {
    const priced = { 'prices.perReel': '4', 'prices.perMinute': '1.0625', 'prices.fixed': '10' };
    const inPounds = { ...job, texts: { ...job.texts, currency: 'pounds' } };
    const said = JSON.stringify(makePaper('quotation', inPounds, [], priced));
    expect(said).toContain('Prices in pounds');
    for (const price of ['"4.00"', '"1.0625"', '"10.00"']) expect(said).toContain(price);
    expect(text('quotation')).toContain('"Prices"');
  });

  it('write counts in words', () => {
    const counts = [0, 1, 12, 20, 21, 100, 112, 500, 999, 1000, 1042, 2000];
    expect(counts.map(countWords)).toEqual([
      'no',
      'one',
      'twelve',
      'twenty',
      'twenty-one',
      'one hundred',
      'one hundred and twelve',
      'five hundred',
      'nine hundred and ninety-nine',
      'one thousand',
      'one thousand and forty-two',
      'two thousand',
    ]);
  });
});
