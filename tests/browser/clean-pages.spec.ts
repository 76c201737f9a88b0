import { expect, test } from '@playwright/test';
import { wakeForms } from './live-forms.ts';
import { pageAddresses } from './page-list.ts';

// Opens every page, scrolls to its end so that all live parts start, and listens.
for (const address of pageAddresses) {
  test(`${address} runs without an error, a failed request or a request to elsewhere`, async ({
    page,
    baseURL,
  }) => {
    const faults: string[] = [];
    page.on('console', (message) => {
      // A missing page is answered with 404, which the browser also reports on the console.
      const isExpected = address === '/404.html' && message.text().includes('404');
      if (['error', 'warning'].includes(message.type()) && !isExpected) {
        faults.push(`console: ${message.text()}`);
      }
    });
    page.on('pageerror', (error) => faults.push(`error: ${error.message}`));
    page.on('requestfailed', (request) => faults.push(`failed: ${request.url()}`));
    page.on('response', (response) => {
      if (response.status() >= 400) faults.push(`${response.status()}: ${response.url()}`);
    });
    page.on('request', (request) => {
      const url = request.url();
      if (!url.startsWith(baseURL ?? '') && !url.startsWith('blob:'))
        faults.push(`outside: ${url}`);
    });

    await page.goto(address, { waitUntil: 'load' });
    await expect(page.locator('main')).toBeVisible();
    await wakeForms(page);
    await page.evaluate(() => {
      window.scrollTo(0, document.body.scrollHeight);
    });
    await page.waitForLoadState('networkidle');
    expect(faults).toEqual([]);
  });
}

test('a page that does not exist is answered with a way back', async ({ page }) => {
  const response = await page.goto('/no/such/page/');
  expect(response?.status()).toBe(404);
  await expect(page.locator('main a[href="/"], main a[href="/contents/"]').first()).toBeVisible();
});
