// The sheets that read a recording, on the built pages: the demo recordings from press to result, and
// what is said of a file that cannot be read.
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test, type Locator, type Page } from '@playwright/test';
import { PICTURE_CHECKSUMS_COMMAND } from '../../src/core/file/viewing-commands.ts';
import { pictureChecksums, streamFacts } from '../tools/coded-clips.ts';
import { runAsPasted, runFfmpeg, runsWholeChain } from '../tools/ffmpeg.ts';
import { demoPath, demoTruths } from '../tools/demo-recordings/demo-readings.ts';
import {
  answerTo,
  readAnother,
  readDemo,
  taken,
  takenText,
  untilRead,
  untilSaid,
} from './recording-sheet.ts';
import { differing } from '../tools/differing.ts';
import { isAsked, isShortRun } from './short-run.ts';
import { axeViolations } from './sweep/axe.ts';

// Reading takes its time where several pages read at once.
test.describe.configure({ timeout: 120_000 });
const expectSoon = expect.configure({ timeout: 60_000 });

const [gateTruth, filmTruth] = demoTruths();
const GATE = '/gate/measuring-speed/';
const FILM = '/file/whole-frames/';
const WITHOUT_FFMPEG = 'SKIPPED: needs ffmpeg 5 or later, with ffprobe';

/** The number before “±” and the one after it. */
function valueAndError(text: string): readonly [number, number] {
  const [, value = '', error = ''] = /([\d.]+) ± ([\d.]+)/u.exec(text) ?? [];
  return [Number(value), Number(error)];
}

async function expectNoSidewaysScroll(page: Page): Promise<void> {
  const sideways = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(sideways).toBe(0);
}

/** No reader is shut out of a sheet that has read something; the sheets of both kinds and of ties take turns. */
async function expectSheetIsAccessible(page: Page, index: number): Promise<void> {
  if (!isAsked(index, 3)) return;
  expect(await axeViolations(page, { within: 'recording-sheet' })).toEqual([]);
}

/** A kept frame stands between its neighbours, and plays on a press. */
async function expectPictures(sheet: Locator): Promise<void> {
  await sheet.getByRole('button', { name: 'Look at film frame 3' }).click();
  await sheet.getByRole('button', { name: 'Show its pictures' }).click();
  const strip = sheet.locator('.recording-strip canvas');
  await expect(strip).toHaveCount(3);
  await expect(strip.nth(1)).toHaveAccessibleName('Camera frame 10, kept');
  for (const at of [0, 1, 2]) await expect(strip.nth(at)).toHaveAttribute('width', '320');
  // The middle picture is no grey field: it holds what the demo shows.
  const spread = await strip.nth(1).evaluate((canvas: HTMLCanvasElement) => {
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
    return (
      Math.max(...data.filter((_, at) => at % 4 === 1)) -
      Math.min(...data.filter((_, at) => at % 4 === 1))
    );
  });
  expect(spread).toBeGreaterThan(80);
  await expect(sheet.locator('.recording-film')).toBeHidden();
  await sheet.getByRole('button', { name: 'Play from here' }).click();
  await expect(sheet.locator('.recording-film')).toHaveAttribute('width', '320');
  await sheet.getByRole('button', { name: 'Stop', exact: true }).click();
  await expect(sheet.locator('.recording-film')).toBeHidden();
}

