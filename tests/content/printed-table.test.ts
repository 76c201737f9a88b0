import { describe, expect, it } from 'vitest';
import { bareCells, printedTable } from '../../src/book/printed-table.ts';
import { sweep } from '../../src/book/sweep.ts';
import { readTables } from './read-content.ts';

const GAP = '\u00a0';

describe('a unit that cells share', () => {
  it('is taken out once', () => {
    expect(bareCells([`21.6${GAP}frames/s`, `33.01${GAP}frames/s`])).toEqual({
      unit: 'frames/s',
      cells: ['21.6', '33.01'],
    });
    expect(bareCells([`±0.18${GAP}%`, `−2${GAP}%`, `10\u202f000${GAP}%`])?.cells).toEqual([
      '±0.18',
      '−2',
      '10\u202f000',
    ]);
    expect(bareCells([`1/54${GAP}s`, `1/48${GAP}s`])?.cells).toEqual(['1/54', '1/48']);
  });

  it('leaves words as they are', () => {
    expect(bareCells([`32${GAP}frames/s`, 'none', `40${GAP}frames/s`])?.cells).toEqual([
      '32',
      'none',
      '40',
    ]);
  });

  it('is one for singular and plural', () => {
    expect(bareCells([`1${GAP}stop`, `2.5${GAP}stops`])).toEqual({
      unit: 'stops',
      cells: ['1', '2.5'],
    });
  });

  it('is not there where units differ, numbers stand without one, or there is one cell only', () => {
    expect(bareCells([`900${GAP}GB`, `1.1${GAP}TB`])).toBeUndefined();
    expect(bareCells([`3${GAP}min${GAP}20${GAP}s`, `20${GAP}s`])).toBeUndefined();
    expect(bareCells(['1000 : 1', `2${GAP}stops`])).toBeUndefined();
    expect(bareCells(['3', '4'])).toBeUndefined();
    expect(bareCells([`3${GAP}s`, 'none'])).toBeUndefined();
  });
});

describe('a table on a page', () => {
  it('has all its cells, with the shared units over them', () => {
    let withUnit = 0;
    for (const table of readTables()) {
      const swept = sweep(table);
      const { caption, columns, bodies } = printedTable(table.caption, swept);
      const heads = `${caption} ${columns.join(' ')}`;
      expect(columns).toHaveLength(swept.columns.length);
      for (const [row, cells] of bodies.entries()) {
        const full = swept.rows[row]?.slice(swept.headCount) ?? [];
        expect(cells).toHaveLength(full.length);
        for (const [column, cell] of cells.entries()) {
          const before = (full[column] ?? '').replaceAll(GAP, ' ');
          const after = cell.replaceAll(GAP, ' ');
          expect(before.startsWith(after)).toBe(true);
          const unit = before.slice(after.length).trim();
          if (unit === '') continue;
          withUnit += 1;
          expect(heads).toContain(unit);
        }
      }
    }
    expect(withUnit).toBeGreaterThan(100);
  });

  it('names the unit once over all columns, or over each column its own', () => {
    const table = readTables().find(({ id }) => id === 'beats');
    if (table === undefined) throw new Error('no table of beats');
    expect(printedTable(table.caption, sweep(table)).caption).toBe(`${table.caption}, in${GAP}Hz`);
    const rates = readTables().find(({ id }) => id === 'flash-rates');
    if (rates === undefined) throw new Error('no table of flash rates');
    expect(printedTable(rates.caption, sweep(rates)).columns).toContain('Flash rate (Hz)');
  });
});
