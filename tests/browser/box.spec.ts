import { expect, test, type Locator, type Page } from '@playwright/test';
import { wakeForm } from './live-forms.ts';
import { printedText } from './printed-text.ts';
import { axeViolations } from './sweep/axe.ts';

// A whole job on the page of the box: twelve reels of the rowing club from the counter to the papers.

/** As copied from a spreadsheet: number, words on the box, gauge, reel size, measured, rate, sound. */
const TWELVE = [
  ['r001', 'Regatta 1974', 'Super 8', '50 ft', '', '18', 'silent'],
  ['r002', 'Regatta 1975, "finals"', 'S8', '50 ft', '', '18', 'silent'],
  ['r003', 'Boathouse roof', 'Super 8', '200 ft', '', '18', 'silent'],
  ['r004', 'Summer, vinegar smell', 'Super 8', '200 ft', '', '18', 'silent'],
  ['r005', 'Winter training', 'Super 8', '200 ft', '', '18', 'silent'],
  ['r006', 'Shrunken, from the loft', 'Super 8', '50 ft', '', '18', 'silent'],
  ['r007', 'Regatta 1974, sound?', 'Super 8', '200 ft', '60.4 m', '24', 'stripe'],
  ['r008', 'Grandfather rows', 'Std 8', '50 ft', '', '16', 'silent'],
  ['r009', 'Launch of the eight', '9.5 mm', '', '30', '16', 'silent'],
  ['r010', 'Club film', '16 mm', '100 ft', '', '24', 'optical'],
  ['r011', 'Old tin, brown powder', '16 mm', '100 ft', '', '', ''],
  ['r012', 'Cup and speeches', 'Super 8', '50 ft', '', '18', 'silent'],
];

const BENCH = {
  version: 2,
  benches: [
    {
      name: 'Club bench',
      entries: {
        'projector.gauge': 'super-8',
        'projector.filmFps': '18',
        'projector.flashesPerFrame': '3',
        'camera.cameraFps': '25',
        'times.handlingSeconds': '15',
        'times.afterWorkSeconds': '20',
        'prices.perReel': '4.00',
        'prices.perMinute': '1.20',
        'prices.minuteRule': 'begun',
        'prices.fixed': '10',
      },
    },
  ],
  currentBench: 0,
  reels: [],
  currentReel: 0,
  region: '25/50',
  units: 'metric',
};

async function openBox(page: Page): Promise<void> {
  await page.goto('/box/');
  await expect(page.locator('box-form')).toHaveAttribute('data-ready', 'true');
}

async function withBench(page: Page): Promise<void> {
  await page.goto('/box/');
  await page.evaluate((bench) => {
    localStorage.setItem('bench', bench);
  }, JSON.stringify(BENCH));
  await openBox(page);
}

const cell = (page: Page, label: string, row: number): Locator =>
  page.getByLabel(`${label}, row ${row}`, { exact: true });

async function paste(field: Locator, text: string): Promise<void> {
  await field.evaluate((input, block) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', block);
    const event = new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true });
    input.dispatchEvent(event);
  }, text);
}

/** A job with the twelve reels, pasted. */
async function fillJob(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'New job' }).click();
  await page.getByLabel('Job no.').fill('2026-014');
  await page.getByLabel('Customer', { exact: true }).fill('Millbrook Rowing Club');
  await paste(cell(page, 'No.', 1), TWELVE.map((row) => row.join('\t')).join('\n'));
  await expect(cell(page, 'Words on the box', 12)).toHaveValue('Cup and speeches');
}

async function openReel(page: Page, number: string): Promise<void> {
  await page.getByRole('button', { name: `Open reel ${number}` }).click();
  await expect(page.locator('.reel-panel h2')).toContainText(number);
}

async function choose(page: Page, label: string, option: string): Promise<void> {
  await page.locator('.reel-panel').getByLabel(label, { exact: true }).selectOption(option);
}

const said = (page: Page): Locator => page.locator('.bench-said');

async function paper(page: Page, name: string): Promise<string> {
  await page.getByRole('button', { name, exact: true }).click();
  const sheets = await printedText(page);
  await page.getByRole('button', { name: 'Put it away' }).click();
  // A long name is broken at its hyphens.
  return sheets.join(' ').replaceAll(/(?<=\w-) (?=\w+_t01)/gu, '');
}

