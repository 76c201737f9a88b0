import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'astro/zod';
import { describe, expect, it } from 'vitest';
import { worksheets } from '../../src/worksheets/registry.ts';
import { projectFolder } from '../walls/source-files.ts';
import { readPages, readSiteFile, samplePage } from './built-site.ts';
import { chunkName, scriptClosure, sentBytes, weighPage, type PageWeight } from './page-weight.ts';
import { wantedChunks } from './wanted-chunks.ts';

const { budgets } = z
  .object({ budgets: z.strictObject({ firstLoadBytes: z.number(), scriptBytes: z.number() }) })
  .parse(JSON.parse(readFileSync(join(projectFolder, 'package.json'), 'utf8')));

/** What is over budget, with the heaviest parts named. */
function excess({ firstLoad, scripts, parts }: PageWeight): readonly string[] {
  const heaviest = parts.slice(0, 8).map(({ path, bytes }) => `${path} ${bytes}`);
  return [
    ...(firstLoad > budgets.firstLoadBytes
      ? [`first load ${firstLoad} B, allowed ${budgets.firstLoadBytes}: ${heaviest.join(', ')}`]
      : []),
    ...(scripts > budgets.scriptBytes
      ? [`scripts ${scripts} B, allowed ${budgets.scriptBytes}: ${heaviest.join(', ')}`]
      : []),
  ];
}

describe('the byte budgets', () => {
  it.each(readPages())('hold on $address', (page) => {
    const weights = wantedChunks(page, worksheets).map((wanted) =>
      weighPage(page, readSiteFile, wanted),
    );
    expect(weights[0]?.firstLoad).toBeGreaterThan(500);
    // Of the worksheets that a practice page may load one by one, the heaviest counts.
    const [heaviest] = weights.toSorted((a, b) => b.scripts - a.scripts);
    expect(excess(heaviest!)).toEqual([]);
  });

  const files: Readonly<Record<string, string>> = {
    'sample/index.html': 'x'.repeat(100),
    'a.css': '@font-face{src:url(/f.woff2)}p{background:url("./g.svg")}',
    'f.woff2': 'f'.repeat(3000),
    'assets/one.AAAAAAAA.js':
      'import"./two.BBBBBBBB.js";const a=()=>import("./three.CCCCCCCC.js"),b=()=>import(`./four.DDDDDDDD.js`);',
    'assets/two.BBBBBBBB.js': 'export const x=1;',
    'assets/three.CCCCCCCC.js': 'import"./two.BBBBBBBB.js";',
    'assets/four.DDDDDDDD.js': 'export const y=1;',
  };
  const read = (path: string): Buffer => {
    const text = files[path];
    if (text === undefined) throw new Error(`no file ${path}`);
    return Buffer.from(text);
  };

  it('count fonts that the style sheet names, and scripts with what they import', () => {
    const page = samplePage(
      '<script type="module" src="/assets/one.AAAAAAAA.js"></script>',
      'sample/index.html',
      '<link rel="stylesheet" href="/a.css">',
    );
    const weight = weighPage(page, read, (name) => name === 'three');
    const bytes = (path: string): number => sentBytes(path, read(path));
    const [one, two, three] = ['one.AAAAAAAA', 'two.BBBBBBBB', 'three.CCCCCCCC'].map((name) =>
      bytes(`assets/${name}.js`),
    );
    expect(weight.scripts).toBe(one! + two! + three!);
    expect(weight.firstLoad).toBe(bytes('sample/index.html') + bytes('a.css') + 3000 + one! + two!);
  });

  it('follow a dynamic import only where the page wants it', () => {
    const start = ['assets/one.AAAAAAAA.js'];
    expect(scriptClosure(start, read, () => false).size).toBe(2);
    expect(scriptClosure(start, read, (name) => name === 'four').size).toBe(3);
    expect(scriptClosure(start, read, () => true).size).toBe(4);
    expect(chunkName('assets/flash-match.-aqvnsRb.js')).toBe('flash-match');
  });

  it('would be caught exceeded', () => {
    const rest = { scriptPaths: ['a.js'], parts: [{ path: 'a.js', bytes: 1 }] };
    expect(excess({ firstLoad: budgets.firstLoadBytes + 1, scripts: 0, ...rest })).toHaveLength(1);
    expect(excess({ firstLoad: 0, scripts: budgets.scriptBytes + 1, ...rest })).toHaveLength(1);
    expect(excess({ firstLoad: budgets.firstLoadBytes, scripts: 0, ...rest })).toEqual([]);
  });
});
