import type { Page } from '@playwright/test';

/** What a page did while it was looked at. */
export interface Heard {
  /** Console errors and warnings, thrown errors, failed requests, requests to elsewhere. */
  readonly faults: readonly string[];
  /** Addresses of the scripts it loaded. */
  readonly scripts: ReadonlySet<string>;
}

/** Listens to everything a page says and asks for, from before it is opened. */
export function listenTo(page: Page, address: string, baseUrl: string): Heard {
  const faults: string[] = [];
  const scripts = new Set<string>();
  page.on('console', (message) => {
    // A missing page is answered with 404, which the browser also reports on the console; and the test
    // runner itself says that it keeps the offline copy out.
    const isExpected =
      (address === '/404.html' && message.text().includes('404')) ||
      message.text() === 'Service Worker registration blocked by Playwright';
    if (['error', 'warning'].includes(message.type()) && !isExpected) {
      faults.push(`console: ${message.text()}`);
    }
  });
  page.on('pageerror', (error) => faults.push(`error: ${error.message}`));
  page.on('requestfailed', (request) => faults.push(`failed: ${request.url()}`));
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(baseUrl) && !url.startsWith('blob:')) faults.push(`outside: ${url}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) faults.push(`${response.status()}: ${response.url()}`);
    if (response.request().resourceType() === 'script') scripts.add(response.url());
  });
  return { faults, scripts };
}
