import { expect, test } from '@playwright/test';
import { readPages } from '../site/built-site.ts';

test.use({ javaScriptEnabled: false });

const pages = readPages();

// With scripts off every page is still a page of a book, its worksheets worked with the book's numbers.
for (const { address, root } of pages) {
  const sheets = root.querySelectorAll('worksheet-form').length;
  test(`${address} reads well with scripts off`, async ({ page }) => {
    await page.goto(address);
    await expect(page.locator('h1')).toBeVisible();
    const forms = page.locator('worksheet-form');
    await expect(forms).toHaveCount(sheets);
    // Verdict and answers stand in the page itself. One look for all forms: each question costs a turn.
    const empty = await forms.evaluateAll((all) =>
      all
        .filter((form) => {
          const answers = [...form.querySelectorAll<HTMLElement>('dd')];
          const isShown = form.getClientRects().length > 0;
          return !isShown || !answers.some((answer) => /\S/u.test(answer.innerText));
        })
        .map((form) => (form as HTMLElement).dataset['instance']),
    );
    expect(empty, 'forms without answers').toEqual([]);
  });
}

test('the pages lead on to each other without script', async ({ page }) => {
  await page.goto('/');
  await page.locator('a[href="/contents/"]').first().click();
  await expect(page).toHaveURL(/\/contents\/$/u);
  const [chapter] = pages.filter(({ html }) => html.includes('<worksheet-form'));
  await page.locator(`main a[href="${chapter!.address}"]`).first().click();
  await expect(page.locator('worksheet-form').first()).toBeVisible();
});
