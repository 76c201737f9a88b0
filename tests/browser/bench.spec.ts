import { expect, test, type BrowserContext, type Page } from '@playwright/test';
import { wakeForm } from './live-forms.ts';
import { axeViolations } from './sweep/axe.ts';

const MATCHING = '/gate/matching/';

async function openBench(page: Page, fragment = ''): Promise<void> {
  await page.goto(`/bench/${fragment}`);
  await expect(page.locator('bench-form')).toHaveAttribute('data-ready', 'true');
}

/** The live flash-match form of the chapter, or another one by its id. */
async function openSheet(page: Page, address = MATCHING, id = 'flash-match') {
  await page.goto(address);
  const form = page.locator(`worksheet-form[data-instance="${id}"]`);
  await wakeForm(form);
  return form;
}

async function describeBench(page: Page): Promise<void> {
  await page.getByLabel('Its name').first().fill('Attic bench');
  await page.getByLabel('Gauge it runs').selectOption({ label: 'Super 8' });
  await page.getByLabel('Film rate', { exact: true }).fill('24');
  await page.getByLabel('Flashes per frame').fill('2');
  await page.getByLabel('Camera rate you use').fill('30');
  await page.getByLabel('Readout time').fill('12');
}

const stored = (page: Page): Promise<string | null> =>
  page.evaluate(() => localStorage.getItem('bench'));

async function openFile(page: Page, name: string, text: string): Promise<void> {
  await page.getByLabel('Open a file').setInputFiles({
    name,
    mimeType: 'application/json',
    buffer: Buffer.from(text),
  });
}

const isBlocked = async (context: BrowserContext): Promise<void> => {
  await context.addInitScript(() => {
    Object.defineProperty(window, 'localStorage', {
      get() {
        throw new DOMException('denied', 'SecurityError');
      },
    });
  });
};