test('twelve mixed reels go from the counter to the return note', async ({ page }) => {
  test.slow();
  await withBench(page);
  await fillJob(page);

  // What does not fit the projector is refused in words, where it stands and when it is wanted.
  await expect(page.locator('.reel-said')).toHaveCount(4);
  await page.getByRole('button', { name: 'Put on the table (reel r008)' }).click();
  await expect(said(page)).toContainText('Do not thread a Standard 8 reel on a Super 8 projector');
  expect(await page.evaluate(() => localStorage.getItem('table-reel'))).toBeNull();

  // Totals, by hand: feet × frames to the foot.
  const totals = page.locator('.box-totals');
  await expect(totals).toContainText('12');
  await expect(totals).toContainText('10 reels counted by the size of the reel, not measured');
  await expect(totals).toContainText('1 reel without a native rate');
  await expect(totals).not.toContainText('To pay');
  await totals.getByRole('checkbox').check();
  await expect(totals).toContainText('To pay, by your price list');
  await totals.getByRole('checkbox').uncheck();

  // The suspect: everything stops, at once.
  await openReel(page, 'r011');
  await choose(page, 'Base', 'nitrate-suspected');
  await choose(page, 'Powder and sticking', 'brown-powder');
  await page.locator('.reel-panel').getByLabel('State').selectOption('judged');
  await expect(page.locator('.reel-way [role="alert"]')).toContainText('it may be nitrate');
  await page.locator('.reel-panel').getByLabel('State').selectOption('quarantine');
  await expect(page.locator('tr[data-reel="r11"] .reel-state')).toContainText('quarantine');
  await page.getByRole('button', { name: 'Put on the table (reel r011)' }).click();
  await expect(said(page)).toContainText('not put on the table');
  await expect(said(page).getByRole('button')).toHaveCount(0);

  // Vinegar and shrinkage: not here.
  await openReel(page, 'r004');
  await choose(page, 'Smell', 'vinegar');
  await choose(page, 'Acid level', 'level-2');
  await page.locator('.reel-panel').getByLabel('State').selectOption('referred');
  await openReel(page, 'r006');
  await page.locator('.reel-panel').getByLabel('Shrinkage, at most').fill('1.4 %');
  await expect(page.locator('tr[data-reel="r6"] .reel-verdict')).not.toHaveText('may run');

  // The sound reel on the table: a sheet of another chapter opens with its numbers and says so.
  await page.getByRole('button', { name: 'Put on the table (reel r007)' }).click();
  await expect(said(page)).toContainText('is on the table');
  await page.goto('/reel/length/');
  const length = page.locator('worksheet-form[data-instance="film-length"]');
  await wakeForm(length);
  await expect(length.locator('.origin-status')).toContainText(
    'Showing the reel on the table, r007 Regatta 1974, sound?',
  );
  await expect(length.getByLabel('Length', { exact: true })).toHaveValue('60.4 m');
  // One press to the book's numbers, and back.
  await length.getByRole('button', { name: 'Book’s numbers' }).click();
  await expect(length.getByLabel('Length', { exact: true })).not.toHaveValue('60.4 m');
  await length.getByRole('button', { name: 'Your reel' }).click();
  await expect(length.getByLabel('Length', { exact: true })).toHaveValue('60.4 m');
});

/** What is found, done and written of a reel that goes the whole way, by the keys of its fields. */
const WHOLE_WAY: Readonly<Record<string, string>> = {
  'finding.year': '1974',
  'finding.smell': 'none',
  'finding.deposit': 'none',
  'finding.mould': 'none',
  'finding.warp': 'flat',
  'finding.base': 'acetate',
  'finding.brittleness': 'supple',
  'finding.acidLevel': 'level-0',
  'finding.shrinkagePercent': '0.1 %',
  'finding.perforations': 'none',
  'finding.splices': 'sound',
  'finding.stripe': 'none',
  isThreadReady: 'yes',
  isCameraProven: 'yes',
  areDoubtsExplained: 'yes',
  fileSets: '3',
  areHashesRead: 'yes',
  who: 'AT',
};