test.describe('a recording of the empty gate', () => {
  test('is read from the demo, and goes into the bench @phone-long', async ({ page }) => {
    const loaded: string[] = [];
    page.on('request', (request) => loaded.push(request.url()));
    await page.goto(GATE);
    await page.waitForLoadState('load');
    const before = loaded.filter((url) => /recording\S*\.(?:js|mp4)|worker|mediabunny/u.test(url));
    expect(before).toEqual([]);
    const printed = await page.locator('recording-sheet .recording-answers').innerText();

    const sheet = await readDemo(page, GATE);
    // What stood there before any script is what the press gives.
    expect.soft(await sheet.locator('.recording-answers').innerText()).toBe(printed);
    const [filmFps, errorFps] = valueAndError(await answerTo(sheet, 'Film rate').innerText());
    expect(Math.abs(filmFps - gateTruth.filmFps)).toBeLessThanOrEqual(errorFps);
    expect(errorFps).toBeLessThan(0.0003 * filmFps);
    const [readout, readoutError] = valueAndError(
      await answerTo(sheet, 'Readout time').innerText(),
    );
    expect(Math.abs(readout - 1000 * gateTruth.readoutSeconds)).toBeLessThanOrEqual(readoutError);
    // Sixteen milliseconds of readout, three flashes a film frame.
    await expectSoon(answerTo(sheet, 'Flash rate')).toHaveText('53.64 Hz');
    await expectSoon(answerTo(sheet, 'Beat')).toContainText('3.64 Hz, the flash rate above');
    await expect(sheet.getByRole('table')).toContainText('exposure and shutter do not match');
    await expectSoon(sheet.locator('.verdict')).toContainText('The light ripples by');
    await expect(sheet.locator('svg')).toHaveAccessibleName(/Film rate over the clip/u);

    await expectSheetIsAccessible(page, 0);
    await expectNoSidewaysScroll(page);

    await sheet.getByRole('button', { name: 'Take film rate and readout time' }).click();
    await expect(sheet.getByText('are in your bench')).toBeVisible();
    const stored = await page.evaluate(() => localStorage.getItem('bench') ?? '');
    expect(stored).toContain('"projector.filmFps":"17.879');
    expect(stored).toMatch(/"camera\.readoutSeconds":"(?:15\.9\d*|16(?:\.0\d*)?) ms"/u);

    await test.step('three seconds of it are too short, and are said to be', async () => {
      await sheet.getByLabel('Read from').fill('7');
      // Other numbers than those it was read with: nothing old stands unmarked.
      await expect(sheet.getByText('worked out with other numbers')).toBeVisible();
      await sheet.getByRole('button', { name: 'Work it out with these' }).click();
      await untilSaid(sheet.locator('.verdict'), 'too short');
      await expect(sheet.getByText('Record at least ten seconds')).toBeVisible();
    });
  });

  test('can be dropped, stopped and refused with what to do, and the page goes on', async ({
    page,
  }) => {
    await page.goto(GATE);
    const sheet = page.locator('recording-sheet');
    const bytes = readFileSync(demoPath(gateTruth)).toString('base64');
    const carried = await page.evaluateHandle((text) => {
      const data = new DataTransfer();
      const raw = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
      data.items.add(new File([raw], 'dropped.mp4', { type: 'video/mp4' }));
      return data;
    }, bytes);
    await test.step('dropped before the script of the sheet has come, and stopped', async () => {
      await sheet.dispatchEvent('drop', { dataTransfer: carried });
      await sheet.dispatchEvent('dragenter', { dataTransfer: carried });
      await sheet.getByRole('button', { name: 'Cancel' }).click();
      await untilSaid(sheet.locator('.verdict'), 'Stopped');
    });
    await test.step('refused with the reason and what to do', async () => {
      const buffer = Buffer.from('no recording');
      const file = { name: 'notes.mp4', mimeType: 'video/mp4', buffer };
      await sheet.locator('input[type=file]').setInputFiles(file);
      await sheet.locator('.verdict.verdict-stop').waitFor({ timeout: 60_000 });
      await expect(sheet.getByText('What to do:')).toBeVisible();
    });
    await test.step('dropped again, and read as far as it goes', async () => {
      await sheet.getByLabel('Read from').fill('7');
      await sheet.dispatchEvent('drop', { dataTransfer: carried });
      await untilSaid(sheet.locator('.verdict'), 'too short');
    });
    // A second reading of all of it: the whole run alone.
    if (isShortRun) return;
    await sheet.getByLabel('Read from').fill('0');
    await sheet.getByRole('button', { name: 'Work it out with these' }).click();
    await untilRead(sheet, 'dropped.mp4');
    await expectSoon(answerTo(sheet, 'Film rate')).toContainText('17.87');
  });
});

