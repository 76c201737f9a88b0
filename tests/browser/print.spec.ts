import { expect, test } from '@playwright/test';
import { pageAddresses } from './page-list.ts';

// Paper has no links to press and no second colour scheme.
for (const address of pageAddresses) {
  test(`${address} prints`, async ({ page }) => {
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
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
    const pdf = await page.pdf({ format: 'A4' });
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    expect(pdf.length).toBeGreaterThan(5000);
  });
}