/** The twelve again as a list with headings, as a workshop keeps it: what was found on each, and what was done. */
function wholeJobAsCsv(): string {
  const COUNTER = ['number', 'boxWords', 'gauge', 'size', 'lengthMetres', 'nativeFps', 'sound'];
  const others: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    r004: {
      'finding.smell': 'vinegar',
      'finding.acidLevel': 'level-2',
      refusal: 'Acid level 2',
      framesFound: '',
    },
    r006: {
      'finding.shrinkagePercent': '1.4 %',
      refusal: 'Shrunken by 1.4 %',
      framesFound: '',
    },
    r007: {
      'finding.stripe': 'striped',
      filmFps: '16.67',
      framesExpected: '14323',
      framesFound: '14321',
      framesLost: '2',
      match: '1/50 s, one flash',
      done: 'One splice remade',
    },
    r011: {
      'finding.base': 'nitrate-suspected',
      'finding.deposit': 'brown-powder',
      framesFound: '',
    },
  };
  const rows = TWELVE.map((row) => {
    const number = row[0] ?? '';
    return {
      ...Object.fromEntries(COUNTER.map((field, at) => [field, row[at] ?? ''])),
      ...WHOLE_WAY,
      framesExpected: '3600',
      framesFound: '3600',
      ...(number === 'r011' ? { gauge: '16 mm', sound: 'silent', nativeFps: '24' } : {}),
      ...others[number],
    } as Readonly<Record<string, string>>;
  });
  const fields = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  const quoted = (text = ''): string => `"${text.replaceAll('"', '""')}"`;
  return [fields, ...rows.map((row) => fields.map((field) => row[field] ?? ''))]
    .map((cells) => cells.map(quoted).join(','))
    .join('\r\n');
}

/** Another machine of the workshop: the same bench, threaded for another gauge. */
async function threadFor(page: Page, gauge: string): Promise<void> {
  const [bench] = BENCH.benches;
  const entries = { ...bench?.entries, 'projector.gauge': gauge };
  await page.evaluate(
    (text) => {
      localStorage.setItem('bench', text);
    },
    JSON.stringify({ ...BENCH, benches: [{ ...bench, entries }] }),
  );
  await openBox(page);
}

