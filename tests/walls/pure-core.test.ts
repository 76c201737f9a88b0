import { describe, expect, it } from 'vitest';
import { impureUses } from './pure-core.ts';
import { readFiles } from './source-files.ts';

describe('the arithmetic', () => {
  it.each(['src/quantity', 'src/core', 'src/worksheets'])(
    'in %s knows no clock, chance, page or network',
    (folder) => {
      const files = readFiles(folder, ['.ts', '.tsx']);
      expect(files.length).toBeGreaterThan(3);
      expect(impureUses(files)).toEqual([]);
    },
  );

  it.each([
    'const now = Date.now();',
    'const now = new Date();',
    'const x = Math.random();',
    'window.alert(1);',
    'export const width = document.body.clientWidth;',
    "void fetch('/x');",
    'const mode = process.env.MODE;',
    'const start = globalThis.performance.now();',
  ])('would be caught using “%s”', (text) => {
    expect(impureUses([{ path: 'src/core/a.ts', text }])).toHaveLength(1);
  });

  it.each([
    '// process the window of a document by Date',
    'const a = { window: 1, process: 2 };',
    'interface Row { readonly document: string }',
    'const b = row.date.process;',
    'const c = Math.max(1, 2);',
    'const window = openSeconds + closedSeconds; const half = window / 2;',
  ])('may use those words as names: “%s”', (text) => {
    expect(impureUses([{ path: 'src/core/a.ts', text }])).toEqual([]);
  });
});
