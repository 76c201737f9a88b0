// The sheets that read a recording, on the built pages: the demo recordings from press to result, and
// what is said of a file that cannot be read.
import { readFileSync } from 'node:fs';
import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Locator, type Page } from '@playwright/test';
import { demoPath, demoTruths } from '../tools/demo-recordings/demo-readings.ts';

test.describe.configure({ timeout: 120_000 });

const [gateTruth] = demoTruths();
const GATE = '/gate/measuring-speed/';

/** The number before “±” and the one after it. */
function valueAndError(text: string): readonly [number, number] {
  const [, value = '', error = ''] = /([\d.]+) ± ([\d.]+)/u.exec(text) ?? [];
  return [Number(value), Number(error)];
}

const answer = (sheet: Locator, label: string): Locator =>
  sheet.locator('.answer', { has: sheet.page().locator(`dt:text-is("${label}")`) }).locator('dd');

async function readDemo(page: Page, address: string): Promise<Locator> {
  await page.goto(address);
  const sheet = page.locator('recording-sheet');
  await sheet.getByRole('button', { name: 'Read the demo recording' }).click();
  await expect(sheet.locator('.recording-name')).toContainText('Read:', { timeout: 60_000 });
  return sheet;
}

async function expectNoSidewaysScroll(page: Page): Promise<void> {
  const sideways = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(sideways).toBe(0);
}

test.describe('a recording of the empty gate', () => {
  test('is read from the demo, and goes into the bench @phone', async ({ page }) => {
    const loaded: string[] = [];
    page.on('request', (request) => loaded.push(request.url()));
    await page.goto(GATE);
    await page.waitForLoadState('load');
    const before = loaded.filter((url) => /recording|worker|mediabunny/u.test(url));
    expect(before).toEqual([]);

    const sheet = await readDemo(page, GATE);
    const [filmFps, errorFps] = valueAndError(await answer(sheet, 'Film rate').innerText());
    expect(Math.abs(filmFps - gateTruth.filmFps)).toBeLessThanOrEqual(errorFps);
    expect(errorFps).toBeLessThan(0.0003 * filmFps);
    const [readout, readoutError] = valueAndError(await answer(sheet, 'Readout time').innerText());
    expect(Math.abs(readout - 1000 * gateTruth.readoutSeconds)).toBeLessThanOrEqual(readoutError);
    // Sixteen milliseconds of readout, three flashes a film frame.
    await expect(answer(sheet, 'Flash rate')).toHaveText('53.64 Hz');
    await expect(answer(sheet, 'Beat')).toContainText('3.64 Hz, the flash rate above');
    await expect(sheet.getByRole('table')).toContainText('exposure and shutter do not match');
    await expect(sheet.locator('.verdict')).toContainText('The light ripples by');
    await expect(sheet.locator('svg')).toHaveAccessibleName(/Film rate over the clip/u);

    const { violations } = await new AxeBuilder({ page }).include('recording-sheet').analyze();
    expect(violations).toEqual([]);
    await expectNoSidewaysScroll(page);

    await sheet.getByRole('button', { name: 'Take film rate and readout time' }).click();
    await expect(sheet.getByText('are in your bench')).toBeVisible();
    const stored = await page.evaluate(() => localStorage.getItem('bench') ?? '');
    expect(stored).toContain('"projector.filmFps":"17.879');
    expect(stored).toMatch(/"camera\.readoutSeconds":"15\.\d+ ms"/u);
  });

  test('shows, before any script, what the press gives', async ({ page }) => {
    await page.goto(GATE);
    const sheet = page.locator('recording-sheet');
    const printed = await sheet.locator('.recording-answers').innerText();
    const read = await readDemo(page, GATE);
    expect(await read.locator('.recording-answers').innerText()).toBe(printed);
  });

  test('is refused with the reason and what to do, and the page goes on', async ({ page }) => {
    await page.goto(GATE);
    const sheet = page.locator('recording-sheet');
    const file = { name: 'notes.mp4', mimeType: 'video/mp4', buffer: Buffer.from('no recording') };
    await sheet.locator('input[type=file]').setInputFiles(file);
    await expect(sheet.locator('.verdict')).toHaveClass(/verdict-stop/u);
    await expect(sheet.getByText('What to do:')).toBeVisible();
    await sheet.locator('input[type=file]').setInputFiles(demoPath(gateTruth));
    await expect(sheet.locator('.recording-name')).toHaveText('Read: empty-gate.mp4');
  });

  test('of three seconds is too short, and is said to be', async ({ page }) => {
    await page.goto(GATE);
    const sheet = page.locator('recording-sheet');
    await sheet.getByLabel('Read from').fill('7');
    await sheet.locator('input[type=file]').setInputFiles(demoPath(gateTruth));
    await expect(sheet.locator('.verdict')).toContainText('too short');
    await expect(sheet.getByText('Record at least ten seconds')).toBeVisible();
    // Other numbers than those it was read with: nothing old stands unmarked.
    await sheet.getByLabel('Read from').fill('0');
    await expect(sheet.getByText('worked out with other numbers')).toBeVisible();
    await sheet.getByRole('button', { name: 'Work it out with these' }).click();
    await expect(answer(sheet, 'Film rate')).toContainText('17.87');
  });

  test('can be dropped, and reading it can be stopped', async ({ page }) => {
    await page.goto(GATE);
    const sheet = page.locator('recording-sheet');
    const bytes = readFileSync(demoPath(gateTruth)).toString('base64');
    const carried = await page.evaluateHandle((text) => {
      const data = new DataTransfer();
      const raw = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
      data.items.add(new File([raw], 'dropped.mp4', { type: 'video/mp4' }));
      return data;
    }, bytes);
    // Dropped before the script of the sheet has come.
    await sheet.dispatchEvent('drop', { dataTransfer: carried });
    await sheet.dispatchEvent('dragenter', { dataTransfer: carried });
    await sheet.getByRole('button', { name: 'Cancel' }).click();
    await expect(sheet.locator('.verdict')).toContainText('Stopped');
    await sheet.dispatchEvent('drop', { dataTransfer: carried });
    await expect(sheet.locator('.recording-name')).toHaveText('Read: dropped.mp4');
  });
});
