// Time from a key press in the search field to the results on the page, in Chromium, with the index
// loaded. Needs a built site.
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { parse } from 'yaml';
import { findChromium, launchArguments } from '../browser/chromium.ts';
import { readNamedFile, siteFolder } from '../site/built-site.ts';
import { makeSearchIndex } from '../../src/ui/search/search-index.ts';
import type { StoredRecord } from '../../src/ui/search/search-record.ts';
import { isLong } from './parts/is-long.ts';
import { projectFolder } from '../walls/source-files.ts';

const QUERIES = [
  'film',
  'shutter',
  'ghost',
  'double image',
  'flicker',
  '1/54',
  '16 2/3',
  'shuttre',
  'how long does a reel run',
  'kaleidoscope',
];
const ROUNDS = isLong ? 5 : 3;

async function serve(port: number): Promise<ChildProcess> {
  const server = spawn(
    process.execPath,
    [
      '--experimental-strip-types',
      '--no-warnings',
      join(projectFolder, 'tests/tools/serve-dist.ts'),
      String(port),
      siteFolder,
    ],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  );
  await once(server.stdout!, 'data');
  return server;
}

/** Types a query at once and waits until the status line tells its result. */
function answerMilliseconds(page: Page, query: string): Promise<number> {
  return page.evaluate(async (text) => {
    const field = document.querySelector<HTMLInputElement>('#search-query')!;
    const status = document.querySelector('.search-status')!;
    const type = (typed: string): void => {
      field.value = typed;
      field.dispatchEvent(new Event('input', { bubbles: true }));
    };
    const changed = (): Promise<void> =>
      new Promise((resolve) => {
        const observer = new MutationObserver(() => {
          observer.disconnect();
          resolve();
        });
        observer.observe(status, { childList: true, characterData: true, subtree: true });
      });
    const cleared = status.textContent === '' ? Promise.resolve() : changed();
    type('');
    await cleared;
    const start = performance.now();
    type(text);
    do await changed();
    while (!/Found|Nothing/u.test(status.textContent));
    return performance.now() - start;
  }, query);
}

/** Time of the look-up alone, in Node: every query of the site's test, many times. */
function printLookUps(): void {
  const records = JSON.parse(
    readNamedFile('search-all', '.json').toString('utf8'),
  ) as readonly StoredRecord[];
  const begin = performance.now();
  const index = makeSearchIndex(records);
  const built = performance.now() - begin;
  const groups = parse(
    readFileSync(join(projectFolder, 'tests/site/search-queries.yaml'), 'utf8'),
  ) as Readonly<Record<string, object>>;
  const queries = Object.values(groups).flatMap((group) => Object.keys(group));
  const times = Array.from({ length: ROUNDS }, () => queries)
    .flat()
    .map((query) => {
      const start = performance.now();
      index.find(query, () => 4);
      return performance.now() - start;
    })
    .sort((a, b) => a - b);
  const at = (share: number): string => times[Math.floor(times.length * share)]!.toFixed(2);
  console.log(
    `look-up alone, ${queries.length} queries × ${ROUNDS}: median ${at(0.5)} ms, p95 ${at(0.95)} ms; index built in ${built.toFixed(0)} ms\n`,
  );
}

printLookUps();
const port = 20_000 + (process.pid % 20_000);
const server = await serve(port);
const browser = await chromium.launch({
  executablePath: await findChromium(),
  args: launchArguments(),
});
try {
  const page = await browser.newPage();
  await page.goto(`http://127.0.0.1:${port}/search/`);
  await page.locator('#search-query:enabled').waitFor();
  console.log(`${'query'.padEnd(28)}${'first ms'.padStart(10)}${'median ms'.padStart(11)}`);
  for (const query of QUERIES) {
    const first = await answerMilliseconds(page, query);
    const again: number[] = [];
    for (let round = 0; round < ROUNDS; round += 1)
      again.push(await answerMilliseconds(page, query));
    const median = again.sort((a, b) => a - b)[Math.floor(ROUNDS / 2)]!;
    console.log(
      `${query.padEnd(28)}${first.toFixed(1).padStart(10)}${median.toFixed(1).padStart(11)}`,
    );
  }
  console.log(
    'From the key press to the results on the page; the index is in memory after the first.',
  );
} finally {
  await browser.close();
  server.kill();
}
