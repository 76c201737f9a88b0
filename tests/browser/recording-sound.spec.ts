// The second reading from the sound, on both pages: sound of a projector made noise by noise, laid beside
// the demo recordings.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test, type Locator } from '@playwright/test';
import { demoPath, demoTruths } from '../tools/demo-recordings/demo-readings.ts';
import { runFfmpeg, runsWholeChain } from '../tools/ffmpeg.ts';
import { answerTo, readFile } from './recording-sheet.ts';
import { turnTag } from './short-run.ts';
import { PLAIN_SOUND, projectorSound, type ProjectorSound } from '../tools/projector-sound.ts';

test.skip(!runsWholeChain, 'SKIPPED: needs ffmpeg 5 or later, with ffprobe');
test.describe.configure({ timeout: 120_000 });
const expectSoon = expect.configure({ timeout: 60_000 });

const [gate, film] = demoTruths();
const PAGES = { gate: '/gate/measuring-speed/', film: '/file/whole-frames/' } as const;

let folder: string;
test.beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'recording-sound-'));
});
test.afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const AAC = ['-c:a', 'aac', '-b:a', '160k'];

/** A demo with sound of its own; gives the rate that the sound truly has. */
function withSound(
  video: string,
  name: string,
  plan: Partial<ProjectorSound>,
  coder: readonly string[] = AAC,
  videoSeconds?: number,
): { readonly path: string; readonly meanFps: number } {
  const sound = { ...PLAIN_SOUND, wander: 0, ...plan };
  const { samples, meanFps } = projectorSound(sound, 7);
  const raw = join(folder, 'sound.f32');
  writeFileSync(raw, Buffer.from(samples.buffer));
  const path = join(folder, name);
  const input = ['-f', 'f32le', '-ar', String(sound.sampleRate), '-ac', '1', '-i', raw];
  const pictures = [
    ...(videoSeconds === undefined ? [] : ['-t', String(videoSeconds)]),
    '-i',
    video,
  ];
  runFfmpeg([...pictures, ...input, '-map', '0:v', '-map', '1:a', '-c:v', 'copy', ...coder, path]);
  return { path, meanFps };
}

async function soundLine(sheet: Locator): Promise<Locator> {
  await sheet.locator('[data-sound]:not([data-sound=waiting])').waitFor();
  return sheet.locator('[data-sound]');
}

const rateIn = (text: string): readonly number[] =>
  /([\d.]+) ± ([\d.]+)/u.exec(text)!.slice(1, 3).map(Number);

for (const [index, [kind, truth, seconds]] of (
  [
    ['gate', gate, 6],
    ['film', film, 6],
  ] as const
).entries()) {
  test(`agrees with the pictures of the ${kind} where the same projector is heard${turnTag(index, 2)}`, async ({
    page,
  }) => {
    const plan = { filmFps: truth.filmFps, seconds };
    const { path, meanFps } = withSound(demoPath(truth), `${kind}.mp4`, plan);
    const line = await soundLine(await readFile(page, PAGES[kind], path));
    await expect(line).toHaveAttribute('data-sound', 'good');
    await expect(line).toContainText('It agrees with the pictures.');
    const [fps, error] = rateIn(await line.innerText());
    expect(Math.abs(fps! - meanFps)).toBeLessThanOrEqual(error!);
    expect(error).toBeLessThan(0.2);
  });
}

test('says that sound of another speed does not agree, and calls no frame surely whole while the readout time is not measured', async ({
  page,
}) => {
  const sound = { filmFps: 16.2, seconds: 6 };
  const { path } = withSound(demoPath(film), 'other.mov', sound, AAC, 5);
  const sheet = await readFile(page, PAGES.film, path);
  const line = await soundLine(sheet);
  await expect(line).toHaveAttribute('data-sound', 'care');
  await expect(line).toContainText('does not agree with the pictures');
  const [fps] = rateIn(await line.innerText());
  expect(Math.abs(fps! - 16.2)).toBeLessThan(0.1);

  // The reader's own file: the demo's readout time is not taken for it.
  await expect(sheet.getByLabel('Readout time')).toHaveValue('');
  await expect(answerTo(sheet, 'Surely whole')).toContainText('0.0 %');
  const shown = film.wholeFilmFrames!.slice(0, 5 * film.cameraFps).filter((each) => each !== null);
  await expect(answerTo(sheet, 'Film frames')).toContainText(String(new Set(shown).size));
  await sheet.getByLabel('Readout time').fill('12');
  await sheet.getByRole('button', { name: 'Work it out with these' }).click();
  await expectSoon(answerTo(sheet, 'Surely whole')).toContainText('100 %');
});

test('says why there is no second reading @long', async ({ page }) => {
  const quiet = { clickLevel: 0, motorLevel: 0, mainsLevel: 0, seconds: 8 };
  // The pictures matter little here, so there are few of them.
  const few = (name: string, plan: Partial<ProjectorSound>, coder = 'aac'): string =>
    withSound(demoPath(film), name, plan, ['-c:a', coder], 5).path;
  const files = [
    [demoPath(film), 'the recording has no sound.'],
    [few('hiss.mp4', quiet), 'no steady rhythm'],
    [few('still.mp4', { ...quiet, hissLevel: 0 }), 'is silent'],
    [few('short.mp4', { seconds: 2 }), 'less than four seconds'],
    [few('alac.mov', { seconds: 8 }, 'alac'), 'coded as ALAC'],
    [few('ac3.mov', { seconds: 8 }, 'ac3'), 'coded as AC-3, which this browser does not decode.'],
  ] as const;
  for (const [path, says] of files) {
    const line = await soundLine(await readFile(page, PAGES.film, path));
    await expect(line, path).toHaveAttribute('data-sound', 'note');
    await expect(line, path).toContainText('No second reading from the sound:');
    await expect(line, path).toContainText(says);
  }
});
