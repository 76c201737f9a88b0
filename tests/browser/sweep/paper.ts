import { expect, type Page } from '@playwright/test';

/** What the margins leave of A4 is 178 mm; sheets of cards have none. */
function paperWidth(address: string): number {
  return address === '/cards/' ? 794 : 672;
}

/** A page printed to PDF, on the paper that it asks for. */
export async function expectPdf(page: Page): Promise<Buffer> {
  const pdf = await page.pdf({ preferCSSPageSize: true });
  expect.soft(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  expect.soft(pdf.length).toBeGreaterThan(5000);
  return pdf;
}

/** A page on paper: nothing to press, dark ink on white, nothing cut off. */
export async function expectPrints(page: Page, address: string): Promise<void> {
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  await page.setViewportSize({ width: paperWidth(address), height: 950 });
  const found = await page.evaluate(() => {
    const isShown = (element: Element): boolean => element.getClientRects().length > 0;
    const { backgroundColor, color } = getComputedStyle(document.body);
    const light = (text: string): number =>
      (text.match(/[\d.]+/gu) ?? ['255', '255', '255'])
        .slice(0, 3)
        .reduce((sum, part) => sum + Number(part), 0);
    const isClear = /rgba\(.*, 0\)|transparent/u.test(backgroundColor);
    const edge = document.documentElement.clientWidth + 2;
    return {
      // A sheet of cards has the headings of its cards only.
      headings: [...document.querySelectorAll('h1, h3')].filter(isShown).length,
      buttons: [...document.querySelectorAll('main button')].filter(isShown).length,
      isOnWhite: (isClear || light(backgroundColor) > 700) && light(color) < 250,
      beyond: [...document.querySelectorAll('main *')]
        .filter((element) => element.closest('.visually-hidden') === null)
        .filter((element) => element.getBoundingClientRect().right > edge)
        .map((element) => `${element.tagName} ${element.textContent.slice(0, 40)}`),
    };
  });
  expect.soft(found.headings, 'headings on paper').toBeGreaterThan(0);
  expect.soft(found.buttons, 'buttons on paper').toBe(0);
  expect.soft(found.isOnWhite, 'dark ink on white paper').toBe(true);
  expect.soft(found.beyond, 'beyond the edge of the paper').toEqual([]);
}
