// Reading a recording of 1080p50 in Chromium: decoded frames a second against the clip's rate, time of
// reading the decoded pictures, and the most memory that all processes of the browser take together.
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { serveClipPage, withFile } from '../browser/clip-page/built-clip-page.ts';
import { findChromium, launchArguments } from '../browser/chromium.ts';
import { isLong } from './parts/is-long.ts';
import { ffmpeg, FFMPEG_MISSING, runFfmpeg } from '../tools/ffmpeg.ts';

const FPS = 50;
/** Drawn and coded once; longer ones repeat it, packet by packet. */
const DRAWN_SECONDS = isLong ? 20 : 5;
const LENGTHS_SECONDS = isLong ? [20, 600] : [5, 30];
/** What is to be held on two idle cores. */
const BARS = { timesRealTime: 1.2, readingMilliseconds: 2, memoryBytes: 200e6 };

/** Proportional share of memory, bytes, of a process and all that it started; 0 where it cannot be told. */
function treeBytes(root: string): number {
  const parents = new Map<string, string>();
  for (const id of readdirSync('/proc').filter((name) => /^\d+$/u.test(name))) {
    try {
      const stat = readFileSync(`/proc/${id}/stat`, 'utf8');
      parents.set(id, stat.slice(stat.lastIndexOf(')') + 4).split(' ')[0]!);
    } catch {
      // It has ended meanwhile.
    }
  }
  const belongs = (id: string | undefined): boolean =>
    id !== undefined && (id === root || belongs(parents.get(id)));
  let kilobytes = 0;
  for (const id of parents.keys()) {
    if (!belongs(id)) continue;
    try {
      const rollup = readFileSync(`/proc/${id}/smaps_rollup`, 'utf8');
      kilobytes += Number(/^Pss:\s+(\d+)/mu.exec(rollup)?.[1] ?? 0);
    } catch {
      // It has ended meanwhile.
    }
  }
  return kilobytes * 1024;
}

/** The browser's first process, by a mark on its command line. */
function browserProcess(mark: string): string | undefined {
  return readdirSync('/proc')
    .filter((name) => /^\d+$/u.test(name))
    .find((id) => {
      try {
        const command = readFileSync(`/proc/${id}/cmdline`, 'utf8');
        return command.includes(mark) && !command.includes('--type=');
      } catch {
        return false;
      }
    });
}

interface Told {
  readonly frameCount: number;
  readonly milliseconds: number;
  readonly readingSeconds: number;
  readonly refusal?: { readonly sentence: string };
}

/** Camera frames of the recording, and film frames that are kept of it: a reel of 50 ft in the long run. */
const TAKEN = isLong ? 10_000 : 2000;
const KEPT = isLong ? 3600 : 720;

/** Time to a checked file out of a recording whose pictures stand alone. */
async function measureSaving(page: Page, folder: string): Promise<void> {
  const path = join(folder, 'alone.mov');
  runFfmpeg([
    ...['-f', 'lavfi', '-i', 'testsrc2=size=320x240:rate=50', '-frames:v', String(TAKEN)],
    ...['-c:v', 'libx264', '-preset', 'ultrafast', '-g', '1', '-pix_fmt', 'yuv420p', path],
  ]);
  const kept = Array.from({ length: KEPT }, (_, film) => Math.floor((film * 50) / 18));
  const begin = performance.now();
  const told = await withFile<{ readonly kind: string; readonly milliseconds: number }>(
    page,
    path,
    'timeSaving',
    kept,
    '18',
  );
  console.log(
    `${told.kind}: ${KEPT} of ${TAKEN} frames in ${(told.milliseconds / 1000).toFixed(1)} s ` +
      `(${((performance.now() - begin) / 1000).toFixed(1)} s with choosing the file)`,
  );
}

const WIDTHS = [9, -6, 9, 12, 11, 17, 9] as const;

/** One line of the table; a negative width stands to the left. */
function printRow(...cells: readonly string[]): void {
  console.log(
    cells
      .map((cell, at) => {
        const width = WIDTHS[at] ?? 0;
        return at === 0 || width < 0 ? cell.padEnd(Math.abs(width)) : cell.padStart(width);
      })
      .join(' '),
  );
}

async function measure(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'recordings-bench-'));
  const served = await serveClipPage();
  const mark = `--recordings-bench-${process.pid}`;
  const browser = await chromium.launch({
    executablePath: await findChromium(),
    args: [...launchArguments(), mark],
  });
  try {
    const page = await browser.newPage();
    await page.goto(served.address);
    const root = process.platform === 'linux' ? browserProcess(mark) : undefined;
    printRow('seconds', 'for', 'frames/s', '× real time', 'reading ms', 'memory over rest', '');
    printRow(
      ...(['to hold', '', ''] as const),
      `≥ ${BARS.timesRealTime.toFixed(2)}`,
      `≤ ${BARS.readingMilliseconds.toFixed(2)}`,
      `≤ +${(BARS.memoryBytes / 1e6).toFixed(0)} MB`,
      '',
    );
    const drawn = join(folder, 'drawn.mp4');
    runFfmpeg([
      ...['-f', 'lavfi', '-i', `testsrc2=size=1920x1080:rate=${FPS}`, '-t', String(DRAWN_SECONDS)],
      ...['-vf', 'noise=alls=6:allf=t', '-c:v', 'libx264', '-preset', 'ultrafast', '-b:v', '30M'],
      ...['-g', '25', '-pix_fmt', 'yuv420p', drawn],
    ]);
    for (const seconds of LENGTHS_SECONDS) {
      const path = join(folder, `${seconds}.mp4`);
      const more = Math.round(seconds / DRAWN_SECONDS) - 1;
      runFfmpeg(['-stream_loop', String(more), '-i', drawn, '-c', 'copy', path]);
      for (const want of ['gate', 'film']) {
        const rest = root === undefined ? 0 : treeBytes(root);
        let most = rest;
        const watching = setInterval(() => {
          if (root !== undefined) most = Math.max(most, treeBytes(root));
        }, 500);
        const told = await withFile<Told>(page, path, 'timeReading', { want });
        clearInterval(watching);
        if (told.refusal !== undefined) throw new Error(told.refusal.sentence);
        const rate = (told.frameCount / told.milliseconds) * 1000;
        const readingMilliseconds = (told.readingSeconds / told.frameCount) * 1000;
        const isHeld =
          rate / FPS >= BARS.timesRealTime &&
          readingMilliseconds <= BARS.readingMilliseconds &&
          most - rest <= BARS.memoryBytes;
        printRow(
          String(seconds),
          want,
          rate.toFixed(1),
          (rate / FPS).toFixed(2),
          readingMilliseconds.toFixed(2),
          root === undefined ? 'not told' : `+${((most - rest) / 1e6).toFixed(0)} MB`,
          isHeld ? 'held' : 'NOT HELD',
        );
      }
    }
    await measureSaving(page, folder);
    console.log(
      'reading: copying the planes and measuring them, for each frame, without decoding. Memory is the ' +
        'most that all processes of the browser take together over what they took before.',
    );
    console.log('seconds of evidence and path for 1,000 frames: npm run bench -- film-reading');
  } finally {
    await browser.close();
    await served.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

if (ffmpeg === undefined) console.log(FFMPEG_MISSING);
else await measure();
