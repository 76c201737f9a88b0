import { expect, test as base } from '@playwright/test';
import { FOLDER, folderSite } from '../site/folder-site.ts';
import { serveSite, type SiteServer } from '../tools/site-server.ts';
import { visit } from './editions.ts';
import { listenTo } from './sweep/listen.ts';

// The site in a folder of a host, used as a reader uses it. The root of the host has nothing of it.

const test = base.extend<{ host: SiteServer }>({
  // eslint-disable-next-line no-empty-pattern -- the runner reads what a fixture needs from the pattern
  host: async ({}, use) => {
    const host = await serveSite({ folder: folderSite, base: FOLDER });
    await use(host);
    await host.stop();
  },
});

const SHEET = 'worksheet-form[data-instance="flash-rate"]';

test('worksheets, their links, search and sheets to fill in stay in the folder', async ({
  page,
  host,
}) => {
  const site = `${host.origin}${FOLDER}`;
  // Everything that the pages ask for lies in the folder, and is there.
  const heard = listenTo(page, '/', site);
  await page.goto(`${site}gate/shutter-blades/`);
  await page.locator(SHEET).getByLabel('Film rate', { exact: true }).fill('24');
  await expect(page.locator(`${SHEET} #flash-rate-answer-flashRateHz`)).toContainText('72');
  await page
    .locator(SHEET)
    .getByRole('link', { name: /link to these numbers/iu })
    .click();
  await expect(page).toHaveURL(
    new RegExp(`^${site}gate/shutter-blades/\\?w=flash-rate&filmFps=24`, 'u'),
  );

  // The page of the link is there when its sheet shows the numbers of it.
  await expect(page.locator(SHEET).getByLabel('Film rate', { exact: true })).toHaveValue('24');
  await page.locator('#head-search').fill('blended frame');
  await page.locator('#head-search').press('Enter');
  await expect(page).toHaveURL(`${site}search/?q=blended+frame`);
  await page.locator('.hit-link').first().click();
  await expect(page).toHaveURL(new RegExp(`^${site}\\w+/`, 'u'));
  await expect(page.locator('h1')).not.toHaveText('No such page');

  await page.goto(`${site}job-sheet/`);
  const [blank] = await page.locator('main input[type="text"]').all();
  await blank?.fill('Reel 7');
  await expect(page).toHaveURL(new RegExp(`^${site}job-sheet/`, 'u'));
  await page.goto(`${site}cards/`);
  await expect(page.locator('.card-address').first()).toContainText(FOLDER);

  await page.goto(`${site}trainee/practice/`);
  await page.locator('main button').first().click();
  const links = await page
    .locator('main a[href^="/"]')
    .evaluateAll((all) => all.map((link) => link.getAttribute('href') ?? ''));
  expect(links.length).toBeGreaterThan(3);
  expect(links.filter((link) => !link.startsWith(FOLDER))).toEqual([]);
  // What a page was still asking for when the reader went on is no fault.
  expect(heard.faults.filter((fault) => !fault.startsWith('failed:'))).toEqual([]);
});

test('the page for missing addresses leads back into the folder', async ({ page, host }) => {
  await page.goto(`${host.origin}${FOLDER}no/such/page/`);
  await expect(page.locator('h1')).toHaveText('No such page');
  await page.locator('main').getByRole('link', { name: 'contents' }).click();
  await expect(page).toHaveURL(`${host.origin}${FOLDER}contents/`);
  await expect(page.locator('h1')).toHaveText('Contents');
});

test.describe('kept for use without network', () => {
  test.use({ serviceWorkers: 'allow' });
  test('the folder is kept, its missing addresses too, and nothing beside it', async ({
    page,
    host,
  }) => {
    await visit(page, `${host.origin}${FOLDER}`);
    const scope = await page.evaluate(async () => (await navigator.serviceWorker.ready).scope);
    expect(scope).toBe(`${host.origin}${FOLDER}`);
    await host.stop();
    await page.goto(
      `${host.origin}${FOLDER}gate/shutter-blades/?w=flash-rate&filmFps=24#flash-rate`,
    );
    await expect(page.locator(SHEET)).toHaveAttribute('data-ready', 'true');
    await expect(page.locator(`${SHEET} #flash-rate-answer-flashRateHz`)).toContainText('72');
    await page.goto(`${host.origin}${FOLDER}search/?q=ghost`);
    await expect(page.locator('.hit-link').first()).toBeVisible();
    await page.goto(`${host.origin}${FOLDER}no/such/page/`);
    await expect(page.locator('h1')).toHaveText('No such page');
  });
});
