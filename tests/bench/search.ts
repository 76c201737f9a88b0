// Time from a key press in the search field to the results on the page, in Chromium, with the index
// loaded. Needs a built site.
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { findChromium, launchArguments } from '../browser/chromium.ts';
import { siteFolder } from '../site/built-site.ts';
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
const ROUNDS = 5;

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
    while (!/Found|Nothing/u.test(status.textContent ?? ''));
    return performance.now() - start;
  }, query);
}

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
  console.log('The first answer of a query may still fetch its part of the index.');
} finally {
  await browser.close();
  server.kill();
}
