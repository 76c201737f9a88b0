import { expect, test, type Page } from '@playwright/test';
import { wakeForm } from './live-forms.ts';

// A form wakes at the first touch. Whatever that touch was, it must count once.
const MATCHING = '/gate/matching/';
const form = (page: Page) => page.locator('worksheet-form[data-instance="flash-match"]');

test('a chapter that is only read loads no script of its forms', async ({ page }) => {
  const scripts: string[] = [];
  page.on('response', (response) => {
    if (response.request().resourceType() === 'script') scripts.push(response.url());
  });
  await page.goto(MATCHING);
  await page.mouse.wheel(0, 30_000);
  await page.waitForLoadState('networkidle');
  expect(scripts.length).toBeGreaterThan(1);
  expect(scripts.filter((url) => url.includes('hydrate-worksheet'))).toEqual([]);
  await wakeForm(form(page));
  expect(scripts.filter((url) => url.includes('hydrate-worksheet'))).toHaveLength(1);
});

test('the first press on a sleeping form is carried out once it lives', async ({ page }) => {
  await page.goto(MATCHING);
  const step = form(page).getByRole('button', { name: 'Next frame' });
  await step.click();
  await expect(form(page)).toHaveAttribute('data-ready', 'true');
  await expect(form(page)).toContainText('Camera frame 2.');
});

test('what is typed while the script is on its way is kept', async ({ page }) => {
  let release = (): void => undefined;
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  await page.route(/hydrate-worksheet/u, async (route) => {
    await held;
    await route.continue();
  });
  await page.goto(MATCHING);
  const field = form(page).getByLabel('Exposure time', { exact: true });
  await field.fill('1/54');
  release();
  await expect(form(page)).toHaveAttribute('data-ready', 'true');
  await expect(field).toHaveValue('1/54');
  await expect(form(page).locator('#flash-match-answer-ripplePercent')).toContainText('0 %');
});

test('a press without a pointer, as a screen reader makes it, counts once on a form that a link woke', async ({
  page,
}) => {
  await page.goto(`${MATCHING}?w=flash-match&filmFps=18#flash-match`);
  await expect(form(page)).toHaveAttribute('data-ready', 'true');
  const step = form(page).getByRole('button', { name: 'Next frame' });
  await step.evaluate((button: HTMLButtonElement) => {
    button.click();
  });
  await expect(form(page)).toContainText('Camera frame 2.');
});
