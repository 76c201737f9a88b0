import { describe, expect, it } from 'vitest';
import { sweep } from '../../src/book/sweep.ts';
import type { LookupTable } from '../../src/schemas/table.ts';
import { componentUses } from './mdx-blocks.ts';
import { readChapters, readTables } from './read-content.ts';

const tables = readTables();

describe('the look-up tables', () => {
  it('have ids and captions of their own', () => {
    expect(tables.length).toBeGreaterThan(0);
    const ids = tables.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const captions = tables.map(({ caption }) => caption);
    expect(new Set(captions).size).toBe(captions.length);
  });

  it.each(tables)('$id fills every cell from its worksheet', (table) => {
    const { columns, rows } = sweep(table);
    expect(rows.length).toBeGreaterThan(1);
    for (const cells of rows) {
      expect(cells).toHaveLength(columns.length);
      for (const cell of cells) expect(cell).toMatch(/^(?!.*(?:NaN|Infinity|undefined)).+$/u);
    }
  });

  it('shows one answer per cell where a second input runs across', () => {
    const across = tables.filter((table) => table.across !== undefined);
    expect(across.filter(({ answers }) => answers.length !== 1).map(({ id }) => id)).toEqual([]);
  });

  it('all stand once in the chapter of look-up tables', () => {
    const chapter = readChapters().find(({ id }) => id === 'trainee/tables');
    const shown = componentUses(chapter?.body ?? '')
      .filter(({ name }) => name === 'LookupTable')
      .map(({ attributes }) => attributes['id']);
    expect(shown.toSorted()).toEqual(tables.map(({ id }) => id).toSorted());
  });

  it('refuses an input, an answer or an entry that the worksheet does not have', () => {
    const table: LookupTable = {
      id: 'a',
      caption: 'A',
      worksheet: 'flash-rate',
      rows: { filmFps: ['18', '24'] },
      fixed: {},
      answers: ['flashRateHz'],
    };
    expect(sweep(table).rows.map((cells) => cells.at(-1)?.replace('\u00a0', ' '))).toEqual([
      '54 Hz',
      '72 Hz',
    ]);
    expect(() => sweep({ ...table, worksheet: 'no-such' })).toThrow(/No worksheet/u);
    expect(() => sweep({ ...table, rows: { speed: ['18'] } })).toThrow(/no input “speed”/u);
    expect(() => sweep({ ...table, answers: ['hertz'] })).toThrow(/no answer “hertz”/u);
    expect(() => sweep({ ...table, rows: { filmFps: ['0'] } })).toThrow(/outside the range/u);
  });
});
