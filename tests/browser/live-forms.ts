import { expect, type Locator, type Page } from '@playwright/test';

/** Touches a worksheet the way a thumb does, and waits until it is live. */
export async function wakeForm(form: Locator): Promise<void> {
  await form.locator('.sheet-head').click();
  await expect(form).toHaveAttribute('data-ready', 'true');
}

/** Touches a sheet of several worksheets, and waits until it is live. */
export async function wakeSheet(page: Page): Promise<void> {
  const sheet = page.locator('[data-plan]');
  await sheet.locator('[data-blank]').first().focus();
  await expect(sheet).toHaveAttribute('data-ready', 'true');
}

/** Touches every worksheet of a page and waits until each is live. Gives their number. */
export async function wakeForms(page: Page): Promise<number> {
  const forms = page.locator('worksheet-form');
  const count = await forms.count();
  for (let index = 0; index < count; index += 1) {
    await wakeForm(forms.nth(index));
  }
  return count;
}
