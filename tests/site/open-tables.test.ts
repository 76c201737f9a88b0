import { describe, expect, it } from 'vitest';
import { readPages, readSiteFile, readSiteFiles } from './built-site.ts';

interface Table {
  readonly version: number;
  readonly id: string;
  readonly columns: readonly { readonly key: string; readonly label: string }[];
  readonly rows: readonly Readonly<Record<string, string | number | null>>[];
}

const names = readSiteFiles()
  .filter((path) => /^data\/.*\.json$/u.test(path))
  .map((path) => path.replace(/^data\/|\.json$/gu, ''));

const readTable = (name: string): Table =>
  JSON.parse(readSiteFile(`data/${name}.json`).toString('utf8')) as Table;

/** Cells of comma-separated values, quotes taken off. */
function cellsOf(csv: string): readonly (readonly string[])[] {
  const rows: string[][] = [[]];
  for (const [, quoted, bare = '', end] of csv.matchAll(
    /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|$)/gu,
  )) {
    rows.at(-1)!.push(quoted?.replaceAll('""', '"') ?? bare);
    if (end === '\r\n') rows.push([]);
  }
  return rows.filter((cells) => cells.join('') !== '');
}

describe('the tables for machines', () => {
  it('are those that the page about them lists, and more than a handful', () => {
    const page = readPages().find(({ address }) => address === '/data/')!;
    const links = page.root
      .querySelectorAll('.data-table a')
      .map((link) => link.getAttribute('href')!);
    expect(names.length).toBeGreaterThan(6);
    expect(links.toSorted()).toEqual(
      names.flatMap((name) => [`/data/${name}.csv`, `/data/${name}.json`]).toSorted(),
    );
  });

  it.each(names)('hold in %s the same cells as JSON and as CSV', (name) => {
    const { version, id, columns, rows } = readTable(name);
    expect({ version, id }).toEqual({ version: 1, id: name });
    expect(rows.length).toBeGreaterThan(0);
    const keys = columns.map(({ key }) => key);
    const expected = rows.map((row) => keys.map((key) => String(row[key] ?? '')));
    const [head, ...found] = cellsOf(readSiteFile(`data/${name}.csv`).toString('utf8'));
    expect(head).toEqual(keys);
    // A leading sign is guarded against spreadsheets by an apostrophe.
    expect(found.map((cells) => cells.map((cell) => cell.replace(/^'(?=[=+\-@])/u, '')))).toEqual(
      expected,
    );
  });

  it.each(names)('explain each column of %s, and hold only words and finite numbers', (name) => {
    const { columns, rows } = readTable(name);
    expect(new Set(columns.map(({ key }) => key)).size).toBe(columns.length);
    for (const { key, label } of columns) expect(label, key).not.toBe('');
    const cells = rows.flatMap((row) => Object.values(row));
    const bad = cells.filter(
      (cell) =>
        (typeof cell === 'number' && !Number.isFinite(cell)) ||
        /\b(?:NaN|undefined|Infinity)\b/u.test(String(cell)),
    );
    expect(bad).toEqual([]);
  });

  it('say that 50 ft of Super 8 are 3600 frames and run 3 min 20 s at 18', () => {
    const row = readTable('running-times').rows.find(
      ({ gauge, lengthMetres, filmFps }) =>
        gauge === 'super-8' && lengthMetres === 15.24 && filmFps === 18,
    );
    expect(row).toMatchObject({ frames: 3600, lengthFeet: 50, runningSeconds: 200 });
  });

  it('say that 1/54 s matches 18 frames/s with three flashes, and that 1/50 s does not', () => {
    const at = (exposureSeconds: number): unknown =>
      readTable('matches').rows.find(
        (row) =>
          row['filmFps'] === 18 &&
          row['flashesPerFrame'] === 3 &&
          row['cameraFps'] === 25 &&
          Math.abs(Number(row['exposureSeconds']) - exposureSeconds) < 1e-9,
      );
    expect(at(1 / 54)).toMatchObject({ ripplePercent: 0 });
    // An exposure of 1.08 flashes: the odd 0.08 falls in light or in dark, and half a flash is light.
    expect(at(1 / 50)).toMatchObject({
      ripplePercent: expect.closeTo((0.08 / 0.5 / 1.08) * 100, 6),
    });
  });
});
