// What the film page says before it saves, and the copy by command where lines are short.
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test, type Locator } from '@playwright/test';
import { pictureChecksums, streamFacts } from '../tools/coded-clips.ts';
import { demoPath, demoTruths } from '../tools/demo-recordings/demo-readings.ts';
import { readFile, taken, untilSaid } from './recording-sheet.ts';
import { runAsPasted, runFfmpeg, runsWholeChain } from '../tools/ffmpeg.ts';

test.skip(!runsWholeChain, 'SKIPPED: needs ffmpeg 5 or later, with ffprobe');
test.describe.configure({ timeout: 120_000 });
const expectSoon = expect.configure({ timeout: 60_000 });

const [, film] = demoTruths();
const FILM = '/file/whole-frames/';
/** Characters in one line of the Windows command prompt (from memory). */
const LONGEST_WINDOWS_LINE = 8191;

let folder: string;
test.beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'recording-saving-'));
});
test.afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

/** The demo with every picture alone, so many times over. */
function writeAlone(name: string, times: number, ...options: readonly string[]): string {
  const path = join(folder, name);
  const coder = ['-an', '-c:v', 'libx264', '-preset', 'ultrafast', '-qp', '22', '-g', '1'];
  const source = ['-stream_loop', String(times - 1), '-i', demoPath(film)];
  runFfmpeg([...source, ...options, ...coder, path]);
  return path;
}

/** More film frames than a Windows line can name. */
const writeLongFilm = (name: string): string => writeAlone(name, 3);

const sizeOf = async (sheet: Locator, kind: 'copy' | 'watch'): Promise<string> =>
  sheet.locator(`[data-size="${kind}"]`).innerText();

/** The size in words that tell about how many megabytes, or for a small file bytes. */
function aboutBytes(words: string): number {
  const [, number = '', unit] = /about ([\d.\s]*\d)\s+(MB|B)/u.exec(words) ?? [];
  expect(number, words).not.toBe('');
  return Number(number.replaceAll(/\s/gu, '')) * (unit === 'MB' ? 1e6 : 1);
}

/** Runs a batch file as the command prompt does: line by line, to the first that fails. */
function runBatchFile(text: string): void {
  const lines = text.trimEnd().split('\r\n');
  expect(lines[0]).toBe('@echo off');
  let list = '';
  for (const line of lines.slice(1)) {
    const [, arrow, file, said] = /^(>>?)(\S+) echo (.*)$/u.exec(line) ?? [];
    if (file !== undefined) {
      list = arrow === '>' ? `${said}\r\n` : `${list}${said}\r\n`;
      writeFileSync(join(folder, file), list);
      continue;
    }
    // What a batch file would read anything into stands in none of them.
    expect(line).not.toMatch(/[%^!&<>]/u);
    expect(line).toMatch(/^ffmpeg .* \|\| exit \/b 1$/u);
    const { status, stderr } = runAsPasted(folder, line.replace(/ \|\| exit \/b 1$/u, ''));
    expect(status, stderr).toBe(0);
  }
}

test('tells the size of the copy to the byte before it is made, and of the copy to watch about', async ({
  page,
}) => {
  const path = writeAlone('recording.mp4', 1, '-t', '5');
  const sheet = await readFile(page, FILM, path);
  await expectSoon(sheet.locator('[data-size="copy"]')).toContainText('exactly');
  const promised = Number(
    /exactly ([\d,]+) bytes/u.exec(await sizeOf(sheet, 'copy'))![1]!.replaceAll(',', ''),
  );
  await sheet.getByRole('button', { name: 'Copy the kept frames unchanged' }).click();
  await untilSaid(sheet.locator('p'), 'Ready, and read again');
  const link = sheet.getByRole('link', { name: 'Download film-copied.mp4' });
  const saved = join(folder, 'saved.mp4');
  await (await taken(page, link)).saveAs(saved);
  expect(statSync(saved).size).toBe(promised);

  const about = aboutBytes(await sizeOf(sheet, 'watch'));
  await sheet.getByRole('button', { name: 'Make a copy to watch' }).click();
  await untilSaid(sheet.locator('p'), 'to watch, not for the archive');
  const watched = join(folder, 'watched');
  await (await taken(page, sheet.getByRole('link', { name: 'Download viewing.' }))).saveAs(watched);
  expect(statSync(watched).size).toBeLessThan(1.5 * about);
  expect(statSync(watched).size).toBeGreaterThan(0.2 * about);
});

test('prints no line that Windows cuts off, and its parts make the same film @long', async ({
  page,
}) => {
  const path = writeLongFilm('recording.mov');
  const sheet = await readFile(page, FILM, path);
  await sheet.getByRole('button', { name: 'Copy the kept frames unchanged' }).click();
  await untilSaid(sheet.locator('p'), 'Ready, and read again');
  const saved = join(folder, 'saved.mov');
  const link = sheet.getByRole('link', { name: 'Download film-copied.mov' });
  await (await taken(page, link)).saveAs(saved);
  const commands = sheet.getByRole('group', { name: 'The same copy by command' });
  const batch = await taken(page, commands.getByRole('button', { name: 'copy-film.cmd' }));
  const text = readFileSync(await batch.path(), 'utf8');
  const lines = text.split('\r\n');
  expect(lines.filter((line) => line.startsWith('ffmpeg')).length).toBeGreaterThanOrEqual(3);
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(LONGEST_WINDOWS_LINE);
  runBatchFile(text);
  const kept = pictureChecksums(saved);
  expect(kept.length).toBeGreaterThan(400);
  expect(pictureChecksums(join(folder, 'film-copied.mov'))).toEqual(kept);
  expect(streamFacts(join(folder, 'film-copied.mov'))['avg_frame_rate']).toBe('18/1');

  // Where a line is long enough, one command does it.
  rmSync(join(folder, 'film-copied.mov'));
  runAsPasted(folder, await commands.locator('pre').innerText());
  expect(pictureChecksums(join(folder, 'film-copied.mov'))).toEqual(kept);
});

test('says beforehand why a recording cannot be copied unchanged, and about how large Matroska gets @long', async ({
  page,
}) => {
  const grouped = await readFile(page, FILM, demoPath(film));
  await expectSoon(grouped.locator('[data-size="copy"]')).toContainText('stand alone');
  expect(await sizeOf(grouped, 'copy')).toContain('This cannot be made.');
  await expect(
    grouped.getByRole('button', { name: 'Copy the kept frames unchanged' }),
  ).toBeDisabled();

  const sheet = await readFile(page, FILM, writeLongFilm('recording.mkv'));
  await expectSoon(sheet.locator('[data-size="copy"]')).toContainText('about');
  const about = aboutBytes(await sizeOf(sheet, 'copy'));
  await sheet.getByRole('button', { name: 'Copy the kept frames unchanged' }).click();
  await untilSaid(sheet.locator('p'), 'Ready, and read again');
  const saved = join(folder, 'saved.mp4');
  const link = sheet.getByRole('link', { name: 'Download film-copied.mp4' });
  await (await taken(page, link)).saveAs(saved);
  expect(Math.abs(statSync(saved).size / about - 1)).toBeLessThan(0.2);
});
