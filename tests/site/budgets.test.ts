import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'astro/zod';
import { describe, expect, it } from 'vitest';
import { worksheets } from '../../src/worksheets/registry.ts';
import { projectFolder } from '../walls/source-files.ts';
import { readPages, readSiteFile, samplePage } from './built-site.ts';
import {
  chunkName,
  scriptClosure,
  sentBytes,
  stepsAfterTouch,
  weighPage,
  type PageWeight,
} from './page-weight.ts';
import {
  wantedByAllForms,
  wantedChunks,
  withKept,
  withScene,
  type Wanted,
} from './wanted-chunks.ts';

const { budgets } = z
  .object({
    budgets: z.strictObject({
      /** First load of a chapter, fonts included. */
      firstLoadBytes: z.number(),
      /** First load of a page that lists everything of one kind: the sources. */
      listPageFirstLoadBytes: z.number(),
      /** First load of a page that is a form by itself: bench, cards, sheets to fill in, search. */
      formPageFirstLoadBytes: z.number(),
      /** Scripts of a page that is read to its end without touching a form. */
      scriptBytes: z.number(),
      /** Scripts of a page with any one worksheet in use. */
      scriptBytesInUse: z.number(),
      /** Scripts of a page with every worksheet in use. */
      scriptBytesAllInUse: z.number(),
      /** The same for a reader who keeps a bench and has a reel of the box on the table. */
      scriptBytesWithBench: z.number(),
      /** Every worksheet of a page in use, and the scene that follows one of them. */
      scriptBytesWithScene: z.number(),
      /** Scripts of a page about a whole job, a gathered sheet or the box: all of them run at once. */
      scriptBytesGathered: z.number(),
    }),
  })
  .parse(JSON.parse(readFileSync(join(projectFolder, 'package.json'), 'utf8')));

/** Pages of work rather than reading: a form fills them, and its script is their first load. */
const FORM_PAGES = /^\/(?:bench|box|cards|job-sheet|customer-sheet|search)\//u;

/** Lists that are looked up rather than read, and grow with the book. */
const LIST_PAGES = /^\/trainee\/sources\//u;

interface Allowed {
  readonly firstLoad: number;
  readonly scripts: number;
}

function firstLoadAllowed(address: string): number {
  if (FORM_PAGES.test(address)) return budgets.formPageFirstLoadBytes;
  return LIST_PAGES.test(address) ? budgets.listPageFirstLoadBytes : budgets.firstLoadBytes;
}

function allowedOn(address: string): Allowed {
  return {
    firstLoad: firstLoadAllowed(address),
    scripts: budgets.scriptBytes,
  };
}

/** What is over budget, with the heaviest parts named. */
function excess({ firstLoad, scripts, parts }: PageWeight, allowed: Allowed): readonly string[] {
  const heaviest = parts.slice(0, 8).map(({ path, bytes }) => `${path} ${bytes}`);
  return [
    ...(firstLoad > allowed.firstLoad
      ? [`first load ${firstLoad} B, allowed ${allowed.firstLoad}: ${heaviest.join(', ')}`]
      : []),
    ...(scripts > allowed.scripts
      ? [`scripts ${scripts} B, allowed ${allowed.scripts}: ${heaviest.join(', ')}`]
      : []),
  ];
}

describe('the byte budgets', () => {
  it.each(readPages())('hold on $address', (page) => {
    const weights = wantedChunks(page, worksheets).map((wanted) =>
      weighPage(page, readSiteFile, wanted),
    );
    expect(weights[0]?.firstLoad).toBeGreaterThan(500);
    const read = weighPage(page, readSiteFile, () => false);
    expect(excess(read, allowedOn(page.address))).toEqual([]);
    // Of the worksheets that wake one by one, the heaviest counts.
    const [heaviest] = weights.toSorted((a, b) => b.scripts - a.scripts);
    const isGathered = page.root.querySelector('[data-plan], box-form') !== null;
    const inUse = {
      ...allowedOn(page.address),
      scripts: isGathered ? budgets.scriptBytesGathered : budgets.scriptBytesInUse,
    };
    expect(excess(heaviest!, inUse)).toEqual([]);
    const all = wantedByAllForms(page, worksheets);
    if (all === undefined) return;
    const drawing = withScene(page, all);
    if (drawing !== undefined) {
      const drawn = weighPage(page, readSiteFile, drawing);
      expect(drawn.scripts).toBeGreaterThan(heaviest!.scripts);
      expect(excess(drawn, { ...inUse, scripts: budgets.scriptBytesWithScene })).toEqual([]);
    }
    const kept = weighPage(page, readSiteFile, withKept(all));
    expect(kept.scripts).toBeGreaterThan(heaviest!.scripts);
    expect(excess(kept, { ...inUse, scripts: budgets.scriptBytesWithBench })).toEqual([]);
    const allInUse = { ...inUse, scripts: budgets.scriptBytesAllInUse };
    expect(excess(weighPage(page, readSiteFile, all), allInUse)).toEqual([]);
  });

  it('hold for round trips as well: a touched form has all its files after two', () => {
    let forms = 0;
    for (const page of readPages()) {
      if (page.root.querySelector('worksheet-form') === null) continue;
      for (const wanted of wantedChunks(page, worksheets)) {
        expect(stepsAfterTouch(page, readSiteFile, wanted), page.address).toBe(2);
        const keepsBench: Wanted = (name, importer) =>
          name === 'sheet-opening' || wanted(name, importer);
        expect(stepsAfterTouch(page, readSiteFile, keepsBench), page.address).toBe(2);
        forms += 1;
      }
    }
    expect(forms).toBeGreaterThan(40);
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

  it('count files that are named one after the other as one step each', () => {
    const chain: Readonly<Record<string, string>> = {
      'assets/page.AAAAAAAA.js': 'const a=()=>import("./sheet.BBBBBBBB.js");',
      'assets/sheet.BBBBBBBB.js': 'import"./room.CCCCCCCC.js";',
      'assets/room.CCCCCCCC.js': 'import"./form.DDDDDDDD.js";',
      'assets/form.DDDDDDDD.js': 'export const x=1;',
    };
    const script = '<script type="module" src="/assets/page.AAAAAAAA.js"></script>';
    const page = samplePage(script, 'sample/index.html', '');
    const steps = (texts: Readonly<Record<string, string>>): number =>
      stepsAfterTouch(
        page,
        (path) => Buffer.from(texts[path] ?? ''),
        () => true,
      );
    expect(steps(chain)).toBe(3);
    const named = `import"./form.DDDDDDDD.js";${chain['assets/sheet.BBBBBBBB.js']!}`;
    expect(steps({ ...chain, 'assets/sheet.BBBBBBBB.js': named })).toBe(2);
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
    const allowed = allowedOn('/gate/matching/');
    expect(allowed.firstLoad).toBeLessThan(allowedOn('/bench/').firstLoad);
    const first = { firstLoad: allowed.firstLoad + 1, scripts: 0, ...rest };
    expect(excess(first, allowed)).toHaveLength(1);
    const scripts = { firstLoad: 0, scripts: allowed.scripts + 1, ...rest };
    expect(excess(scripts, allowed)).toHaveLength(1);
    expect(excess({ ...first, firstLoad: allowed.firstLoad }, allowed)).toEqual([]);
  });
});
