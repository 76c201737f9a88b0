import { expect, test, type Page } from '@playwright/test';

const ADDRESS = '/cases/';

async function openPractice(page: Page, query = ''): Promise<void> {
  await page.goto(`${ADDRESS}${query}`);
  await page.getByRole('button', { name: 'Open the practice' }).click();
  await expect(page.locator('case-practice[data-ready]')).toBeVisible();
}

/** Answers the question that is open, by keyboard alone; the first choice, or a figure far off. */
async function answerByKeyboard(page: Page): Promise<void> {
  const isCase =
    (await page.locator('#session-title').count()) > 0 &&
    (await page.locator('form.case').count()) > 0;
  if (isCase) {
    await page.locator('form.case input[type=radio]').first().focus();
    await page.keyboard.press('Space');
    await page.keyboard.press('Enter');
    await expect(page.locator('.case-reasons')).toBeVisible();
  } else {
    await page.locator('#session-entry').fill('-77777');
    await page.keyboard.press('Enter');
  }
  await expect(page.locator('case-practice .practice-judgement').first()).not.toBeEmpty();
}

async function titlesOfSet(page: Page): Promise<readonly string[]> {
  const titles: string[] = [];
  for (let place = 1; place <= 10; place += 1) {
    const status = page.locator('case-practice').getByText(`Question ${place} of 10`);
    await expect(status).toBeVisible();
    await expect(page.locator('#session-title')).toBeFocused();
    titles.push(await page.locator('case-practice form.practice').first().innerText());
    await page
      .getByRole('button', { name: place < 10 ? 'Next question' : 'See how it went' })
      .click();
  }
  return titles;
}

test('a session is ten questions by keyboard, and ends; the record lasts and comes back', async ({
  page,
}) => {
  await openPractice(page);
  await page.getByRole('button', { name: 'Start', exact: true }).click();
  for (let place = 1; place <= 10; place += 1) {
    await expect(page.locator('#session-title')).toBeFocused();
    await answerByKeyboard(page);
    await page
      .getByRole('button', { name: place < 10 ? 'Next question' : 'See how it went' })
      .click();
  }
  await expect(page.getByRole('heading', { name: 'End of the session' })).toBeFocused();
  await expect(page.getByRole('button', { name: 'Next question' })).toHaveCount(0);
  await expect(page.locator('.record tbody tr')).toHaveCount(10);
  await expect(page.locator('.record tbody')).toContainText('back on');
  await page.getByLabel('Clean a gate: seen by').fill('Tom');
  await page.locator('.hand-line', { hasText: 'Clean a gate' }).getByRole('button').click();
  await page.reload();
  await page.getByRole('button', { name: 'Open the practice' }).click();
  await expect(page.locator('.record tbody tr')).toHaveCount(10);
  await expect(page.locator('.hand-line', { hasText: 'Clean a gate' })).toContainText(
    'seen by Tom',
  );
});

test('a link with a seed gives everybody the same ten', async ({ page, browser }) => {
  await openPractice(page, '?set=spring&level=2');
  await page.getByRole('button', { name: 'Start', exact: true }).click();
  const mine = await titlesOfSet(page);
  const other = await (await browser.newContext()).newPage();
  await openPractice(other, '?set=spring&level=2');
  await other.getByRole('button', { name: 'Start', exact: true }).click();
  expect(await titlesOfSet(other)).toEqual(mine);
  expect(new Set(mine).size).toBe(10);
  await other.context().close();
});

