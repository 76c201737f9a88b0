import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { wakeForms } from './live-forms.ts';
import { pageAddresses } from './page-list.ts';

// Colours are all that the dark scheme changes, so only the rules about colour run again there.
const rules = {
  light: (page: Page) => new AxeBuilder({ page }),
  dark: (page: Page) =>
    new AxeBuilder({ page }).withRules(['color-contrast', 'link-in-text-block']),
} as const;

// Every rule of axe, on every page with its live forms, in both colour schemes.
for (const address of pageAddresses) {
  test(`${address} has no axe violation, light or dark`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
    await page.goto(address);
    await wakeForms(page);
    const found: string[] = [];
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
      const { violations } = await rules[colorScheme](page).analyze();
      found.push(
        ...violations.flatMap(({ id, help, nodes }) =>
          nodes.map(({ target }) => `${colorScheme}: ${id} (${help}): ${target.join(' ')}`),
        ),
      );
    }
    expect(found).toEqual([]);
  });
}

test('axe would find a fault', async ({ page }) => {
  await page.goto('/');
  await page.evaluate(() => {
    document.querySelector('main')?.append(document.createElement('button'));
  });
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id }) => id)).toContain('button-name');
});