test.describe('a recording of film', () => {
  let folder: string;
  test.beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'recording-page-'));
  });
  test.afterEach(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  test('is read from the demo to a keep list that is true, and the master made by its commands is checked @phone-long', async ({
    page,
  }) => {
    await page.goto(FILM);
    const printed = await page.locator('recording-sheet .recording-answers').innerText();
    const sheet = await readDemo(page, FILM);
    // What stood there before any script is what the press gives.
    expect.soft(await sheet.locator('.recording-answers').innerText()).toBe(printed);
    const [filmFps, errorFps] = valueAndError(await answerTo(sheet, 'Film rate, mean').innerText());
    expect(Math.abs(filmFps - filmTruth.filmFps)).toBeLessThanOrEqual(errorFps);

    const csv = await takenText(page, sheet.getByRole('button', { name: 'keep-list.csv' }));
    const [heading, ...lines] = csv.trim().split('\n');
    expect(heading).toBe('film_frame,camera_frame,time,margin,status,same_picture_twice');
    const rows = lines.map((line) => line.split(','));
    const cameraFrames = rows.map(([, cameraFrame]) => Number(cameraFrame));
    // Every film frame once, whole, as the drawing of the demo knows it.
    const shown = cameraFrames.map((frame) => filmTruth.wholeFilmFrames![frame]);
    expect(shown).toEqual(rows.map((_, place) => shown[0]! + place));
    expect(rows.length).toBeGreaterThan(138);
    const times = rows.map(([, , time]) => Number(time));
    const wanted = cameraFrames.map((frame) => frame / filmTruth.cameraFps);
    expect(differing(times, wanted, 5e-6)).toEqual([]);
    await expectSoon(sheet.locator('.verdict')).toContainText(`${rows.length} film frames`);

    const filter = await takenText(page, sheet.getByRole('button', { name: 'keep-filter.txt' }));
    const picked = [...filter.matchAll(/eq\(n,(\d+)\)/gu)].map(([, frame]) => Number(frame));
    expect(picked).toEqual(cameraFrames);
    expect(filter).toContain('settb=1/18');
    await expect(sheet.locator('pre').first()).toContainText('-/filter:v keep-filter.txt -r 18');
    await expect(sheet.locator('pre').nth(1)).toContainText('-filter_script:v keep-filter.txt');

    await expectSheetIsAccessible(page, 1);
    await expectNoSidewaysScroll(page);
    await expectPictures(sheet);

    // The master made by the page’s commands is checked, and a fault in it is found.
    test.skip(!runsWholeChain, WITHOUT_FFMPEG);
    copyFileSync(demoPath(filmTruth), join(folder, 'recording.mov'));
    writeFileSync(join(folder, 'keep-filter.txt'), filter);
    const commands = await sheet.locator('pre').allInnerTexts();
    const isNew = Number(/\d+/u.exec(runFfmpeg(['-version']).toString())?.[0]) >= 7;
    const spelt = isNew ? '-/filter:v' : '-filter_script:v';
    for (const command of [
      commands.find((each) => each.includes(spelt))!,
      commands.find((each) => each.includes('-fps_mode passthrough'))!,
      PICTURE_CHECKSUMS_COMMAND,
    ]) {
      expect(commands).toContain(command);
      runAsPasted(folder, command);
    }
    const lists = ['recording.framemd5', 'film.framemd5'].map((name) => join(folder, name));
    await sheet.getByLabel('Both lists').setInputFiles(lists);
    await untilSaid(sheet.locator('p'), 'holds exactly the 143 listed frames');

    const good = readFileSync(lists[1]!, 'utf8').split('\n');
    const first = good.findIndex((line) => !line.startsWith('#'));
    writeFileSync(lists[1]!, good.filter((_, at) => at !== first + 40).join('\n'));
    await sheet.getByLabel('Both lists').setInputFiles([]);
    await sheet.getByLabel('Both lists').setInputFiles(lists);
    await untilSaid(sheet.locator('p'), 'Missing film frames: 40.');
  });

  test.describe('on real files', () => {
    test.skip(!runsWholeChain, WITHOUT_FFMPEG);

    test('a recording of pictures that stand alone is saved unchanged, any other refused @long', async ({
      page,
    }) => {
      const sheet = await readDemo(page, FILM);
      // Said before anything is pressed, and the press that could only fail is not offered.
      await untilSaid(
        sheet.locator('[data-size="copy"]'),
        'pictures of this recording stand alone',
      );
      const copyUnchanged = sheet.getByRole('button', { name: 'Copy the kept frames unchanged' });
      await expect(copyUnchanged).toBeDisabled();

      const alone = join(folder, 'alone.mp4');
      runFfmpeg([
        '-i',
        demoPath(filmTruth),
        '-c:v',
        'libx264',
        '-qp',
        '18',
        '-g',
        '1',
        '-an',
        alone,
      ]);
      await readAnother(sheet, alone);
      const csv = await takenText(page, sheet.getByRole('button', { name: 'keep-list.csv' }));
      const kept = csv
        .trim()
        .split('\n')
        .slice(1)
        .map((line) => Number(line.split(',')[1]));
      await sheet.getByRole('button', { name: 'Copy the kept frames unchanged' }).click();
      await untilSaid(sheet.locator('p'), `Ready, and read again: ${kept.length} film frames`);
      const link = sheet.getByRole('link', { name: 'Download film-copied.mp4' });
      const download = await taken(page, link);
      const saved = join(folder, 'saved.mp4');
      await download.saveAs(saved);
      const all = pictureChecksums(alone);
      expect(pictureChecksums(saved)).toEqual(kept.map((frame) => all[frame]));
      expect(streamFacts(saved)['avg_frame_rate']).toBe('18/1');
    });

    test('a copy to watch is made, read again, and can be stopped @long', async ({ page }) => {
      const sheet = await readDemo(page, FILM);
      await sheet.getByRole('button', { name: 'Make a copy to watch' }).click();
      await sheet.getByRole('button', { name: 'Cancel saving' }).click();
      await untilSaid(sheet.locator('p'), 'was stopped; what was written is removed');
      await sheet.getByRole('button', { name: 'Make a copy to watch' }).click();
      await untilSaid(sheet.locator('p'), 'to watch, not for the archive');
      const link = sheet.getByRole('link', { name: 'Download viewing.' });
      const download = await taken(page, link);
      const saved = join(folder, download.suggestedFilename());
      await download.saveAs(saved);
      expect(pictureChecksums(saved)).toHaveLength(143);
      expect(streamFacts(saved)['avg_frame_rate']).toBe('18/1');
    });
  });
});
