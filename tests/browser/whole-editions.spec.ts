import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test as base } from '@playwright/test';
import { turnTag } from './short-run.ts';
import {
  expectWhole,
  Host,
  lookForNewer,
  twoEditions,
  visit,
  withoutGrace,
  type Editions,
  type Part,
} from './editions.ts';

// An edition is whole or not used: whatever a host has at the moment, and wherever the line breaks, a
// reader of the kept book has the old edition until the newer one is complete.

const test = base.extend<{ editions: Editions; host: Host }>({
  // eslint-disable-next-line no-empty-pattern -- the runner reads what a fixture needs from the pattern
  editions: async ({}, use) => {
    await use(await twoEditions());
  },
  host: async ({ editions }, use) => {
    const host = await Host.open(editions.first);
    await use(host);
    await host.close();
  },
  context: async ({ context }, use) => {
    await withoutGrace(context);
    await use(context);
  },
});
test.use({ serviceWorkers: 'allow' });

/** The mark under which an edition keeps its page of contents. */
function revisionOfContents(edition: string): string {
  const worker = readFileSync(join(edition, 'service-worker.js'), 'utf8');
  const revision = /\/contents\/[`"'],revision:[`"'](\w+)/u.exec(worker)?.[1] ?? '';
  expect(revision).toHaveLength(16);
  return revision;
}

/** The worst order first, which is always asked: the list of files is there before any of them. */
const ORDERS: readonly (readonly [Part, Part, Part])[] = [
  ['worker', 'pages', 'scripts'],
  ['worker', 'scripts', 'pages'],
  ['pages', 'worker', 'scripts'],
  ['scripts', 'worker', 'pages'],
];

for (const [index, order] of ORDERS.entries()) {
  const [first, second, third] = order;
  const tag = index === 0 ? '' : turnTag(index, 3);
  test(`uploaded as ${order.join(', ')}: the old edition until the last file is there${tag}`, async ({
    page,
    host,
    editions,
  }) => {
    await visit(page, host.address);
    for (const part of [first, second]) {
      host.deploy(editions.second, part);
      expect(await lookForNewer(page), `after the ${part}`).toBe(false);
      await expectWhole(page, host.address, 'edition1');
    }
    host.isDown = true;
    await expectWhole(page, host.address, 'edition1');

    host.mend();
    host.deploy(editions.second, third);
    expect(await lookForNewer(page)).toBe(true);
    await expectWhole(page, host.address, 'edition1');
    await page.locator('.edition').getByRole('button', { name: 'Reload' }).click();
    await expect(page.locator('html')).toHaveAttribute('data-page-of', 'edition2');
    host.isDown = true;
    await expectWhole(page, host.address, 'edition2');
  });
}

test('the line cut in the middle of a download leaves the old edition, and the next visit has the newer', async ({
  page,
  host,
  editions,
}) => {
  await visit(page, host.address);
  for (const part of ['scripts', 'pages', 'worker'] as const) host.deploy(editions.second, part);
  for (const files of [0, 2, 4]) {
    host.cutAfter(files);
    expect(await lookForNewer(page), `cut after ${files} files`).toBe(false);
    await expectWhole(page, host.address, 'edition1');
  }
  host.mend();
  expect(await lookForNewer(page)).toBe(true);
  await page.locator('.edition').getByRole('button', { name: 'Reload' }).click();
  await expect(page.locator('html')).toHaveAttribute('data-page-of', 'edition2');
  host.isDown = true;
  await expectWhole(page, host.address, 'edition2');
});

test('a first download that breaks off keeps nothing, and the next visit keeps all', async ({
  page,
  host,
}) => {
  // A page that does not fetch the book by itself.
  await page.goto(`${host.address}/editions.json`);
  host.cutAfter(20);
  const isKept = await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.register('/service-worker.js');
    const worker = registration.installing;
    await new Promise<void>((resolve) => {
      worker?.addEventListener('statechange', () => {
        resolve();
      });
    });
    return registration.waiting !== null || registration.active !== null;
  });
  expect(isKept).toBe(false);
  host.mend();
  await visit(page, host.address);
  host.isDown = true;
  await expectWhole(page, host.address, 'edition1');
});

test('a wrong file kept under the name of the newer edition is fetched anew, and a page still open while another tab takes that edition wakes its form with its own script', async ({
  page,
  context,
  host,
  editions,
}) => {
  await visit(page, host.address);
  const revision = revisionOfContents(editions.second);
  await page.evaluate(async (mark) => {
    const [name = ''] = await caches.keys();
    const cache = await caches.open(name);
    const old = await cache.match('/contents/', { ignoreSearch: true });
    if (old === undefined) throw new Error('the contents are not kept');
    const kept = (await cache.keys()).find(({ url }) => new URL(url).pathname === '/contents/');
    const url = new URL(kept?.url ?? '');
    for (const key of url.searchParams.keys()) url.searchParams.set(key, mark);
    await cache.put(url.href, old);
  }, revision);
  await page.goto(`${host.address}/gate/shutter-blades/`);
  await expect(page.locator('html')).toHaveAttribute('data-script-of', 'edition1');

  // The newer edition has the form's script under another name; the host has dropped the old one.
  for (const part of ['scripts', 'pages', 'worker'] as const) host.deploy(editions.second, part);
  const path = join(host.folder, 'service-worker.js');
  const listed = readFileSync(path, 'utf8');
  const without = listed.replace(/\{url:[`"']\/assets\/flash-rate\.[^}]*\},?/u, '');
  expect(without).not.toBe(listed);
  writeFileSync(path, without);
  const other = await context.newPage();
  await other.goto(host.address);
  expect(await lookForNewer(other)).toBe(true);
  await other.locator('.edition').getByRole('button', { name: 'Reload' }).click();
  await expect(other.locator('html')).toHaveAttribute('data-page-of', 'edition2');
  host.isDown = true;
  await test.step('the wrong file was fetched anew', async () => {
    await expectWhole(other, host.address, 'edition2');
  });

  await test.step('the page still open wakes its form with its own script', async () => {
    await expect(page.locator('.edition')).toBeVisible();
    const sheet = page.locator('worksheet-form[data-instance="flash-rate"]');
    await sheet.getByLabel('Film rate', { exact: true }).fill('24');
    await expect(sheet.locator('#flash-rate-answer-flashRateHz')).toContainText('72');
  });
});

test('an address without its last slash opens from the copy, and a page that the browser has lost comes from the host, whole and of one edition', async ({
  page,
  host,
  editions,
}) => {
  await visit(page, host.address);
  host.isDown = true;
  await page.goto(`${host.address}/gate/shutter-blades`);
  await expect(page.locator('html')).toHaveAttribute('data-page-of', 'edition1');
  await expect(page.locator('h1')).not.toHaveText('No such page');

  host.mend();
  host.deploy(editions.second, 'scripts');
  host.deploy(editions.second, 'pages');
  await page.evaluate(async () => {
    const [name = ''] = await caches.keys();
    const cache = await caches.open(name);
    if (!(await cache.delete('/contents/', { ignoreSearch: true }))) throw new Error('not kept');
  });
  await page.goto(`${host.address}/contents/`);
  await expect(page.locator('html')).toHaveAttribute('data-page-of', 'edition2');
  await expect(page.locator('html')).toHaveAttribute('data-script-of', 'edition2');
});