test('all twelve are led to the handover, and the papers of the end balance', async ({ page }) => {
  test.slow();
  await withBench(page);
  await page.getByRole('button', { name: 'New job' }).click();
  await page.getByLabel('Job no.').fill('2026-014');
  await page.getByLabel('Customer', { exact: true }).fill('Millbrook Rowing Club');
  await page.getByLabel('Add reels from CSV').setInputFiles({
    name: 'reels.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(wholeJobAsCsv()),
  });
  await expect(page.locator('tr[data-reel] td.reel-number input')).toHaveCount(12);

  const panel = page.locator('.reel-panel');
  const state = (number: string): Locator =>
    page
      .locator('tr[data-reel]', { has: page.getByRole('button', { name: `Open reel ${number}` }) })
      .locator('.reel-state');
  const move = async (to: string): Promise<void> => {
    await panel.getByLabel('State').selectOption(to);
  };
  const alert = page.locator('.reel-way [role="alert"]');

  const openAboutTheJob = async (): Promise<void> => {
    for (const summary of await page.locator('.box-job summary').all()) await summary.click();
  };
  await openAboutTheJob();

  // Nobody has signed yet: the can stays shut.
  await openReel(page, 'r001');
  await move('judged');
  await expect(alert).toContainText('nobody has agreed that its can is opened');
  for (const act of ['Open the can', 'Clean it dry', 'Run it through the projector'])
    await page
      .locator('.box-job')
      .getByLabel(new RegExp(`^${act}`, 'u'))
      .selectOption('yes');
  await page
    .locator('.box-job')
    .getByLabel(/^Mend splices/u)
    .selectOption('ask');

  // One reel goes station by station; it is mended only once its owner has said so on the telephone.
  await openReel(page, 'r007');
  for (const station of ['named', 'judged', 'agreed']) await move(station);
  await move('mended');
  await expect(alert).toContainText('nobody has agreed that it is mended');
  await panel.locator('summary', { hasText: 'What its owner allows' }).click();
  await panel.getByLabel(/^Consent: mend/u).selectOption('yes');
  for (const station of ['mended', 'cleaned', 'ready', 'recorded', 'proven', 'mastered', 'copied'])
    await move(station);
  await expect(state('r007')).toHaveText('copied to watch');
  for (const station of ['checked', 'stored', 'returned']) await move(station);

  // Those that are not for this bench stand aside, and are stopped where they should be.
  await openReel(page, 'r011');
  await move('judged');
  await expect(alert).toContainText('it may be nitrate');
  await move('quarantine');
  await openReel(page, 'r004');
  await move('ready');
  await expect(alert).toContainText('acid level 2 or more');
  await move('referred');
  await openReel(page, 'r006');
  await move('ready');
  await expect(alert).toContainText('the triage does not let it run');
  await move('refused');
  for (const number of ['r001', 'r002', 'r003', 'r005', 'r012', 'r004', 'r006']) {
    await openReel(page, number);
    await move(['r004', 'r006'].includes(number) ? 'returned' : 'stored');
    await move('returned');
    await expect(state(number)).toHaveText('returned');
  }

  // Standard 8, 9.5 and 16 mm go on the machines that are made for them, and on no other.
  for (const [number, gauge] of [
    ['r008', '8mm-type-r'],
    ['r009', '9.5mm'],
    ['r010', '16mm'],
  ] as const) {
    await openReel(page, number);
    await move('recorded');
    await expect(alert).toContainText('its gauge is not the gauge that the projector runs');
    await threadFor(page, gauge);
    await openReel(page, number);
    await move('stored');
    await move('returned');
    await expect(state(number)).toHaveText('returned');
  }

  await openAboutTheJob();

  // Eleven of twelve: nobody signs before the twelfth is found.
  await openReel(page, 'r007');
  await move('closed');
  await expect(alert).toContainText('the list of reels is not balanced');
  await page.locator('.box-job').getByLabel('Reels elsewhere').fill('1');
  await move('closed');
  await expect(alert).not.toContainText('not balanced');
  await expect(alert).toContainText('the return note is not signed');
  await page.locator('.box-job').getByLabel('Return note signed').selectOption('yes');
  await move('closed');
  await expect(state('r007')).toHaveText('closed');

  const note = await paper(page, 'Return note');
  expect(note).toContain('in = back + elsewhere');
  expect(note).toMatch(/12 11 1 in/u);
  // 14,321 frames at 24: 596.7 s. 3,600 at 18: 200 s.
  expect(note).toMatch(/j2026-014-r007a_undated_regatta-1974-sound_t01_view; lasts 9\smin\s57\ss/u);
  expect(note).toMatch(/lasts 3\smin\s20\ss/u);
  expect(note).toContain('One splice remade; 2 pictures lost');
  expect(note).toContain('Acid level 2');
  expect(note).toContain('Shrunken by 1.4 %');
  expect(note).toContain('quarantine');
  // No file of a reel that was never run.
  expect(note).not.toMatch(/r0(?:04|06|11)a_/u);
  expect(note).not.toMatch(/To pay|4\.00/u);

  const jobSheet = await paper(page, 'Job sheets');
  for (const words of [
    '16.67',
    '1/50 s, one flash',
    '14323',
    '14321',
    'checked by a second person',
  ])
    expect(jobSheet).toContain(words);
  expect(jobSheet).not.toContain('NOT LOOKED AT');

  const condition = await paper(page, 'Condition reports');
  expect(condition).toContain('striped');
  expect(condition).toContain('0.1 %');

  const consent = await paper(page, 'Consent');
  expect(consent).toContain('r007');
  expect(consent).toMatch(/mend splices and holes[^☐☒]*☐ yes ☐ no ☒ ask first/u);
});

