import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test as base } from '@playwright/test';
import { writeOfflineCopy } from '../../src/build/offline-copy.mjs';
import { readPages, siteFolder, type BuiltPage } from '../site/built-site.ts';
import { Host, smallSite, visit, withoutGrace } from './editions.ts';
import { isAsked } from './short-run.ts';

const test = base.extend<{ book: Host; edition: Host }>({
  /** The whole book. */
  // eslint-disable-next-line no-empty-pattern -- as above
  book: async ({}, use) => {
    const host = await Host.open(siteFolder);
    await use(host);
    await host.close();
  },
  /** A few pages of it. */
  edition: async ({ context }, use) => {
    await withoutGrace(context);
    const host = await Host.open(await smallSite());
    await use(host);
    await host.close();
  },
});
test.use({ serviceWorkers: 'allow' });

test('after one visit every page, worksheets, links with numbers and search are there with the server gone', async ({
  page,
  book,
}) => {
  await visit(page, book.address);
  book.isDown = true;
  const pages = readPages().filter(({ address }) => address !== '/404.html');
  expect(pages.length).toBeGreaterThan(5);
  await test.step('every page is kept to the byte', async () => {
    const kept = await page.evaluate(async (addresses) => {
      const texts = addresses.map(async (address) => (await fetch(address)).text());
      return Promise.all(texts);
    }, addressesOf(pages));
    const others = pages.filter(({ html }, at) => kept[at] !== html);
    expect(addressesOf(others)).toEqual([]);
  });
  // In the test command some of them in turn are opened: what is asked is the same.
  const opened = pages.filter((_, at) => isAsked(at, 12));
  for (const { address, root } of opened) {
    await page.goto(`${book.address}${address}`);
    const title = root.querySelector('h1')?.textContent.trim() ?? 'none';
    await expect(page.locator('h1')).toHaveText(title);
  }
  const faces = await page.evaluate(async () => {
    const loaded = await document.fonts.load('600 16px Book');
    return loaded.length;
  });
  expect(faces).toBeGreaterThan(0);

  await page.goto(`${book.address}/gate/shutter-blades/?w=flash-rate&filmFps=24#flash-rate`);
  const sheet = page.locator('worksheet-form[data-instance="flash-rate"]');
  await expect(sheet).toHaveAttribute('data-ready', 'true');
  await expect(sheet.locator('#flash-rate-answer-flashRateHz')).toContainText('72');
  await sheet.getByLabel('Film rate', { exact: true }).fill('16 2/3');
  await expect(sheet.locator('#flash-rate-answer-flashRateHz')).toContainText('50');

  await page.goto(`${book.address}/search/?q=ghost`);
  await expect(page.locator('.hit-link').first()).toBeVisible();
  await page.getByRole('link', { name: 'blended frame', exact: true }).click();
  await expect(page).toHaveURL(/glossary\/#blended-frame$/u);
});

const addressesOf = (pages: readonly BuiltPage[]): string[] => pages.map(({ address }) => address);

/** Deploys a changed page as the build would: with its new revision and hash in the worker's list. */
async function deployPage(host: Host, address: string, from: string, to: string): Promise<void> {
  const path = join(host.folder, `${address}index.html`);
  const html = readFileSync(path, 'utf8').replace(from, to);
  expect(html).toContain(to);
  writeFileSync(path, html);
  await writeOfflineCopy(host.folder, '/');
}

test('a newer edition says so, waits for the reader, is there after Reload, and the one after it says how many points of safety it corrects', async ({
  page,
  edition,
}) => {
  await visit(page, edition.address);
  const line = page.locator('.edition');
  await expect(line).toHaveCount(0);
  await deployPage(edition, '/contents/', '<h1>Contents', '<h1>New contents');

  await page.goto(`${edition.address}/contents/`);
  await expect(page.locator('h1')).toHaveText('Contents');
  await expect(line).toContainText('A newer edition is ready', { timeout: 20_000 });
  await expect(line).toHaveRole('status');
  await line.getByRole('button', { name: 'Reload' }).click();
  await expect(page.locator('h1')).toHaveText('New contents');
  await expect(line).toHaveCount(0);

  const day = '2099-01-01';
  await deployPage(edition, '/editions/', '<h1>Editions', `<h1 id="edition-${day}">Newer editions`);
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

  await page.goto(`${edition.address}/your-film/`);
  const alert = page.getByRole('alert');
  await expect(alert).toContainText('This edition corrects 3 points of safety', {
    timeout: 20_000,
  });
  await alert.getByRole('link').click();
  await expect(page).toHaveURL(new RegExp(`/editions/#edition-${day}$`, 'u'));
  await expect(page.locator('h1')).toHaveText('Newer editions');
});

test('the book can be installed as an application, and answers an address that it does not have', async ({
  page,
  edition,
}) => {
  await visit(page, edition.address);
  const client = await page.context().newCDPSession(page);
  const { errors: manifestErrors } = await client.send('Page.getAppManifest');
  expect(manifestErrors).toEqual([]);
  const { installabilityErrors } = await client.send('Page.getInstallabilityErrors');
  // A test browser keeps nothing after it closes, which the browser lists as its only objection.
  const others = installabilityErrors.filter(({ errorId }) => errorId !== 'in-incognito');
  expect(others).toEqual([]);

  edition.isDown = true;
  await page.goto(`${edition.address}/no/such/page/`);
  await expect(page.locator('h1')).toHaveText('No such page');
});
