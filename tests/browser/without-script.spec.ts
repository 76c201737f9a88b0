import { expect, test } from '@playwright/test';
import { readPages } from '../site/built-site.ts';
import { isAsked, isShortRun } from './short-run.ts';

test.use({ javaScriptEnabled: false });

const pages = readPages();

// One tab goes through the pages of a part of the book: opening a tab takes longer than such a page. In the test
// command one tab goes through a third of all pages, another third for another commit.
const partOf = (address: string): string =>
  isShortRun ? 'the turn' : (/^\/[\w-]+\/(?=[\w-]+\/)/u.exec(address)?.[0] ?? '/');
const asked = pages.filter((_, index) => isAsked(index, 3));
const parts = [...new Set(asked.map(({ address }) => partOf(address)))];

// With scripts off every page is still a page of a book, its worksheets worked with the book's numbers.
for (const part of parts) {
  test(`the pages of ${part} read well with scripts off`, async ({ page }) => {
    for (const { address, root } of asked) {
      if (partOf(address) !== part) continue;
      await page.goto(address);
      await expect.soft(page.locator('h1'), address).toBeVisible();
      const forms = page.locator('worksheet-form');
      const sheets = root.querySelectorAll('worksheet-form').length;
      await expect.soft(forms, address).toHaveCount(sheets);
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
      expect.soft(empty, `forms without answers on ${address}`).toEqual([]);
    }
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
