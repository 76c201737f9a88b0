import { expect, test, type Page } from '@playwright/test';
import { readPages } from '../site/built-site.ts';

const field = (page: Page) => page.getByRole('searchbox');
const status = (page: Page) => page.locator('.search-status');

/** Titles of the results of one kind. */
async function found(page: Page, heading: string): Promise<readonly string[]> {
  return page.locator('.hits', { hasText: heading }).locator('.hit-title a').allTextContents();
}

test('“/” leads from a chapter to its search field, and Enter to the results', async ({ page }) => {
  await page.goto('/contents/');
  await page.keyboard.press('/');
  await expect(page.getByRole('searchbox', { name: 'Search the book' })).toBeFocused();
  await page.keyboard.type('1/54');
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/\/search\/\?q=1%2F54$/u);
  await expect(status(page)).toContainText('Found');
  await expect(field(page)).toHaveValue('1/54');
});

test('“/” on a narrow page leads to the search page, but not while a number is typed', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('/contents/');
  await page.keyboard.press('/');
  await expect(page).toHaveURL(/\/search\/$/u);
  await expect(field(page)).toBeFocused();
  await page.keyboard.type('1/54');
  await expect(field(page)).toHaveValue('1/54');
  await expect(page).toHaveURL(/\?q=1%2F54$/u);
});

test('the front page asks without script too', async ({ browser, baseURL }) => {
  const context = await browser.newContext({
    javaScriptEnabled: false,
    ...(baseURL === undefined ? {} : { baseURL }),
  });
  const page = await context.newPage();
  await page.goto('/');
  await page.locator('#front-search').fill('vinegar');
  await page.locator('#front-search').press('Enter');
  await expect(page).toHaveURL(/\/search\/\?q=vinegar$/u);
  await context.close();
});

test('“ghost” and “double image” find the matter of whole and blended frames @phone-long', async ({
  page,
}) => {
  for (const words of ['ghost', 'double image']) {
    await page.goto(`/search/?q=${encodeURIComponent(words)}`);
    await expect(status(page)).toContainText('Found');
    expect(await found(page, 'Glossary'), words).toContain('blended frame');
    expect((await found(page, 'Chapters')).length, words).toBeGreaterThan(0);
  }
});

test('results are grouped by kind and each leads to its own place on a page', async ({ page }) => {
  await page.goto('/search/?q=flash');
  await expect(status(page)).toContainText('Found');
  const headings = await page.locator('.hits h2').allTextContents();
  const order = [
    'Best matches',
    'Chapters',
    'Sections of chapters',
    'Worksheets',
    'Faults in pictures',
    'Sheets and tools',
    'Worked examples',
    'Tables',
    'Glossary',
    'Sources',
  ];
  const shown = headings.map((heading) => heading.replace(/\s*\d+$/u, ''));
  expect(shown.length).toBeGreaterThan(3);
  expect(shown).toEqual(order.filter((kind) => shown.includes(kind)));

  const addresses = await page
    .locator('.hit-link')
    .evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''));
  expect(addresses.length).toBeGreaterThan(5);
  const pages = new Map(readPages().map(({ address, html }) => [address, html]));
  const leadsNowhere = addresses.filter((address) => {
    const [path = '', anchor = ''] = address.split('#');
    const html = pages.get(path.replace(/\?.*$/u, ''));
    return html === undefined || (anchor !== '' && !html.includes(`id="${anchor}"`));
  });
  expect(leadsNowhere).toEqual([]);
});

test('the arrow keys move through the results, Enter opens and Escape clears', async ({ page }) => {
  await page.goto('/search/');
  await page.keyboard.type('shutter blades');
  const links = page.locator('.hit-link');
  await expect(links.first()).toBeVisible();
  await page.keyboard.press('ArrowDown');
  await expect(links.first()).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await expect(links.nth(1)).toBeFocused();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  await expect(field(page)).toBeFocused();

  await page.keyboard.press('Escape');
  await expect(field(page)).toHaveValue('');
  await expect(links).toHaveCount(0);
  await expect(page).toHaveURL(/\/search\/$/u);

  await page.keyboard.type('shutter blades');
  await expect(links.first()).toBeVisible();
  const address = await links.first().getAttribute('href');
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(new RegExp(`${address ?? 'none'}$`, 'u'));
});

