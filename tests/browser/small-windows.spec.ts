import { expect, test } from '@playwright/test';
import { wakeForms, wakeSheet } from './live-forms.ts';
import { turnTag } from './short-run.ts';
import { coveredFields, smallTargets } from './sweep/covered.ts';
import { elementsTooWide } from './sweep/layout.ts';

// Small windows: a phone, and a page enlarged four times (320 × 256).

const LONG = ['/gate/matching/', '/file/whole-frames/', '/reel/gauges/'] as const;
const FORMS = ['/bench/', '/job-sheet/', '/customer-sheet/'] as const;

const SIZES = [
  { width: 320, height: 256 },
  { width: 390, height: 844 },
] as const;

test.describe('small windows', () => {
  test.use({ viewport: SIZES[0], hasTouch: true });
  // Of the chapters one is asked in the test command, and of the pages that are a form one.
  for (const [address, tag] of [LONG, FORMS].flatMap((pages) =>
    pages.map((each, index) => [each, turnTag(index, 3)] as const),
  )) {
    test(`${address}: no field is covered when it is focused, nothing is too small to hit${tag}`, async ({
      page,
    }) => {
      await page.goto(address);
      await wakeForms(page);
      if (address.endsWith('-sheet/')) await wakeSheet(page);
      for (const part of await page.locator('bench-form, [data-plan]').all()) {
        await expect(part).toHaveAttribute('data-ready', 'true');
      }
      for (const size of SIZES) {
        await page.setViewportSize(size);
        const at = `at ${size.width} × ${size.height}`;
        expect.soft(await coveredFields(page), at).toEqual([]);
        expect.soft(await smallTargets(page), at).toEqual([]);
        expect.soft(await elementsTooWide(page), at).toEqual([]);
      }
    });
  }
});

test('from deep in a chapter the outline is one press away, and opens', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('/gate/matching/#common-mistakes');
  const bar = page.getByRole('navigation', { name: 'From anywhere in this chapter' });
  await expect(bar).toBeInViewport();
  await expect(bar.getByRole('link', { name: 'Search' })).toBeVisible();
  await bar.getByRole('link', { name: 'In this chapter' }).click();
  const outline = page.getByRole('navigation', { name: 'In this chapter', exact: true });
  await expect(outline.getByRole('link').first()).toBeInViewport();
});

test('before a page is scrolled the bar at its foot lies over no other link', async ({ page }) => {
  await page.setViewportSize({ width: 412, height: 823 });
  await page.goto('/trainee/glossary/');
  const bar = page.getByRole('navigation', { name: 'From anywhere in this chapter' });
  await expect(bar).toBeHidden();
  await page.mouse.wheel(0, 300);
  await expect(bar.getByRole('link', { name: 'Contents' })).toBeInViewport();
});