test('the reel on the table opens every sheet, and answers go back into it', async ({ page }) => {
  await withBench(page);
  await fillJob(page);
  await page.getByRole('button', { name: 'Put on the table (reel r007)' }).click();
  await expect(page.locator('[data-bench-name]')).toContainText('r007');

  await page.goto('/gate/matching/');
  const match = page.locator('worksheet-form[data-instance="flash-match"]');
  await wakeForm(match);
  await expect(match.locator('.origin-status')).toContainText('Club bench');

  await page.goto('/gate/measuring-speed/');
  const sheet = page.locator('worksheet-form[data-id="stopwatch"]').first();
  await wakeForm(sheet);
  await expect(sheet.locator('.origin-status')).toContainText('r007 Regatta 1974, sound?');
  await expect(sheet.getByLabel('Gauge')).toHaveValue('super-8');
  const take = sheet.locator('.take-back').getByRole('button', { name: /^Film rate measured/u });
  await take.click();
  await expect(sheet.locator('.take-back')).toContainText('Kept with r007');
  const rate = await page.evaluate(() => localStorage.getItem('table-reel') ?? '');
  expect(rate).toMatch(/"projector\.filmFps":"[\d.]+ frames\/s"/u);

  // Now the matching sheet opens with the rate of this reel, not that of the bench.
  await page.goto('/gate/matching/');
  await wakeForm(match);
  await expect(match.locator('.origin-status')).toContainText('r007');
  await expect(match.getByLabel('Film rate', { exact: true })).toHaveValue(/frames\/s$/u);

  // Nothing was looked at on it, and every sheet says so.
  await expect(match.locator('.origin')).toContainText('✕');

  await openBox(page);
  await openReel(page, 'r007');
  await page.locator('.reel-panel summary', { hasText: 'The run' }).click();
  await expect(page.locator('.reel-panel').getByLabel('Film rate measured')).toHaveValue(/\d/u);
  await page.getByRole('button', { name: 'On the table (reel r007)' }).click();
  expect(await page.evaluate(() => localStorage.getItem('table-reel'))).toBeNull();
});

test('the papers say what the job says, and nothing of the workshop’s own', async ({ page }) => {
  test.slow();
  await withBench(page);
  await fillJob(page);
  await openReel(page, 'r011');
  await page.locator('.reel-panel').getByLabel('State').selectOption('quarantine');
  await page.locator('.reel-panel summary', { hasText: 'And' }).click();
  await page
    .locator('.reel-panel')
    .getByLabel('Not run, why')
    .fill('May be nitrate: at the archive');
  await page.locator('.reel-panel').getByLabel('Your time on it').fill('35');
  await page.locator('.reel-panel').getByLabel('Notes').fill('Cousin of the mayor');

  const receipt = await paper(page, 'Receipt');
  for (const [number, words] of TWELVE) {
    expect(receipt).toContain(number);
    expect(receipt).toContain(words);
  }
  expect(receipt).toContain('12 reels, in words twelve');
  expect(receipt).toContain('checked by someone who knows your law');
  // The page itself is not on the paper.
  expect(receipt).not.toContain('Keep the box');

  const consent = await paper(page, 'Consent');
  expect(consent).toContain('owning a reel is not owning the rights');
  expect(consent).toContain('run it through the projector');

  const condition = await paper(page, 'Condition reports');
  expect(condition).toContain('Roll from the side, with a scale');
  expect(condition).toContain('1 of 1');
  // The paper bears the workshop's name, not that of the book.
  expect(condition).not.toContain('From Gate to File');
  expect(condition).toContain('☒');

  const jobSheet = await paper(page, 'Job sheets');
  expect(jobSheet).toContain('NOT LOOKED AT');
  expect(jobSheet).toContain('j2026-014-r011a_undated_old-tin-brown-powder_t01_master');

  const note = await paper(page, 'Return note');
  expect(note).toContain('DOES NOT BALANCE');
  expect(note).toContain('May be nitrate: at the archive');

  const labels = await paper(page, 'Labels');
  expect(labels).toContain('Drive 3 of 3');
  expect(labels).toContain('Do not tape shut');

  for (const text of [receipt, consent, condition, note, labels]) {
    expect(text).not.toMatch(/To pay|35 min|Cousin of the mayor|4\.00/u);
  }

  // By hand, begun minutes: 4 × 4 (50 ft), 3 × 14 (200 ft) at 18, 10 (60.4 m at 24), 5 (Standard 8),
  // 5 (9.5 mm), 3 (16 mm): 81. Eleven reels, the twelfth is in quarantine.
  const quotation = await paper(page, 'Quotation');
  expect(quotation).toContain('81');
  expect(quotation).toContain((11 * 4 + 81 * 1.2 + 10).toFixed(2));
  expect(quotation).toContain('Not in this offer');

  // All reels at once, letter size.
  await page.getByRole('button', { name: 'Open reel r011' }).click();
  await page.getByLabel('Paper size').selectOption('letter');
  await page.getByRole('button', { name: 'Condition reports' }).click();
  const sheets = await printedText(page);
  expect(sheets.length).toBeGreaterThanOrEqual(12);
});

