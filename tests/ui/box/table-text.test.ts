import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ReelTexts } from '../../../src/worksheets/box/job.ts';
import { addListedReels, addReels, fillCells, nextNumber } from '../../../src/ui/box/box-edits.ts';
import { reelRows, reelsAsCsv, tableCells } from '../../../src/ui/box/table-text.ts';
import {
  COUNTER_FIELDS,
  readGauge,
  readSound,
  REEL_FIELDS,
} from '../../../src/worksheets/box/reel-fields.ts';
import { GAUGE_NAMES } from '../../../src/core/reel/gauges.ts';
import { anyBox, makeBox, makeJob, makeReel } from './some-box.ts';

describe('a list of reels as text', () => {
  it('is read as RFC 4180 writes it', () => {
    // Examples of RFC 4180, section 2, rules 2, 5, 6 and 7, with line ends of both kinds.
    expect(tableCells('aaa,bbb,ccc\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(tableCells('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx\r\n')).toEqual([
      ['aaa', 'b\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(tableCells('"aaa","b""bb","ccc"')).toEqual([['aaa', 'b"bb', 'ccc']]);
  });

  it('is read from a spreadsheet, tabs and empty cells and all', () => {
    expect(tableCells('r001\tRegatta, 1974\t\nr002\t\tSuper 8\n')).toEqual([
      ['r001', 'Regatta, 1974', ''],
      ['r002', '', 'Super 8'],
    ]);
    // Where the comma is the decimal sign, spreadsheets write semicolons.
    expect(tableCells('a;1,5;b\n')).toEqual([['a', '1,5', 'b']]);
  });

  it('comes back from its own CSV', () => {
    fc.assert(
      fc.property(anyBox, (box) => {
        const reels = box.jobs.flatMap((job) => job.reels);
        const kept = reels.map(({ texts }) =>
          Object.fromEntries(
            Object.entries(texts)
              .map(([key, text]) => [
                key,
                text.replace(/^'(?=[=+\-@])/u, '').replaceAll(/\r\n?/gu, '\n'),
              ])
              // Choices and gauges are read, numbers of the spreadsheet tidied: words alone stay as they are.
              .filter(([key, text]) => key === 'notes' && text!.trim() !== ''),
          ),
        );
        const back = reelRows(reelsAsCsv(reels));
        expect(back.unknown).toEqual([]);
        const notes = back.rows.map((row) => row.notes ?? '').filter((text) => text !== '');
        const expected = kept
          .map((row) => (row['notes'] ?? '').trim())
          .filter((text) => text !== '');
        expect(notes).toEqual(expected);
      }),
      { numRuns: 200 },
    );
  });

  it('comes back whole for what a workshop types', () => {
    const texts = {
      number: 'r007',
      boxWords: '=SUM "Regatta" 1974, sound?',
      gauge: 'Super 8',
      size: '200 ft',
      nativeFps: '16 2/3',
      sound: 'magnetic stripe',
      'finding.smell': 'vinegar',
      'consent.run': 'yes',
      takes: 'take 1, lost loop\ntake 2, good',
    } as const;
    expect(reelRows(reelsAsCsv([makeReel(7, texts)])).rows).toEqual([texts]);
  });

  it('reads headings of other people’s lists, and names those it does not know', () => {
    const { rows, unknown } = reelRows('Reel;Title;Format;Length (m);Colour\n1;Oars;N8;15;yes\n');
    expect(rows).toEqual([
      { number: '1', boxWords: 'Oars', gauge: GAUGE_NAMES['8mm-type-r'], lengthMetres: '15' },
    ]);
    expect(unknown).toEqual(['Colour']);
  });

  it('takes a list without headings in the order of the table', () => {
    const { rows } = reelRows('r001\tRegatta\tS8\t50 ft\n');
    expect(rows).toEqual([
      { number: 'r001', boxWords: 'Regatta', gauge: 'Super 8', size: '50 ft' },
    ]);
    expect(COUNTER_FIELDS.slice(0, 4)).toEqual(['number', 'boxWords', 'gauge', 'size']);
  });

  it('has one heading for each field', () => {
    const labels = Object.values(REEL_FIELDS).map(({ label }) => label.toLowerCase());
    expect(new Set(labels).size).toBe(labels.length);
  });
});

describe('a pasted block', () => {
  it('fills the cells from one reel down and adds the reels that are missing', () => {
    const box = makeBox([makeJob([makeReel(1), makeReel(2)])]);
    const cells = tableCells('Regatta\tSuper 8\nOars\tStandard 8\nBoathouse\t16 mm');
    const next = fillCells(box, { job: 'j1', reel: 'r2' }, ['boxWords', 'gauge'], cells);
    expect(next.jobs[0]?.reels.map(({ texts }) => texts)).toEqual([
      { number: 'r001' },
      { number: 'r002', boxWords: 'Regatta', gauge: 'Super 8' },
      { number: 'r003', boxWords: 'Oars', gauge: 'Standard 8' },
      { number: 'r004', boxWords: 'Boathouse', gauge: '16 mm' },
    ]);
  });

  it('takes a list into the empty row of a new job, and behind whatever was typed', () => {
    const rows = [{ boxWords: 'Regatta' }, { boxWords: 'Boathouse' }];
    const words = (texts: ReelTexts): readonly string[] => {
      const [job] = addListedReels(makeBox([makeJob([makeReel(1, texts)])]), 'j1', rows).jobs;
      return job!.reels.map((reel) => `${reel.texts.number} ${reel.texts.boxWords}`);
    };
    expect(words({})).toEqual(['r001 Regatta', 'r002 Boathouse']);
    expect(words({ boxWords: 'Typed' })).toEqual(['r001 Typed', 'r002 Regatta', 'r003 Boathouse']);
  });

  it('numbers reels on, with the zeros of the last one', () => {
    expect(nextNumber([])).toBe('r001');
    expect(nextNumber([makeReel(9, { number: 'box-099' })])).toBe('box-100');
    const box = addReels(makeBox([makeJob([makeReel(12)])]), 'j1', [{}, {}]);
    expect(box.jobs[0]?.reels.map(({ texts }) => texts.number)).toEqual(['r012', 'r013', 'r014']);
  });
});

describe('gauges as people write them', () => {
  it.each([
    ['Super 8', 'super-8'],
    ['S8', 'super-8'],
    ['super-8 mm', 'super-8'],
    ['std 8', '8mm-type-r'],
    ['Regular 8', '8mm-type-r'],
    ['N8', '8mm-type-r'],
    ['9,5', '9.5mm'],
    ['9.5mm', '9.5mm'],
    ['16', '16mm'],
    ['35 mm', '35mm'],
  ])('%s', (text, gauge) => {
    expect(readGauge(text)).toBe(gauge);
  });

  it('never guess which of the two 8 mm gauges is meant', () => {
    for (const text of ['8', '8 mm', '8mm', '8 mm film', '', 'film']) {
      expect(readGauge(text), text).toBeUndefined();
    }
    expect(readSound('stripe')).toBe('magnetic');
    expect(readSound('?')).toBeUndefined();
  });
});
