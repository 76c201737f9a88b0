import { expect, test } from '@playwright/test';
import { findChromium, launchArguments } from './chromium.ts';
import { wakeForms } from './live-forms.ts';
import { isAsked } from './short-run.ts';
import { coveredFields } from './sweep/covered.ts';
import { elementsTooWide } from './sweep/layout.ts';

// A phone whose reader has set letters of twice the size.

test.use({
  viewport: { width: 390, height: 900 },
  launchOptions: {
    executablePath: await findChromium(),
    args: [...launchArguments(), '--blink-settings=defaultFontSize=32'],
  },
});

const PAGES = [
  '/',
  '/gate/matching/',
  '/file/whole-frames/',
  '/reel/gauges/',
  '/bench/',
  '/job-sheet/',
  '/customer-sheet/',
  '/search/',
  '/cards/',
  '/data/',
  '/trainee/sources/',
  '/trainee/practice/',
];

test('no page scrolls sideways', async ({ page }) => {
  test.setTimeout(PAGES.length * 20_000);
  // A third of them in the test command, another third for another commit.
  for (const address of PAGES.filter((_, index) => isAsked(index, 3))) {
    await page.goto(address);
    await wakeForms(page);
    const size = await page.evaluate(() => getComputedStyle(document.documentElement).fontSize);
    expect.soft(Number.parseFloat(size), address).toBeGreaterThan(30);
    expect.soft(await elementsTooWide(page), address).toEqual([]);
  }
});

test('the verdict does not stay over the fields, and whose numbers it is for is not cut', async ({
  page,
}) => {
  await page.goto('/gate/matching/');
  await wakeForms(page);
  const form = page.locator('worksheet-form').first();
  await form.getByLabel('Camera rate', { exact: true }).focus();
  const { position, isCut } = await form.evaluate((sheet) => {
    const status = sheet.querySelector('.origin-status');
    return {
      position: getComputedStyle(sheet.querySelector('.verdict') ?? sheet).position,
      isCut: (status?.scrollWidth ?? 0) > (status?.clientWidth ?? 0),
    };
  });
  expect(position).toBe('static');
  expect(isCut).toBe(false);
  expect(await coveredFields(page)).toEqual([]);
});
