import { setTimeout as wait } from 'node:timers/promises';
import { expect, test, type Locator, type Page } from '@playwright/test';
import { turnTag } from './short-run.ts';

// A field that differs from the answers never stands beside them unmarked, and what was typed is kept.

const MATCHING = '/gate/matching/';
const CONDITION = '/reel/condition/';
const match = (page: Page): Locator => page.locator('worksheet-form[data-instance="flash-match"]');
const triage = (page: Page): Locator =>
  page.locator('worksheet-form[data-instance="condition-triage"]');
const live = async (form: Locator): Promise<void> => {
  await expect(form).toHaveAttribute('data-ready', 'true');
};

/** Entries as the form's own link to its numbers gives them: what the sums were made from. */
async function summedEntries(form: Locator): Promise<URLSearchParams> {
  const address = await form.locator('.sheet-link').getAttribute('href');
  return new URL(address ?? '', 'https://site.invalid').searchParams;
}

/** Every field of the form says what the sums were made from. */
async function expectAgreement(form: Locator): Promise<void> {
  const entries = await summedEntries(form);
  const fields = await form.locator('.sheet-inputs :is(input, select)').evaluateAll((all) =>
    all.map((field) => {
      const { name, value } = field as HTMLInputElement;
      return [name, value] as const;
    }),
  );
  expect(fields.length).toBeGreaterThan(3);
  for (const [name, value] of fields) expect(entries.get(name), name).toBe(value);
}

test('a choice that was made survives a reload, with its verdict', async ({ page }) => {
  await page.goto(CONDITION);
  await triage(page).getByLabel('Base').selectOption('nitrate-suspected');
  await live(triage(page));
  await expect(triage(page).locator('.verdict')).toContainText('nitrate');
  await page.reload();
  await live(triage(page));
  await expect(triage(page).getByLabel('Base')).toHaveValue('nitrate-suspected');
  await expect(triage(page).locator('.verdict')).toContainText('nitrate');
  await expectAgreement(triage(page));
});

test('the way back finds the field as it was left, with its answers', async ({ page }) => {
  await page.goto(MATCHING);
  await match(page).getByLabel('Film rate', { exact: true }).fill('24');
  await live(match(page));
  await page.goto('/contents/');
  await page.goBack();
  await live(match(page));
  await expect(match(page).getByLabel('Film rate', { exact: true })).toHaveValue('24');
  await expectAgreement(match(page));
});

test('a change without pointer or focus wakes the form', async ({ page }) => {
  await page.goto(MATCHING);
  await match(page)
    .getByLabel('Film rate', { exact: true })
    .evaluate((field: HTMLInputElement) => {
      field.value = '24';
      field.dispatchEvent(new Event('change', { bubbles: true }));
    });
  await live(match(page));
  await expectAgreement(match(page));
  expect((await summedEntries(match(page))).get('filmFps')).toBe('24');
});

test('a browser that fills several fields at once is believed in all of them', async ({ page }) => {
  await page.goto(MATCHING);
  await match(page).locator('.sheet-head').click();
  await live(match(page));
  await match(page).evaluate((form) => {
    for (const [name, text] of [
      ['filmFps', '24'],
      ['cameraFps', '30'],
    ] as const) {
      const field = form.querySelector<HTMLInputElement>(`[name="${name}"]`)!;
      field.value = text;
      field.dispatchEvent(new Event('input', { bubbles: true }));
    }
  });
  await expect.poll(async () => (await summedEntries(match(page))).get('cameraFps')).toBe('30');
  await expectAgreement(match(page));
});

test('fields that the browser put back before the page woke wake it', async ({ page }) => {
  await page.addInitScript(() => {
    // What some browsers do between the end of the page and its first event.
    addEventListener('DOMContentLoaded', () => {
      const base = document.querySelector<HTMLSelectElement>('#condition-triage-base');
      if (base !== null) base.value = 'nitrate-suspected';
    });
  });
  await page.goto(CONDITION);
  await live(triage(page));
  await expect(triage(page).locator('.verdict')).toContainText('nitrate');
  await expectAgreement(triage(page));
});

