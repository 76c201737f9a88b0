import { expect, test } from '@playwright/test';
import { readPages } from '../site/built-site.ts';
import { wakeForms } from './live-forms.ts';
import { isAsked } from './short-run.ts';
import { axeViolations, COLOUR_RULES } from './sweep/axe.ts';
import { countedScripts } from './sweep/counted-scripts.ts';
import {
  elementsTooWide,
  forgetShifts,
  noteShifts,
  notedShifts,
  overlappedNotes,
} from './sweep/layout.ts';
import { listenTo } from './sweep/listen.ts';
import { expectPdf, expectPrints } from './sweep/paper.ts';
import { sheetFaults } from './sweep/sheets-of-paper.ts';

/** The test command shows one page of so many to axe in light, and another one in dark for its colours. */
const AXE_TURNS = 4;
/** It prints one page of so many to sheets of paper. */
const PAPER_TURNS = 3;

// One visit of every page asks all that every page must answer, because loading a page and waking its
// forms costs more than the questions. Each question is soft: one fault does not hide the next.

for (const [place, { address, html }] of readPages().entries()) {
  const isChapter = /<main class="[^"]*\bleaf-chapter\b/u.test(html);
  test(`${address} is clean, steady, open to all, narrow and printable`, async ({
    page: tab,
    baseURL,
  }) => {
    const heard = listenTo(tab, address, baseURL ?? '');
    await noteShifts(tab);
    await tab.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
    await tab.goto(address, { waitUntil: 'load' });
    await expect(tab.locator('main')).toBeVisible();

    // Asleep, as most readers print it.
    await tab.waitForLoadState('networkidle');
    expect.soft(await notedShifts(tab), 'shifts of the layout as it loads').toEqual([]);
    expect.soft(await overlappedNotes(tab), 'what lies over notes in the margin').toEqual([]);
    if (isAsked(place, PAPER_TURNS)) {
      const pdf = await expectPdf(tab);
      if (isChapter) expect.soft(await sheetFaults(tab, pdf), 'sheets of paper').toEqual([]);
      await forgetShifts(tab);
    }

    const forms = await wakeForms(tab);
    await tab.evaluate(() => {
      window.scrollTo(0, document.body.scrollHeight);
    });
    await tab.waitForLoadState('networkidle');
    expect.soft(heard.faults, 'errors and requests').toEqual([]);
    expect.soft(await notedShifts(tab), 'shifts of the layout as its forms wake').toEqual([]);

    if (forms > 0) {
      const counted = countedScripts(address);
      const paths = [...heard.scripts].map((url) => url.replace(`${baseURL ?? ''}/`, ''));
      expect.soft(paths.length, 'scripts').toBeGreaterThan(2);
      expect
        .soft(
          paths.filter((path) => !counted.has(path)),
          'scripts that the budget leaves out',
        )
        .toEqual([]);
    }

    if (isAsked(place, AXE_TURNS)) {
      expect.soft(await axeViolations(tab), 'axe, light').toEqual([]);
    }
    await tab.emulateMedia({ colorScheme: 'dark', reducedMotion: 'reduce' });
    if (isAsked(place + 1, AXE_TURNS)) {
      expect.soft(await axeViolations(tab, { rules: COLOUR_RULES }), 'axe, dark').toEqual([]);
    }

    await tab.setViewportSize({ width: 390, height: 844 });
    expect.soft(await elementsTooWide(tab), 'wider than 390 px').toEqual([]);

    await expectPrints(tab, address);
    expect.soft(heard.faults, 'errors and requests, at the end').toEqual([]);
  });
}

test('axe would find a fault, and a fault of colour in the dark', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.goto('/');
  await page.evaluate(() => {
    const faint = document.createElement('p');
    faint.textContent = 'too faint to read';
    // A rule of the sheet itself: the security policy forbids a style attribute.
    document.adoptedStyleSheets = [new CSSStyleSheet()];
    document.adoptedStyleSheets[0]?.insertRule('.faint { color: #333; background: #222 }');
    faint.className = 'faint';
    document.querySelector('main')?.append(document.createElement('button'), faint);
  });
  expect((await axeViolations(page)).join('\n')).toContain('button-name');
  expect((await axeViolations(page, { rules: COLOUR_RULES })).join('\n')).toContain(
    'color-contrast',
  );
});

test('the sweep would hear a fault, see a shift and an element that is too wide', async ({
  page,
  baseURL,
}) => {
  const heard = listenTo(page, '/', baseURL ?? '');
  await noteShifts(page);
  await page.goto('/');
  await page.waitForLoadState('networkidle');
  await page.evaluate(() => {
    // eslint-disable-next-line no-console -- planted for the listener to hear
    console.warn('planted');
    document.adoptedStyleSheets = [new CSSStyleSheet()];
    document.adoptedStyleSheets[0]?.insertRule(
      '.planted { inline-size: 900px; block-size: 200px }',
    );
    const planted = document.createElement('div');
    planted.className = 'planted';
    document.body.prepend(planted);
  });
  await expect.poll(() => notedShifts(page)).not.toEqual([]);
  expect(heard.faults).toEqual(['console: planted']);
  // After the shift: a change of the window's size counts as the reader's own doing.
  await page.setViewportSize({ width: 390, height: 844 });
  expect((await elementsTooWide(page)).join(' ')).toContain('div.planted');
});

test('the sweep would see a table that lies over a note in the margin', async ({ page }) => {
  await page.goto('/gate/matching/');
  expect(await overlappedNotes(page)).toEqual([]);
  await page.evaluate(() => {
    const note = document.querySelector('.prose .margin-note');
    if (note === null) throw new Error('no note');
    const over = document.createElement('div');
    over.className = 'over';
    note.closest('.prose')?.append(over);
    const { left, top } = note.getBoundingClientRect();
    const place = { position: 'fixed', left: `${left}px`, top: `${top}px` };
    Object.assign(over.style, { ...place, width: '9rem', height: '3rem' });
  });
  expect((await overlappedNotes(page)).join(' ')).toContain('div.over');
});

test('a page that does not exist is answered with a way back', async ({ page }) => {
  const response = await page.goto('/no/such/page/');
  expect(response?.status()).toBe(404);
  await expect(page.locator('main a[href="/"], main a[href="/contents/"]').first()).toBeVisible();
});