test('the table is typed into by keys alone, and comes back after a reload @phone-long', async ({
  page,
}) => {
  await openBox(page);
  await page.getByRole('button', { name: 'New job' }).click();
  await cell(page, 'Words on the box', 1).focus();
  await page.keyboard.type('Regatta');
  await page.keyboard.press('ArrowRight');
  await expect(cell(page, 'Gauge', 1)).toBeFocused();
  await page.keyboard.type('8 mm');
  await page.keyboard.press('Enter');
  await expect(page.locator('.reel-said')).toContainText('Standard 8 or Super 8?');
  await expect(cell(page, 'Words on the box', 2)).toBeFocused();
  await page.keyboard.type('Boathouse');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.type('s8');
  await page.keyboard.press('ArrowDown');
  await expect(cell(page, 'Gauge', 1)).toHaveValue('Super 8');
  await expect(cell(page, 'No.', 2)).toHaveValue('r002');
  await page.reload();
  await expect(page.locator('box-form')).toHaveAttribute('data-ready', 'true');
  await expect(cell(page, 'Words on the box', 2)).toHaveValue('Boathouse');
  expect(await axeViolations(page)).toEqual([]);
});

test('a file comes in with a question for each job that is here already', async ({ page }) => {
  await openBox(page);
  await fillJob(page);
  const stored = (await page.evaluate(() => localStorage.getItem('box'))) ?? '';
  await page.getByRole('button', { name: 'Remove this job' }).click();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(cell(page, 'Words on the box', 1)).toHaveValue('Regatta 1974');
  const open = async (): Promise<void> => {
    await page.getByLabel('Open a box file').setInputFiles({
      name: 'box.json',
      mimeType: 'application/json',
      buffer: Buffer.from(stored.replace('Regatta 1974', 'Regatta of the file')),
    });
  };
  await open();
  await page.getByLabel('Keep both').check();
  await page.getByRole('button', { name: 'Import them' }).click();
  await expect(page.locator('#box-job option')).toHaveCount(2);
  await open();
  await page.getByLabel('Replace yours').check();
  await page.getByRole('button', { name: 'Import them' }).click();
  await expect(page.locator('#box-job option')).toHaveCount(2);
  await expect(cell(page, 'Words on the box', 1)).toHaveValue('Regatta of the file');
  await page.getByLabel('Open a box file').setInputFiles({
    name: 'x.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"version":9,"jobs":[]}'),
  });
  await expect(said(page)).toContainText('later edition');
});

test('five hundred reels keep what is typed, and lines out of sight are not drawn', async ({
  page,
}) => {
  await openBox(page);
  await page.getByRole('button', { name: 'New job' }).click();
  const rows = Array.from(
    { length: 500 },
    (_, index) => `x${index}\tReel ${index}\tS8\t200 ft\t\t18\t`,
  );
  await paste(cell(page, 'No.', 1), rows.join('\n'));
  await expect(cell(page, 'Words on the box', 500)).toHaveValue('Reel 499');
  const field = page.locator('[data-row="249"][data-column="1"]');
  await field.press('End');
  await field.pressSequentially('aaaaaaaaaaaaaaaaaaaa');
  await expect(field).toHaveValue('Reel 249aaaaaaaaaaaaaaaaaaaa');
  // What a letter costs is printed by `npm run bench -- box`; here, that most lines cost nothing.
  const drawn = await page.evaluate(
    () =>
      [...document.querySelectorAll('[data-column="1"]')].filter((each) =>
        each.checkVisibility({ contentVisibilityAuto: true }),
      ).length,
  );
  expect(drawn).toBeGreaterThan(5);
  expect(drawn).toBeLessThan(150);
});