test('a browser that empties the fields of a page it brings back gets them filled again', async ({
  page,
}) => {
  await page.goto(MATCHING);
  const field = match(page).getByLabel('Film rate', { exact: true });
  await field.fill('24');
  await live(match(page));
  await field.evaluate((input: HTMLInputElement) => {
    input.value = '';
    dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true }));
  });
  await expect(field).toHaveValue('24');
  await expectAgreement(match(page));
});

test('while the script is on its way the old answers are marked, and cannot be reached', async ({
  page,
}) => {
  let release = (): void => undefined;
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  await page.route(/hydrate-worksheet/u, async (route) => {
    await held;
    await route.continue();
  });
  await page.goto(MATCHING);
  await match(page).getByLabel('Film rate', { exact: true }).fill('24');
  await expect(page.locator('.sheet-notice')).toContainText('Loading');
  await expect(match(page).locator('.verdict')).toHaveAttribute('inert', '');
  await expect(match(page).locator('.sheet-answers')).toHaveAttribute('inert', '');
  expect(await match(page).ariaSnapshot()).not.toContain('Ripple:');
  release();
  await live(match(page));
  await expect(page.locator('.sheet-notice')).toHaveCount(0);
  await expect(match(page).locator('[inert]')).toHaveCount(0);
  await expectAgreement(match(page));
});

test('a script that cannot be fetched is owned up to, and trying again works', async ({ page }) => {
  await page.route(/hydrate-worksheet/u, (route) => route.abort());
  await page.goto(MATCHING);
  await match(page).getByLabel('Film rate', { exact: true }).fill('24');
  const notice = page.locator('.sheet-notice');
  await expect(notice).toContainText('could not be loaded');
  await expect(match(page).locator('.verdict')).toHaveAttribute('inert', '');
  await page.unroute(/hydrate-worksheet/u);
  await notice.getByRole('button', { name: 'Try again' }).click();
  await live(match(page));
  await expect(notice).toHaveCount(0);
  await expect(match(page).getByLabel('Film rate', { exact: true })).toHaveValue('24');
  await expectAgreement(match(page));
});

test('a sheet whose script failed is fetched again by the reader alone, or by coming back', async ({
  page,
}) => {
  let asked = 0;
  await page.route(/hydrate-worksheet/u, async (route) => {
    asked += 1;
    await route.abort();
  });
  const shown = (persisted: boolean): Promise<boolean> =>
    page.evaluate(
      (isBroughtBack) =>
        dispatchEvent(new PageTransitionEvent('pageshow', { persisted: isBroughtBack })),
      persisted,
    );
  // The link asks for the form, so it is woken by the page itself.
  await page.goto(`${MATCHING}?w=flash-match&filmFps=24#flash-match`);
  const notice = page.locator('.sheet-notice');
  await expect(notice).toContainText('could not be loaded');
  const first = asked;
  await shown(false);
  // As long as a page that is brought back takes to settle.
  await wait(800);
  expect(asked).toBe(first);
  await shown(true);
  await expect.poll(() => asked).toBe(first + 1);
  await wait(800);
  expect(asked).toBe(first + 1);
});

test('what is typed on a slow line does not drop the numbers of the link', async ({ page }) => {
  await page.route(/\/assets\/.*\.js/u, async (route) => {
    await wait(400);
    await route.continue();
  });
  await page.goto(`${MATCHING}?w=flash-match&filmFps=24&cameraFps=30#flash-match`);
  await match(page).getByLabel('Exposure time', { exact: true }).fill('1/60');
  await live(match(page));
  await expect(match(page).getByLabel('Film rate', { exact: true })).toHaveValue('24');
  await expect(match(page).getByLabel('Exposure time', { exact: true })).toHaveValue('1/60');
  await expect(match(page).locator('.origin-status')).toContainText('link');
  await expectAgreement(match(page));
});

