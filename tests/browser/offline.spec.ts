import { type ChildProcess, spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test as base, type Page } from '@playwright/test';
import { projectFolder } from '../walls/source-files.ts';
import { readPages, siteFolder } from '../site/built-site.ts';

/** A copy of the built site that a test may change, on a server that a test may stop. */
interface Edition {
  readonly address: string;
  readonly folder: string;
  stop(): Promise<void>;
}

async function serveCopy(port: number): Promise<Edition> {
  const folder = mkdtempSync(join(tmpdir(), 'handbook-edition-'));
  cpSync(siteFolder, folder, { recursive: true });
  const server: ChildProcess = spawn(
    process.execPath,
    [
      '--experimental-strip-types',
      '--no-warnings',
      join(projectFolder, 'tests/tools/serve-dist.ts'),
      String(port),
      folder,
    ],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  );
  await new Promise((resolve, reject) => {
    server.stdout?.once('data', resolve);
    server.once('exit', () => {
      reject(new Error('the server did not start'));
    });
  });
  const stopped = new Promise<void>((resolve) => {
    server.once('exit', () => {
      resolve();
    });
  });
  return {
    // The name localhost makes the page a secure context, as https does for readers.
    address: `http://127.0.0.1:${port}`,
    folder,
    async stop() {
      server.kill();
      await stopped;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

const test = base.extend<{ edition: Edition }>({
  edition: async ({ baseURL }, use, { parallelIndex }) => {
    const sitePort = Number(new URL(baseURL ?? '').port);
    const edition = await serveCopy(sitePort + 20_000 + parallelIndex);
    await use(edition);
    await edition.stop();
  },
});
test.use({ serviceWorkers: 'allow' });

/** Waits until the book is kept and in charge of the page: the end of a first visit. */
async function visit(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
}

test('after one visit every page opens with the server gone', async ({ page, edition }) => {
  await visit(page, edition.address);
  await edition.stop();
  const pages = readPages().filter(({ address }) => address !== '/404.html');
  expect(pages.length).toBeGreaterThan(5);
  for (const { address, root } of pages) {
    await page.goto(`${edition.address}${address}`);
    const title = root.querySelector('h1')?.textContent.trim() ?? 'none';
    await expect(page.locator('h1')).toHaveText(title);
  }
  const faces = await page.evaluate(async () => {
    const loaded = await document.fonts.load('600 16px Book');
    return loaded.length;
  });
  expect(faces).toBeGreaterThan(0);
});

test('after one visit worksheets, links with numbers and search work with the server gone', async ({
  page,
  edition,
}) => {
  await visit(page, edition.address);
  await edition.stop();

  await page.goto(`${edition.address}/gate/shutter-blades/?w=flash-rate&filmFps=24#flash-rate`);
  const sheet = page.locator('worksheet-form[data-instance="flash-rate"]');
  await expect(sheet).toHaveAttribute('data-ready', 'true');
  await expect(sheet.locator('#flash-rate-answer-flashRateHz')).toContainText('72');
  await sheet.getByLabel('Film rate').fill('16 2/3');
  await expect(sheet.locator('#flash-rate-answer-flashRateHz')).toContainText('50');

  await page.goto(`${edition.address}/search/?q=ghost`);
  await expect(page.locator('.hit-link').first()).toBeVisible();
  await page.getByRole('link', { name: 'blended frame', exact: true }).click();
  await expect(page).toHaveURL(/glossary\/#blended-frame$/u);
});

test('an address that the book does not have is answered from the copy too', async ({
  page,
  edition,
}) => {
  await visit(page, edition.address);
  await edition.stop();
  await page.goto(`${edition.address}/no/such/page/`);
  await expect(page.locator('h1')).toHaveText('No such page');
});

/** Writes a changed page into the served copy. */
function changePage(edition: Edition, address: string, from: string, to: string): string {
  const path = join(edition.folder, `${address}index.html`);
  const html = readFileSync(path, 'utf8').replace(from, to);
  expect(html).toContain(to);
  writeFileSync(path, html);
  return html;
}

/** Deploys a changed page as the build would: with its new revision and hash in the worker's list. */
function deployPage(edition: Edition, address: string, from: string, to: string): void {
  const html = changePage(edition, address, from, to);
  const hash = createHash('sha256').update(html).digest('base64');
  const worker = join(edition.folder, 'service-worker.js');
  const listed = readFileSync(worker, 'utf8');
  const entry = new RegExp(
    `(${address}[\`"'],revision:[\`"'])\\w+([\`"'],integrity:[\`"'])sha256-[^\`"']+`,
    'u',
  );
  const renewed = listed.replace(entry, (_, before: string, between: string) =>
    [before, 'newer', between, 'sha256-', hash].join(''),
  );
  expect(renewed).not.toBe(listed);
  writeFileSync(worker, renewed);
}

test('a newer edition says so, waits for the reader, and is there after Reload', async ({
  page,
  edition,
}) => {
  await visit(page, edition.address);
  const line = page.locator('.edition');
  await expect(line).toHaveCount(0);
  deployPage(edition, '/contents/', '<h1>Contents', '<h1>New contents');

  await page.goto(`${edition.address}/contents/`);
  await expect(page.locator('h1')).toHaveText('Contents');
  await expect(line).toContainText('A newer edition is ready', { timeout: 20_000 });
  await expect(line).toHaveRole('status');
  await line.getByRole('button', { name: 'Reload' }).click();
  await expect(page.locator('h1')).toHaveText('New contents');
  await expect(line).toHaveCount(0);
});

test('a newer edition that corrects points of safety says how many, and leads to them', async ({
  page,
  edition,
}) => {
  await visit(page, edition.address);
  const day = '2099-01-01';
  deployPage(edition, '/editions/', '<h1>Editions', `<h1 id="edition-${day}">Newer editions`);
  const worker = join(edition.folder, 'service-worker.js');
  const listed = readFileSync(worker, 'utf8');
  const renewed = listed.replace(
    /\{id:([`"'])\d{4}-\d\d-\d\d[`"'],safetyPoints:/u,
    (entry, quote) => {
      return `{id:${String(quote)}${day}${String(quote)},safetyPoints:3},${entry}`;
    },
  );
  expect(renewed).toContain(day);
  writeFileSync(worker, renewed);

  await page.goto(`${edition.address}/reel/condition/`);
  const line = page.getByRole('alert');
  await expect(line).toContainText('This edition corrects 3 points of safety', { timeout: 20_000 });
  await line.getByRole('link').click();
  await expect(page).toHaveURL(new RegExp(`/editions/#edition-${day}$`, 'u'));
  await expect(page.locator('h1')).toHaveText('Newer editions');
});

test('the book can be installed as an application', async ({ page, edition }) => {
  await visit(page, edition.address);
  const client = await page.context().newCDPSession(page);
  const { errors: manifestErrors } = await client.send('Page.getAppManifest');
  expect(manifestErrors).toEqual([]);
  const { installabilityErrors } = await client.send('Page.getInstallabilityErrors');
  // A test browser keeps nothing after it closes, which the browser lists as its only objection.
  const others = installabilityErrors.filter(({ errorId }) => errorId !== 'in-incognito');
  expect(others).toEqual([]);
});