test('a recording is judged by the eye: still first, then played, then answered @phone-long', async ({
  page,
}) => {
  await openPractice(page, '?set=g&level=1');
  await page.getByRole('button', { name: 'Start', exact: true }).click();
  const title = page.locator('#session-title');
  for (let place = 1; place < 10; place += 1) {
    if (/^What is wrong with this recording/u.test(await title.innerText())) break;
    await page.getByRole('button', { name: 'Next question' }).click();
    await expect(page.getByText(`Question ${place + 1} of 10`)).toBeVisible();
    await expect(title).toBeFocused();
  }
  const still = page.locator('form.case .fault-still');
  await expect(still).toBeVisible();
  await expect
    .poll(() => still.evaluate((image: HTMLImageElement) => image.naturalWidth))
    .toBe(320);
  const answers = await page.locator('form.case .case-choice').allInnerTexts();
  // The words of the picture help who cannot see it, and do not call the fault by its name.
  const words = (await still.getAttribute('alt')) ?? '';
  for (const answer of answers) expect(words).not.toContain(answer);
  await page.getByRole('button', { name: 'Play it, step through it, look closer' }).click();
  await expect(page.locator('form.case canvas[data-part=canvas]')).toBeVisible();
  await page.locator('form.case').getByRole('button', { name: 'Play', exact: true }).click();
  await expect(page.locator('#session-scene')).toHaveAttribute('data-is', 'playing');
  await page.locator('form.case').getByRole('button', { name: 'Pause' }).click();
  // Tools of the player must not send the answer.
  await expect(page.locator('.case-reasons')).toHaveCount(0);
  await page.locator('form.case .case-choice input').first().check();
  await page.getByRole('button', { name: 'Check' }).click();
  await expect(page.locator('.case-reasons')).toContainText('The dictionary of faults');
});

test('the record is saved as a file and opened on another device', async ({ page, browser }) => {
  await openPractice(page);
  await page.getByLabel('Name, for the printed record').fill('Ines');
  await page.getByRole('checkbox', { name: 'Condition and handling' }).check();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save it as a file' }).click(),
  ]);
  const path = await download.path();
  const other = await (await browser.newContext()).newPage();
  await openPractice(other);
  await other.getByLabel('Open a saved one').setInputFiles(path);
  await expect(other.getByLabel('Name, for the printed record')).toHaveValue('Ines');
  await expect(other.getByRole('checkbox', { name: 'Condition and handling' })).toBeChecked();
  await other.context().close();
});

test('the trainer gets questions without answers, answers to the same questions, and one page of what was shown', async ({
  page,
}) => {
  await page.goto('/trainer/');
  await page.getByRole('button', { name: 'Make sheets' }).click();
  await page.getByLabel('Questions').fill('12');
  await page.getByRole('button', { name: 'Make the sheets' }).click();
  const questions = page.locator('[data-part=questions]');
  const answers = page.locator('[data-part=answers]');
  await expect(questions.locator('> ol > li')).toHaveCount(12);
  await expect(answers.locator('> ol > li')).toHaveCount(12);
  expect(await questions.locator('h3').allInnerTexts()).toEqual(
    await answers.locator('h3').allInnerTexts(),
  );
  for (const part of ['questions', 'answers', 'shown']) {
    for (const format of ['A4', 'Letter']) {
      await page.evaluate((name) => {
        document.documentElement.dataset['printing'] = name;
      }, part);
      await page.emulateMedia({ media: 'print' });
      await expect(page.locator('[data-part]:visible')).toHaveCount(1);
      await expect(page.locator('h1')).toBeHidden();
      const pdf = (await page.pdf({ format, preferCSSPageSize: false })).toString('latin1');
      const pages = pdf.match(/\/Type\s*\/Page\b/gu)?.length ?? 0;
      if (part === 'shown') expect(pages).toBe(1);
      else expect(pages).toBeGreaterThan(0);
    }
  }
});

test.describe('without scripts', () => {
  test.use({ javaScriptEnabled: false });
  test('there is a fixed set with its answers, and no button that does nothing', async ({
    page,
  }) => {
    await page.goto(ADDRESS);
    await expect(page.locator('.fixed-case')).toHaveCount(12);
    await expect(page.getByRole('button', { name: 'Open the practice' })).toBeHidden();
    const first = page.locator('.fixed-case').first();
    await first.locator('summary').click();
    await expect(first.locator('details')).toContainText('The sheet that decides');
    await page.goto('/trainer/');
    await expect(page.getByRole('button', { name: 'Make sheets' })).toBeHidden();
    await expect(page.locator('.sheet-noscript')).toBeVisible();
  });
});

test('nothing is wider than a phone @phone', async ({ page }) => {
  await openPractice(page);
  await page.getByRole('button', { name: 'Start', exact: true }).click();
  await expect(page.locator('#session-title')).toBeVisible();
  const [wide, window] = await page.evaluate(() => [
    document.documentElement.scrollWidth,
    document.documentElement.clientWidth,
  ]);
  expect(wide).toBeLessThanOrEqual(window!);
});