test('what is typed before the script has come is asked when it comes', async ({ page }) => {
  await page.route('**/*.js', async (route) => {
    await new Promise<void>((resolve) => {
      setTimeout(resolve, 300);
    });
    await route.continue();
  });
  await page.goto('/search/', { waitUntil: 'commit' });
  await expect(field(page)).toBeFocused();
  await page.keyboard.type('shutter');
  await expect(field(page)).toHaveValue('shutter');
  await expect(status(page)).toContainText('Found', { timeout: 20_000 });
  await page.keyboard.type(' blades');
  await expect(page).toHaveURL(/\?q=shutter\+blades$/u);
});

test('the way back leads to the same results', async ({ page }) => {
  await page.goto('/search/?q=ripple');
  await page.locator('.hit-link').first().click();
  await expect(page).not.toHaveURL(/search/u);
  await page.goBack();
  await expect(field(page)).toHaveValue('ripple');
  await expect(page.locator('.hit-link').first()).toBeVisible();
});

test('the page says what it made of a question', async ({ page }) => {
  const hits = page.locator('.hit-link');
  await test.step('a query that looks like markup stays text', async () => {
    await page.goto(`/search/?q=${encodeURIComponent('<img src=x onerror=alert(1)> shutter')}`);
    await expect(status(page)).not.toBeEmpty();
    await expect(page.locator('main img')).toHaveCount(0);
  });
  await test.step('a slip of the pen is mended', async () => {
    await field(page).fill('shuttre');
    await expect(status(page)).toContainText('Showing results for “shutter”');
    expect(await hits.count()).toBeGreaterThan(2);
  });
  await test.step('a word that the book does not know is left out', async () => {
    await field(page).fill('qqqzzz shutter');
    await expect(status(page)).toContainText('Nothing matches “qqqzzz shutter”');
    await expect(status(page)).toContainText('Showing results for “shutter”');
  });
  await test.step('a question that no page answers whole is answered in part', async () => {
    await field(page).fill('vinegar tachometer semitone quotation');
    await expect(status(page)).toContainText('Nothing holds all these words; these hold some.');
    expect(await hits.count()).toBeGreaterThan(0);
  });
  await test.step('nothing found is said plainly, with two ways on', async () => {
    await field(page).fill('qqqzzz');
    await expect(status(page)).toHaveText('Nothing in the book matches “qqqzzz”.');
    await expect(page.locator('main').getByRole('link', { name: 'Contents' })).toBeVisible();
    await expect(page.locator('main').getByRole('link', { name: 'Glossary' })).toBeVisible();
  });
  await test.step('the sheets to print are found too', async () => {
    await field(page).fill('job sheet');
    await expect(status(page)).toContainText('Found');
    expect(await found(page, 'Sheets and tools')).toContain('Job sheet');
  });
});

test('an index that cannot be loaded is owned up to, and the next try may succeed', async ({
  page,
}) => {
  await page.route('**/search-*.json', (route) => route.abort());
  await page.goto('/search/?q=shutter');
  await expect(status(page)).toContainText('could not be loaded');
  await page.unroute('**/search-*.json');
  await field(page).fill('shutters');
  await expect(page.locator('.hit-link').first()).toBeVisible();
});

test.describe('without scripts', () => {
  test.use({ javaScriptEnabled: false });

  test('the page says that search needs them and where else to look', async ({ page }) => {
    await page.goto('/search/');
    await expect(page.locator('main')).toContainText('Search needs scripts', {
      useInnerText: true,
    });
    await expect(page.locator('main').getByRole('link', { name: 'contents' })).toBeVisible();
    await expect(page.locator('main').getByRole('link', { name: 'glossary' })).toBeVisible();
  });
});
