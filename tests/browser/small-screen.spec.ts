import { expect, test } from '@playwright/test';
import { wakeForms } from './live-forms.ts';
import { pageAddresses } from './page-list.ts';

// One hand, a phone, a dim room: nothing may reach past the edge of the screen.
for (const address of pageAddresses) {
  test(`${address} needs no sideways scrolling at 390 px`, async ({ page }) => {
    await page.setViewportSize({ width: 390, height: 844 });
    await page.goto(address);
    await wakeForms(page);
    const tooWide = await page.evaluate(() => {
      const edge = document.documentElement.clientWidth;
      if (document.documentElement.scrollWidth <= edge) return [];
      return [...document.querySelectorAll<HTMLElement>('body *')]
        .filter((element) => element.getBoundingClientRect().right > edge + 1)
        .slice(0, 5)
        .map((element) => `${element.tagName.toLowerCase()}.${element.className}`);
    });
    expect(tooWide).toEqual([]);
  });
}
