import { expect, test } from '@playwright/test';
import { pageAddresses } from './page-list.ts';

// Paper has no links to press and no second colour scheme.
for (const address of pageAddresses) {
  test(`${address} prints`, async ({ page }) => {
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    // What the margins leave of A4: 178 mm. Sheets of cards have none.
    await page.setViewportSize({ width: address === '/cards/' ? 794 : 672, height: 950 });
    await page.goto(address);
    // A sheet of cards has the headings of its cards only.
    await expect(page.locator('h1:visible, h3:visible').first()).toBeVisible();
    for (const button of await page.locator('main button').all()) {
      await expect(button).toBeHidden();
    }
    const isOnWhite = await page.evaluate(() => {
      const { backgroundColor, color } = getComputedStyle(document.body);
      const light = (text: string): number =>
        (text.match(/[\d.]+/gu) ?? ['255', '255', '255'])
          .slice(0, 3)
          .reduce((sum, part) => sum + Number(part), 0);
      const isClear = /rgba\(.*, 0\)|transparent/u.test(backgroundColor);
      return (isClear || light(backgroundColor) > 700) && light(color) < 250;
    });
    expect(isOnWhite, 'dark ink on white paper').toBe(true);
    const beyond = await page.evaluate(() => {
      const edge = document.documentElement.clientWidth + 2;
      return [...document.querySelectorAll('main *')]
        .filter((element) => element.closest('.visually-hidden') === null)
        .filter((element) => element.getBoundingClientRect().right > edge)
        .map((element) => `${element.tagName} ${element.textContent.slice(0, 40)}`);
    });
    expect(beyond, 'beyond the edge of the paper').toEqual([]);
    const pdf = await page.pdf({ format: 'A4' });
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    expect(pdf.length).toBeGreaterThan(5000);
  });
}
