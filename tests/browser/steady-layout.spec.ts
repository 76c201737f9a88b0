import { expect, test } from '@playwright/test';
import { wakeForms } from './live-forms.ts';
import { pageAddresses } from './page-list.ts';

// Nothing moves by itself while a page loads, is scrolled and its forms come to life.
for (const address of pageAddresses) {
  test(`${address} does not shift its layout`, async ({ page }) => {
    await page.addInitScript(() => {
      const shifts: string[] = [];
      Object.assign(window, { shifts });
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) {
          const { value, hadRecentInput, sources } = entry as PerformanceEntry & {
            readonly value: number;
            readonly hadRecentInput: boolean;
            readonly sources: readonly { readonly node: Node | null }[];
          };
          if (hadRecentInput) continue;
          const names = sources.map(({ node }) =>
            node instanceof Element ? `${node.tagName.toLowerCase()}.${node.className}` : 'text',
          );
          shifts.push(`${value.toFixed(4)} ${names.join(' ')}`);
        }
      }).observe({ type: 'layout-shift', buffered: true });
    });
    await page.goto(address);
    await wakeForms(page);
    await page.waitForLoadState('networkidle');
    const shifts = await page.evaluate(() => (window as unknown as { shifts: string[] }).shifts);
    expect(shifts).toEqual([]);
  });
}