test('a bench described once opens every worksheet, with one press back @phone-long', async ({
  page,
}) => {
  await openBench(page);
  await describeBench(page);
  await expect(page.locator('[data-bench-name]')).toHaveText('Attic bench');

  const form = await openSheet(page);
  await expect(form.locator('.origin-status')).toHaveText('Showing your bench: Attic bench');
  await expect(form.getByLabel('Film rate', { exact: true })).toHaveValue('24');
  await expect(form.getByLabel('Flashes per frame')).toHaveValue('2');
  await expect(form.getByLabel('Camera rate', { exact: true })).toHaveValue('30');
  await expect(form.getByLabel('Readout time')).toHaveValue('12');
  // Not said, so the book's own.
  await expect(form.getByLabel('Open fraction')).toHaveValue('50');
  await expect(
    form.locator('#flash-match-answer-matchingExposureSeconds .answer-value'),
  ).toHaveText(/^1\/48/u);

  await form.getByRole('button', { name: 'Book’s numbers' }).click();
  await expect(form.locator('.origin-status')).toHaveText('Showing the book’s numbers');
  await expect(form.getByLabel('Film rate', { exact: true })).toHaveValue('18');
  await form.getByLabel('Film rate', { exact: true }).fill('20');
  await expect(form.locator('.origin-status')).toHaveText('Showing the book’s numbers, changed');
  await form.getByRole('button', { name: 'Your bench' }).click();
  await expect(form.getByLabel('Film rate', { exact: true })).toHaveValue('24');
  await expect(form.getByRole('button', { name: 'Your bench' })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
});

test('without a bench a worksheet shows the book’s numbers and the way to describe one', async ({
  page,
}) => {
  const form = await openSheet(page);
  await expect(form.locator('.origin-status')).toHaveText('Showing the book’s numbers');
  await form.getByRole('link', { name: 'Describe your bench' }).click();
  await expect(page).toHaveURL(/\/bench\/$/u);
});

test('a wrong entry keeps what was typed, says what is wanted and is left out', async ({
  page,
}) => {
  await openBench(page);
  await describeBench(page);
  const rate = page.getByLabel('Film rate', { exact: true });
  await rate.fill('quick');
  await expect(rate).toHaveAttribute('aria-invalid', 'true');
  await expect(page.locator('#projector-filmFps-message')).toContainText('18, 16 2/3 or 16,67');
  await page.reload();
  await expect(rate).toHaveValue('quick');

  const form = await openSheet(page);
  await expect(form.getByLabel('Film rate', { exact: true })).toHaveValue('18');
  await expect(form.locator('.origin-left-out')).toContainText('Film rate');
  await expect(form.locator('.verdict')).not.toHaveClass(/verdict-waiting/u);
});

test('the numbers of a link win over the bench', async ({ page }) => {
  await openBench(page);
  await describeBench(page);
  const form = await openSheet(page, `${MATCHING}?w=flash-match&filmFps=17&cameraFps=25`);
  await expect(form.locator('.origin-status')).toHaveText('Showing the numbers of the link');
  await expect(form.getByLabel('Film rate', { exact: true })).toHaveValue('17');
  await form.getByRole('button', { name: 'Your bench' }).click();
  await expect(form.getByLabel('Film rate', { exact: true })).toHaveValue('24');
});

test('a link to the bench shows the same in a second browser, which is asked first', async ({
  page,
  browser,
}) => {
  await openBench(page);
  await page.getByRole('button', { name: 'Start from this bench: Club bench, Super 8' }).click();
  await page.getByLabel('Film rate', { exact: true }).fill('16 2/3');
  await page.evaluate(() => {
    Object.defineProperty(navigator, 'clipboard', {
      value: {
        writeText(text: string) {
          document.body.dataset['copied'] = text;
          return Promise.resolve();
        },
      },
    });
  });
  await page.getByRole('button', { name: 'Copy link' }).click();
  await expect(page.locator('body')).toHaveAttribute('data-copied', /\/bench\/#b=1/u);
  const link = (await page.locator('body').getAttribute('data-copied')) ?? '';
  const here = await (await openSheet(page)).locator('.sheet-answers').innerText();

  const second = await browser.newContext();
  const other = await second.newPage();
  await other.goto(link);
  const dialog = other.getByRole('dialog', { name: 'Add this bench?' });
  await expect(dialog).toContainText('Club bench, Super 8');
  await expect(dialog).toContainText('16 2/3');
  expect(await stored(other)).toBeNull();
  await dialog.getByRole('button', { name: 'Add this bench' }).click();
  await expect(other.getByLabel('Film rate', { exact: true })).toHaveValue('16 2/3');
  await expect(other).toHaveURL(/\/bench\/$/u);
  const there = await (await openSheet(other)).locator('.sheet-answers').innerText();
  expect(there).toBe(here);
  await second.close();
});

test('a link that is left changes nothing, and a broken one says so', async ({ page }) => {
  await openBench(page);
  await describeBench(page);
  const before = await stored(page);
  await openBench(page, '#b=1&n=Other&pf=16');
  await page.getByRole('dialog').getByRole('button', { name: 'Leave it' }).click();
  await expect(page.getByRole('dialog')).toBeHidden();
  await openBench(page, '#b=9&n=Other&pf=16');
  await expect(page.getByRole('status')).toContainText('later edition');
  expect(await stored(page)).toBe(before);
});

test('two tabs stay in step, an open worksheet included', async ({ page, context }) => {
  await openBench(page);
  await describeBench(page);
  const bench = await context.newPage();
  await openBench(bench);
  await expect(bench.getByLabel('Film rate', { exact: true })).toHaveValue('24');
  const form = await openSheet(page);
  await bench.getByLabel('Film rate', { exact: true }).fill('25');
  await bench.getByLabel('Its name').first().fill('Cellar bench');
  await expect(form.getByLabel('Film rate', { exact: true })).toHaveValue('25');
  await expect(page.locator('[data-bench-name]')).toHaveText('Cellar bench');

  const third = await context.newPage();
  await openBench(third);
  await third.getByLabel('Flashes per frame').fill('3');
  await expect(bench.getByLabel('Flashes per frame')).toHaveValue('3');
});

test('several benches and reels are kept side by side, and removing can be undone', async ({
  page,
}) => {
  await openBench(page);
  await page.getByRole('button', { name: 'Start from this bench: Club bench, Super 8' }).click();
  await page.getByRole('button', { name: 'Start from this bench: Sound bench, 16 mm' }).click();
  const pick = page.getByLabel('Bench in use');
  await expect(pick.locator('option')).toHaveText(['Club bench, Super 8', 'Sound bench, 16 mm']);
  await pick.selectOption({ label: 'Club bench, Super 8' });
  await expect(page.getByLabel('Film rate', { exact: true })).toHaveValue('18');
  await page.getByRole('button', { name: 'Copy this bench' }).click();
  await expect(page.getByLabel('Its name').first()).toHaveValue('Club bench, Super 8 (2)');
  await page.getByRole('button', { name: 'Remove this bench' }).click();
  await expect(pick.locator('option')).toHaveCount(2);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(pick.locator('option')).toHaveCount(3);
  await expect(page.getByLabel('Reel on the table').locator('option')).toHaveCount(2);
});

test('a bench saved as a file comes back from it after everything was cleared', async ({
  page,
}) => {
  await openBench(page);
  await describeBench(page);
  const before = await stored(page);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as a file' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('bench.json');
  const path = await download.path();
  await page.getByRole('button', { name: 'Clear everything' }).click();
  await expect(page.getByLabel('Film rate', { exact: true })).toHaveValue('');
  expect(await stored(page)).toBeNull();
  await page.getByLabel('Open a file').setInputFiles(path);
  await page.getByRole('dialog').getByRole('button', { name: 'Add this bench' }).click();
  expect(await stored(page)).toBe(before);
});

test('files that are no bench are refused with a reason, and change nothing', async ({ page }) => {
  await openBench(page);
  await describeBench(page);
  const before = await stored(page);
  const refusals: readonly (readonly [string, string, RegExp])[] = [
    ['notes.txt', 'film rate 18', /not a JSON file/u],
    ['later.json', '{"version":4,"benches":[]}', /later edition/u],
    ['big.json', `{"version":1,"x":"${'a'.repeat(1_000_001)}"}`, /larger than 1 MB/u],
    ['sly.json', '{"version":1,"__proto__":{"x":1},"benches":[]}', /“__proto__”/u],
    ['sly-too.json', '{"version":1,"benches":[{"constructor":{}}]}', /“constructor”/u],
  ];
  for (const [name, text, reason] of refusals) {
    await openFile(page, name, text);
    await expect(page.getByRole('status')).toContainText(`“${name}” was not opened.`);
    await expect(page.getByRole('status')).toContainText(reason);
    await expect(page.getByRole('status')).toContainText('Nothing is changed.');
  }
  expect(await stored(page)).toBe(before);
});

test('a blocked store is said, and page and worksheets work on', async ({ page, context }) => {
  await isBlocked(context);
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  await openBench(page);
  await expect(page.getByRole('status')).toContainText('lets the page keep nothing');
  await page.getByLabel('Film rate', { exact: true }).fill('24');
  await expect(page.getByLabel('Film rate', { exact: true })).toHaveValue('24');
  await expect(page.getByRole('button', { name: 'Save as a file' })).toBeVisible();
  const form = await openSheet(page);
  await form.getByLabel('Film rate', { exact: true }).fill('24');
  await expect(
    form.locator('#flash-match-answer-matchingExposureSeconds .answer-value'),
  ).toHaveText(/^1\/72/u);
  expect(errors).toEqual([]);
});

test('a full store is said, and what was typed stays on the page', async ({ page }) => {
  await openBench(page);
  await page.evaluate(() => {
    let size = 4_000_000;
    for (let index = 0; size > 0; index += 1) {
      try {
        localStorage.setItem(`filler-${index}`, 'x'.repeat(size));
      } catch {
        size = Math.floor(size / 2);
      }
    }
  });
  await page.getByLabel('Film rate', { exact: true }).fill('24');
  await expect(page.getByRole('status')).toContainText('no room left');
  await expect(page.getByLabel('Film rate', { exact: true })).toHaveValue('24');
});

test('a damaged store gives what can be read, names the rest and keeps it aside', async ({
  page,
}) => {
  await page.goto('/contents/');
  await page.evaluate(() => {
    localStorage.setItem(
      'bench',
      '{"version":1,"benches":[{"name":"Old","entries":{"projector.filmFps":"18","camera.cameraFps":{}}}]}',
    );
  });
  await openBench(page);
  await expect(page.getByLabel('Film rate', { exact: true })).toHaveValue('18');
  await expect(page.locator('#kept-aside')).toContainText('camera.cameraFps is not a text');
  await page.reload();
  await expect(page.locator('#kept-aside')).toContainText('camera.cameraFps is not a text');
  await page.getByRole('button', { name: 'Throw it away' }).click();
  await expect(page.locator('#kept-aside')).toBeHidden();
  await expect(page.getByLabel('Film rate', { exact: true })).toHaveValue('18');
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing in a filled form, a refusal and an offer, ${colorScheme} @phone${colorScheme === 'dark' ? '-long' : ''}`, async ({
    page,
  }) => {
    await page.emulateMedia({ colorScheme });
    await openBench(page);
    await page.getByRole('button', { name: /^Start from this bench: Club/u }).click();
    await page.getByLabel('Film rate', { exact: true }).fill('quick');
    for (const more of await page.locator('.bench summary').all()) await more.click();
    await openFile(page, 'notes.txt', 'no');
    await expect(page.getByRole('status')).toContainText('was not opened');
    expect(await axeViolations(page)).toEqual([]);
    await openBench(page, '#b=1&n=Other&pf=16&q=Wedding&rl=50+ft&m=30&zz=1');
    await expect(page.getByRole('dialog')).toBeVisible();
    expect(await axeViolations(page)).toEqual([]);
  });
}

test('without scripts the page tells what to look up, and promises nothing', async ({
  browser,
  baseURL,
}) => {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto(`${baseURL ?? ''}/bench/`);
  await expect(page.locator('.sheet-noscript')).toContainText('needs scripts to keep');
  await expect(page.locator('.sheet-noscript')).toBeVisible();
  await expect(page.getByLabel('Flashes per frame')).toBeVisible();
  await expect(page.getByText('Usually 2 or 3.')).toBeVisible();
  await expect(page.getByText('Kept on this device as you type.')).toBeHidden();
  await expect(page.locator('main').getByRole('button')).toHaveCount(0);
  await context.close();
});

test('a bench is described and shared with the keyboard alone', async ({ page }) => {
  await openBench(page);
  const name = page.getByLabel('Its name').first();
  await name.focus();
  await page.keyboard.type('Attic bench ');
  await expect(name).toHaveValue('Attic bench ');
  const rate = page.getByLabel('Film rate', { exact: true });
  while (!(await rate.evaluate((field) => field === document.activeElement))) {
    await page.keyboard.press('Tab');
  }
  await page.keyboard.type('24');
  const more = page.getByText('More about the projector');
  while (!(await more.evaluate((summary) => summary === document.activeElement))) {
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Open fraction')).toBeVisible();
  await openBench(page, '#b=1&n=Other&pf=16');
  await expect(page.getByRole('dialog')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
  await expect(page.getByLabel('Its name').first()).toHaveValue('Attic bench');
  await expect(rate).toHaveValue('24');
});

test('lengths among the answers are shown in feet to a reader who asked for them', async ({
  page,
}) => {
  await openBench(page);
  await page.getByLabel('Lengths in answers').selectOption('imperial');
  const form = await openSheet(page, '/reel/length/', 'film-length');
  const answers = form.locator('.sheet-answers');
  await expect(answers).toContainText(/\d\sft\s\(\d[\d.]*\sm\)/u);
});

test('no page moves when the numbers of the bench come in @phone-long', async ({ page }) => {
  await openBench(page);
  await page.getByRole('button', { name: 'Start from this bench: Family bench, 8 mm' }).click();
  await expect(page.locator('[data-bench-name]')).toHaveText('Family bench, 8 mm');
  await page.addInitScript(() => {
    const shifts: string[] = [];
    Object.assign(window, { shifts });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) {
        const { value, hadRecentInput, sources } = entry as PerformanceEntry & {
          readonly value: number;
          readonly hadRecentInput: boolean;
          readonly sources: readonly { readonly node?: Element }[];
        };
        const moved = sources.map(({ node }) => node?.className ?? node?.nodeName);
        if (!hadRecentInput) shifts.push(`${value.toFixed(4)}: ${moved.join(', ')}`);
      }
    }).observe({ type: 'layout-shift', buffered: true });
  });
  for (const address of ['/bench/', '/gate/shutter-blades/', MATCHING]) {
    await page.goto(address);
    const forms = page.locator('worksheet-form');
    // Where a bench is kept, every form fills itself in before the reader comes to it.
    for (let index = 0; index < (await forms.count()); index += 1) {
      await expect(forms.nth(index)).toHaveAttribute('data-ready', 'true');
      await expect(forms.nth(index).locator('.origin-status')).toContainText('your bench');
    }
    await page.mouse.wheel(0, 20_000);
    const shifts = await page.evaluate(() => (window as unknown as { shifts: string[] }).shifts);
    expect(shifts, address).toEqual([]);
  }
});