test('the first answer waits for at most three steps of a slow line', async ({ page }) => {
  await page.goto(MATCHING);
  await page.waitForLoadState('networkidle');
  // Each wave of requests that waits for another is one step.
  const step = 500;
  let waves = 0;
  let lastEnd = -Infinity;
  await page.route(/\/assets\/.*\.js/u, async (route) => {
    const begin = performance.now();
    if (begin > lastEnd) {
      waves += 1;
      lastEnd = begin + step * 0.9;
    }
    await wait(step);
    await route.continue();
  });
  await match(page).getByLabel('Film rate', { exact: true }).fill('24');
  await live(match(page));
  expect(waves).toBeGreaterThan(0);
  expect(waves).toBeLessThanOrEqual(3);
});

for (const [place, [address, field, text]] of (
  [
    ['/bench/', 'bench-form [name="projector.filmFps"]', '16 2/3'],
    ['/job-sheet/', '[data-plan] [name="lengthMetres"]', '61 m'],
    ['/job-sheet/', '[data-plan] [data-blank]', 'Reel 7'],
    ['/search/', '[data-search] input', 'flicker'],
    ['/trainee/practice/', 'practice-sheet input', '54'],
  ] as const
).entries()) {
  const turn = turnTag(place, 2);
  test(`${address}: a field of a page brought back is filled again, ${field}${turn}`, async ({
    page,
  }) => {
    await page.goto(address);
    const input = page.locator(field).first();
    await input.click();
    const part = page.locator('bench-form, [data-plan], practice-sheet').first();
    if (address !== '/search/') await live(part);
    await input.fill(text);
    await input.evaluate((emptied: HTMLInputElement) => {
      emptied.value = '';
      dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true }));
    });
    await expect(input).toHaveValue(text);
  });
}

test('a line written on the job sheet survives a reload, and goes into no address', async ({
  page,
}) => {
  await page.goto('/job-sheet/');
  const line = page.locator('[data-blank]').first();
  await line.fill('Reel 7, Rowing Club');
  await live(page.locator('[data-plan]'));
  await page.reload();
  await expect(line).toHaveValue('Reel 7, Rowing Club');
  expect(page.url()).not.toContain('Rowing');
});

test('the job sheet fetches its worksheets at the first touch, and keeps what is typed meanwhile', async ({
  page,
}) => {
  const loaded: string[] = [];
  page.on('request', (request) => loaded.push(request.url()));
  const sheetScripts = (): readonly string[] =>
    loaded.filter((url) => /hydrate-gathered/u.test(url));
  await page.route(/hydrate-gathered/u, async (route) => {
    await wait(600);
    await route.continue();
  });
  await page.goto('/job-sheet/');
  await page.waitForLoadState('networkidle');
  expect(sheetScripts()).toEqual([]);
  const length = page.locator('[name="lengthMetres"]');
  await length.fill('100 ft');
  await live(page.locator('[data-plan]'));
  expect(sheetScripts()).toHaveLength(1);
  await expect(length).toHaveValue('100 ft');
  await expect(page.locator('#job-sheet-step-reel-answer-frames')).toContainText('7200');
  await expect(page).toHaveURL(/lengthMetres=100\+ft/u);
});

test('what was typed while the script was on its way is there after leaving and coming back', async ({
  page,
}) => {
  await page.route(/hydrate-worksheet/u, (route) => route.abort());
  await page.goto(MATCHING);
  await match(page).getByLabel('Film rate', { exact: true }).fill('24');
  await page.goto('/contents/');
  await page.unroute(/hydrate-worksheet/u);
  await page.goBack();
  await live(match(page));
  await expect(match(page).getByLabel('Film rate', { exact: true })).toHaveValue('24');
  await expectAgreement(match(page));
});
