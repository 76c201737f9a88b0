import { expect, test, type Page } from '@playwright/test';
import { wakeForm } from './live-forms.ts';
import { axeViolations } from './sweep/axe.ts';

// Readers whose browser keeps the clipboard shut, asks for more contrast, or sets the colours itself.

const SHEET = '/gate/matching/';

test('where copying is blocked, the text stands selected', async ({ page }) => {
  await page.addInitScript(() => {
    // As on a page without https.
    Object.defineProperty(navigator, 'clipboard', { value: undefined });
  });
  await page.goto(SHEET);
  const form = page.locator('worksheet-form').first();
  await wakeForm(form);
  await form.getByRole('button', { name: 'Copy as text' }).click();
  const field = form.getByLabel('The browser does not let this page copy');
  await expect(field).toBeFocused();
  const { whole, chosen } = await field.evaluate((area: HTMLTextAreaElement) => ({
    whole: area.value,
    chosen: area.value.slice(area.selectionStart, area.selectionEnd),
  }));
  expect(chosen).toBe(whole);
  expect(whole).toContain('Ripple');
});

/** Contrast of two colours, WCAG 2.2, from sRGB as the browser computes it. */
async function contrastOf(page: Page, selector: string): Promise<number> {
  return page.evaluate((of) => {
    const luminance = (color: string): number => {
      const parts = (color.match(/[\d.]+/gu) ?? []).slice(0, 3).map(Number);
      const [red = 0, green = 0, blue = 0] = parts.map((part) => {
        const share = part / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    };
    const element = document.querySelector(of);
    const sheet = element?.closest('.sheet');
    if (element === null || sheet === null || sheet === undefined) return 0;
    const both = [getComputedStyle(element).color, getComputedStyle(sheet).backgroundColor];
    const [light = 0, dark = 0] = both.map(luminance).sort((a, b) => b - a);
    return (light + 0.05) / (dark + 0.05);
  }, selector);
}

for (const colorScheme of ['light', 'dark'] as const) {
  test(`who asks for more contrast gets it for small print, ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await page.goto(SHEET);
    const usual = await contrastOf(page, '.entry-help');
    await page.emulateMedia({ colorScheme, contrast: 'more' });
    const more = await contrastOf(page, '.entry-help');
    expect(usual).toBeGreaterThan(4.5);
    expect(more).toBeGreaterThan(12);
    expect(await axeViolations(page, { rules: ['color-contrast'] })).toEqual([]);
  });
}

test('where the system sets the colours, a drawing takes them and what is chosen shows', async ({
  page,
}) => {
  await page.emulateMedia({ forcedColors: 'active', colorScheme: 'dark' });
  await page.goto(SHEET);
  const form = page.locator('worksheet-form').first();
  await wakeForm(form);
  const { ink, drawn, chosen, other } = await form.evaluate((sheet) => ({
    ink: getComputedStyle(document.body).color,
    drawn: getComputedStyle(sheet.querySelector('.pic-text') ?? sheet).fill,
    chosen: getComputedStyle(sheet.querySelector('.origin-choice [aria-pressed="true"]') ?? sheet)
      .borderTopWidth,
    other: getComputedStyle(sheet.querySelector('.origin-choice [aria-pressed="false"]') ?? sheet)
      .borderTopWidth,
  }));
  expect(drawn).toBe(ink);
  expect(chosen).toBe('2px');
  expect(other).not.toBe(chosen);
});
