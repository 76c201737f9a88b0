import { expect, type Page } from '@playwright/test';

/** Scrolls to every worksheet of a page and waits until each is live. Gives their number. */
export async function wakeForms(page: Page): Promise<number> {
  const forms = page.locator('worksheet-form');
  const count = await forms.count();
  for (let index = 0; index < count; index += 1) {
    await forms.nth(index).scrollIntoViewIfNeeded();
    await expect(forms.nth(index)).toHaveAttribute('data-ready', 'true');
  }
  return count;
}
