import { expect, test, type Page } from '@playwright/test';
import { printedText } from './printed-text.ts';

// What a PDF printed in Chromium says, read back. That every page prints at all: every-page.spec.ts.

const SHEET = '/gate/shutter-blades/';

async function describeBench(page: Page): Promise<void> {
  await page.addInitScript(() => {
    localStorage.setItem(
      'bench',
      JSON.stringify({
        version: 1,
        benches: [{ name: 'Club bench', entries: { 'projector.filmFps': '23' } }],
        currentBench: 0,
        reels: [{ name: 'Regatta', entries: { 'reel.lengthMetres': '61 m' } }],
        currentReel: 0,
        region: '',
        units: 'metric',
      }),
    );
  });
}

test('a chapter prints with the numbers of a link, the working and the address of each sheet', async ({
  page,
  baseURL,
}) => {
  await page.goto(`${SHEET}?w=flash-rate&filmFps=21&bladesPerTurn=3&shutterTurnsPerFrame=1`);
  const sheet = page.locator('worksheet-form[data-instance="flash-rate"]');
  await expect(sheet).toHaveAttribute('data-ready', 'true');
  const sheets = await printedText(page);
  const text = sheets.join(' ');
  expect(text).toContain('Showing the numbers of the link');
  expect(text).toMatch(/Film rate\s+21\s+frames\/s/u);
  expect(text).toContain('63 Hz');
  // The working is folded away on the screen.
  await expect(sheet.locator('.sheet-working ol')).toBeHidden();
  expect(text).toContain('Assumed.');
  expect(text).toContain(`${baseURL ?? ''}${SHEET}#flash-rate`);
  // Sources stand in the text; what can only be pressed does not.
  const source = (await page.locator('.margin-source').first().textContent())?.trim() ?? 'none';
  expect(text).toContain(`[${source}]`);
  for (const word of [
    'Copy as text',
    'Link to these numbers',
    'Book’s numbers',
    'Open the worksheet',
  ]) {
    expect(text).not.toContain(word);
  }
  sheets.forEach((each, index) => {
    expect(each).toContain(`${index + 1} / ${sheets.length}`);
  });
});

test('a chapter prints with the numbers of the bench, even where it was never scrolled to', async ({
  page,
}) => {
  await describeBench(page);
  await page.goto(SHEET);
  const forms = page.locator('worksheet-form');
  for (const form of await forms.all()) await expect(form).toHaveAttribute('data-ready', 'true');
  const text = (await printedText(page)).join(' ');
  expect(text).toContain('Showing your bench');
  expect(text).toMatch(/Film rate\s+23\s+frames\/s/u);
  expect(text).toContain('69 Hz');
});

test.describe('with scripts off', () => {
  test.use({ javaScriptEnabled: false });

  test('a chapter prints with the book’s numbers and the working', async ({ page }) => {
    await page.goto(SHEET);
    const text = (await printedText(page)).join(' ');
    expect(text).toMatch(/Film rate\s+18\s+frames\/s/u);
    expect(text).toContain('54 Hz');
    expect(text).toContain('Assumed.');
  });
});

test('the reader’s own choice of the dark scheme prints in dark ink', async ({ page }) => {
  await page.addInitScript(() => {
    localStorage.setItem('scheme', 'dark');
  });
  await page.goto(SHEET);
  await page.emulateMedia({ media: 'print' });
  const [ink, field] = await page.evaluate(() => [
    getComputedStyle(document.body).color,
    getComputedStyle(document.querySelector('.entry-printed') ?? document.body).color,
  ]);
  expect(ink).toBe('rgb(27, 32, 35)');
  expect(field).toBe('rgb(27, 32, 35)');
});

