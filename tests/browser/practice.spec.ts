import { expect, test, type Locator, type Page } from '@playwright/test';

const ADDRESS = '/trainee/practice/';
const problem = (page: Page, id: string): Locator => page.locator(`#practice-${id}`);
const judgement = (sheet: Locator): Locator => sheet.locator('.practice-judgement');

test('a practice page loads no worksheet before a problem is touched, and stands on paper with a line to write on and without its answers', async ({
  page,
}) => {
  const scripts: string[] = [];
  page.on('request', (request) => {
    if (request.resourceType() === 'script') scripts.push(new URL(request.url()).pathname);
  });
  await page.goto(ADDRESS);
  for (const sheet of await page.locator('practice-sheet').all()) {
    await sheet.scrollIntoViewIfNeeded();
  }
  await page.waitForLoadState('networkidle');
  await test.step('on paper', async () => {
    await page.emulateMedia({ media: 'print' });
    await expect(problem(page, 'flash-rate').locator('.practice-told')).toBeVisible();
    await expect(page.locator('.practice details:visible')).toHaveCount(0);
    await expect(page.locator('.practice button:visible')).toHaveCount(0);
    await page.emulateMedia({ media: null });
  });
  const before = scripts.length;
  expect(scripts.filter((path) => /flash-rate|tachometer|preact/u.test(path))).toEqual([]);
  await problem(page, 'flash-rate').locator('input').focus();
  await expect(page.locator('practice-sheet[data-ready]')).toHaveCount(1);
  expect(scripts.length).toBeGreaterThan(before);
});

test('the first press of a button counts, though it has to fetch its script @phone-long', async ({
  page,
}) => {
  await page.goto(ADDRESS);
  const sheet = problem(page, 'flash-rate');
  const told = sheet.locator('.practice-told');
  const first = await told.innerText();
  const other = sheet.getByRole('button', { name: 'Other numbers' });
  await other.click();
  // Chance may draw the same numbers again, but not for ever.
  await expect(async () => {
    if ((await told.innerText()) === first) await other.click();
    expect(await told.innerText()).not.toBe(first);
  }).toPass();
});

test('an entry is judged right, wrong with its direction, or unreadable with an example', async ({
  page,
}) => {
  await page.goto(ADDRESS);
  const sheet = problem(page, 'flash-rate');
  const entry = sheet.locator('input');
  // The static page shows the first numbers of content/practice.yaml: 16 frames/s, two blades.
  await entry.fill('32');
  await entry.press('Enter');
  await expect(judgement(sheet)).toContainText('Right: 32');
  await entry.fill('16');
  await entry.press('Enter');
  await expect(judgement(sheet)).toContainText('the right answer is more');
  await entry.fill('many');
  await sheet.getByRole('button', { name: 'Check' }).click();
  await expect(judgement(sheet)).toContainText('Try 54 or 54 Hz');
  // Only the first entry counts, and it is kept for the next visit.
  await expect(sheet.locator('.practice-tally')).toHaveText('1 right of 1 at the first try');
  await page.reload();
  await sheet.locator('input').focus();
  await expect(sheet.locator('.practice-tally')).toHaveText('1 right of 1 at the first try');
});

test('a round asks one kind after another, with the entry ready to type in; after ten problems it stops and says how it went', async ({
  page,
}) => {
  await page.goto(ADDRESS);
  const round = page.locator('mixed-practice');
  await round.getByRole('button', { name: 'Give me a problem' }).click();
  const entry = page.locator('#practice-mixed-entry');
  const title = round.locator('h3');
  for (let number = 1; number <= 10; number += 1) {
    await expect(round.getByRole('status').last()).toContainText(`Problem ${number} of 10`);
    await expect(entry).toBeFocused();
    await expect(entry).toHaveValue('');
    await page.keyboard.type('-77777');
    await page.keyboard.press('Enter');
    await expect(round).toContainText(`of ${number} tried`);
    const before = await title.innerText();
    const isLast = number === 10;
    await round.getByRole('button', { name: isLast ? 'See how it went' : 'Next problem' }).click();
    if (!isLast) await expect(title).not.toHaveText(before);
  }
  await expect(round).toContainText('0 of 10 right at the first try');
  await expect(round.locator('li')).toHaveCount(10);
  await expect(round.getByRole('button', { name: 'Next problem' })).toHaveCount(0);
  await round.getByRole('button', { name: 'Another round' }).click();
  await expect(round).toContainText('Problem 1 of 10');
});