test('the bench cards print four to a sheet, each whole, with the numbers of the bench, and only those that are chosen', async ({
  page,
}) => {
  await describeBench(page);
  await page.goto('/cards/');
  // Every worksheet is fetched for this.
  await page.locator('.cards[data-filled=true]').waitFor({ timeout: 30_000 });
  const cards = page.locator('.card');
  const count = await cards.count();
  expect(count).toBeGreaterThan(4);

  const sheets = await printedText(page);
  expect(sheets).toHaveLength(Math.ceil(count / 4));
  const text = sheets.join(' ');
  const titles = await page.locator('.card h3').allTextContents();
  const missing = titles.filter((title) => !text.includes(title.replaceAll(/\s+/gu, ' ')));
  expect(missing).toEqual([]);
  expect(text).toContain('Your bench: Club bench');

  await page.emulateMedia({ media: 'print' });
  const cut = await cards.evaluateAll((all) =>
    all
      .filter((card) => {
        const face = card.querySelector('.card-face');
        return face !== null && face.scrollHeight > card.clientHeight;
      })
      .map((card) => card.id),
  );
  expect(cut, 'cards with more than fits').toEqual([]);
  await page.emulateMedia({ media: null });

  await page.getByRole('button', { name: 'Choose none' }).click();
  await expect(page.getByText('No card is chosen.')).toBeVisible();
  await page.getByLabel('Print Flash rate').check();
  await page.getByLabel('Print Flash match').check();
  await expect(page.getByText('2 cards on 1 sheet of A4.')).toBeVisible();
  const chosen = await printedText(page);
  expect(chosen).toHaveLength(1);
  expect(chosen[0]).toContain('Flash match');
  expect(chosen[0]).not.toContain('Film length and running time');
});

test('the job sheet carries the bench and what is typed through all steps onto two sides, and no number that hangs on a wrong entry', async ({
  page,
}) => {
  await describeBench(page);
  await page.goto('/job-sheet/');
  await expect(page.locator('[data-plan]')).toHaveAttribute('data-ready', 'true');
  await expect(page.getByLabel('Film rate while recording')).toHaveValue('23');
  await page.getByLabel('Length of the reel').fill('100 ft');
  await page.getByLabel('Film rate while recording').fill('18');
  await page.getByLabel('Customer', { exact: true }).fill('Rowing Club');
  const sheets = await printedText(page);
  expect(sheets).toHaveLength(2);
  for (const words of ['7200 frames', '6 min 40 s', '30.48 m', 'Whole frames', 'Shrinkage']) {
    expect(sheets[0]).toContain(words);
  }
  for (const words of ['Film rate measured', 'New damage', 'Checksum']) {
    expect(sheets[1]).toContain(words);
  }
  await expect(page).toHaveURL(/lengthMetres=100\+ft/u);
  expect(page.url()).not.toContain('Rowing');

  // A colleague with the link sees the same.
  const other = await page.context().browser()?.newPage();
  await other?.goto(page.url());
  await expect(other!.locator('#job-sheet-step-reel-answer-frames')).toContainText('7200');
  await other?.close();

  // A wrong entry: which one it is, and no number that hangs on it.
  await page.getByLabel('Length of the reel').fill('long');
  await expect(page.locator('#job-sheet-lengthMetres-message')).not.toBeEmpty();
  await expect(page.locator('#job-sheet-step-keep')).toContainText(
    'This waits for an entry above.',
  );
  await expect(page.locator('#job-sheet-step-reel-answer-frames')).toContainText('–');
  await expect(page.locator('#job-sheet-step-match-answer-beatHz')).toContainText('Hz');
});

test('the customer sheet prints on one page, with time and price only when they are chosen', async ({
  page,
}) => {
  await page.goto('/customer-sheet/');
  await page.getByLabel('Reels like this one').fill('3');
  await expect(page.locator('[data-plan]')).toHaveAttribute('data-ready', 'true');
  const inner = ['Handling of one reel', 'Price of a minute', 'Worksheet:'];
  const [plain = '', ...over] = await printedText(page);
  expect(over).toEqual([]);
  expect(plain).toContain('What is on your reel');
  expect(plain).toContain('What you can have');
  for (const words of [...inner, 'Working days', 'To pay']) expect(plain).not.toContain(words);
  expect(page.url()).not.toContain('pricePerReel');

  await page.getByLabel('how many days we need').check();
  await page.getByLabel('what it costs').check();
  const [chosen = '', ...more] = await printedText(page);
  expect(more).toEqual([]);
  for (const words of ['Working days', 'To pay']) expect(chosen).toContain(words);
  for (const words of inner) expect(chosen).not.toContain(words);
});

test('a Standard 8 reel on a Super 8 projector is stopped on the bench page and on the job sheet', async ({
  page,
}) => {
  const stored = {
    version: 1,
    benches: [{ name: 'Club', entries: { 'projector.gauge': 'super-8' } }],
    reels: [{ name: 'Old', entries: { 'reel.gauge': '8mm-type-r' } }],
  };
  await page.addInitScript((text) => {
    localStorage.setItem('bench', text);
  }, JSON.stringify(stored));
  for (const address of ['/bench/', '/job-sheet/']) {
    await page.goto(address);
    await expect(page.getByRole('alert')).toContainText('Do not thread');
  }
});
