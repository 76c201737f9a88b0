// Recordings read in a real browser, each coded by a real coder: what the page finds against what ffmpeg
// decodes, and what it says of files that it cannot read.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test, type Page } from '@playwright/test';
import { RANGES_AT_ONCE } from '../../src/clip/save/gather-ranges.ts';
import { READABLE_COPY_COMMAND } from '../../src/core/file/readable-copy.ts';
import {
  ALONE,
  NOT_ALONE,
  packetChecksums,
  pictureChecksums,
  streamFacts,
  writeCodedClip,
  writeCodedClips,
  type Coding,
} from '../tools/coded-clips.ts';
import { runFfmpeg, runsWholeChain } from '../tools/ffmpeg.ts';
import { differing } from '../tools/differing.ts';
import { bandsByHand, decodeLuma, frameSecondsOf, gramByHand } from '../tools/measured-by-hand.ts';
import { projectFolder } from '../walls/source-files.ts';
import { turnTag } from './short-run.ts';
import { serveClipPage, withFile, type ClipPage } from './clip-page/built-clip-page.ts';

test.skip(!runsWholeChain, 'SKIPPED: needs ffmpeg 5 or later, with ffprobe');
// One page is built and opened for the whole file, as a reader drops one recording after the other.
test.describe.configure({ mode: 'default', timeout: 120_000 });

let served: ClipPage;
let folder: string;
let page: Page;
const faults: string[] = [];
test.beforeAll(async ({ browser }) => {
  folder = mkdtempSync(join(tmpdir(), 'recording-files-'));
  served = await serveClipPage();
  page = await browser.newPage();
  page.on('pageerror', ({ message }) => faults.push(message));
  await page.goto(served.address);
});
test.afterAll(async () => {
  await page.close();
  await served.stop();
  rmSync(folder, { recursive: true, force: true });
});
test.afterEach(() => {
  expect(faults.splice(0)).toEqual([]);
});

interface ReadBack {
  readonly kind: 'gate' | 'film';
  readonly facts: Readonly<Record<string, unknown>>;
  readonly frameSeconds: readonly number[];
  readonly bands: readonly number[];
  readonly gram: readonly number[];
  readonly frameCount: number;
  readonly firstFrame: number;
  readonly bitDepth: number;
  readonly clippedShare: number;
  readonly blackShare: number;
}
interface Refused {
  readonly kind: 'refused';
  /** Missing where the file was read after all. */
  readonly refusal?: { obstacle: string; sentence: string; advice: string; command?: string };
}

const X264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-qp', '20'];
const TAGS = [
  '-colorspace',
  'bt709',
  '-color_primaries',
  'bt709',
  '-color_trc',
  'bt709',
  '-color_range',
  'tv',
];
const plain = (name: string, ending: Coding['ending'], ...options: readonly string[]): Coding => ({
  name,
  ending,
  options: [...X264, ...TAGS, '-pix_fmt', 'yuv420p', ...options],
});

interface Case {
  readonly coding: Coding;
  readonly fps: string;
  readonly bitDepth?: 10;
  readonly filter?: string;
  readonly facts?: Readonly<Record<string, unknown>>;
}

const UNEVEN = "setpts='N/25/TB+0.006*mod(N*N,5)/TB'";

/** Twelve recordings as cameras and their tools write them. */
const RECORDINGS: readonly Case[] = [
  { coding: plain('25 in MP4', 'mp4'), fps: '25', facts: { container: 'MP4', codec: 'H.264' } },
  { coding: plain('29.97 in MOV', 'mov'), fps: '30000/1001' },
  { coding: plain('50 in MP4', 'mp4', '-g', '1'), fps: '50' },
  { coding: plain('59.94 with B pictures', 'mov', '-bf', '3', '-g', '24'), fps: '60000/1001' },
  {
    coding: {
      name: '10 bit 4.2.0',
      ending: 'mp4',
      options: [...X264, ...TAGS, '-pix_fmt', 'yuv420p10le'],
    },
    fps: '50',
    bitDepth: 10,
  },
  {
    coding: {
      name: '10 bit 4.2.2',
      ending: 'mp4',
      options: [...X264, ...TAGS, '-pix_fmt', 'yuv422p10le'],
    },
    fps: '25',
    bitDepth: 10,
  },
  { coding: plain('uneven times', 'mp4', '-vsync', 'passthrough'), fps: '25', filter: UNEVEN },
  { coding: plain('Matroska', 'mkv'), fps: '50', facts: { container: 'Matroska' } },
  {
    coding: plain('transport stream', 'ts'),
    fps: '25',
    facts: { container: 'MPEG Transport Stream' },
  },
  {
    coding: {
      name: 'VP9',
      ending: 'webm',
      options: [
        '-c:v',
        'libvpx-vp9',
        '-deadline',
        'realtime',
        '-cpu-used',
        '8',
        '-b:v',
        '1M',
        ...TAGS,
        '-pix_fmt',
        'yuv420p',
      ],
    },
    fps: '30',
    facts: { codec: 'VP9' },
  },
  { coding: plain('fragments', 'mp4', '-movflags', 'frag_keyframe+empty_moov'), fps: '25' },
  { coding: plain('rotated', 'mov'), fps: '25', facts: { rotationDegrees: 90 } },
];

function write({ coding, fps, filter }: Case): string {
  const path = writeCodedClip(folder, coding, {
    frames: 30,
    fps,
    ...(filter === undefined ? {} : { filter }),
  });
  if (coding.name !== 'rotated') return path;
  const turned = join(folder, 'turned.mov');
  runFfmpeg(['-i', path, '-c', 'copy', '-metadata:s:v:0', 'rotate=-90', turned]);
  return turned;
}

/**
 * Of each of these lists the test command reads one in turn, and every recording that is in none: one of each
 * thing that must be undone.
 */
const TAKING_TURNS = [
  ['25 in MP4', '29.97 in MOV', '50 in MP4', 'Matroska', 'transport stream', 'fragments'],
  ['10 bit 4.2.0', '10 bit 4.2.2'],
];

function tagOf({ coding: { name } }: Case): string {
  const list = TAKING_TURNS.find((names) => names.includes(name));
  return list === undefined ? '' : turnTag(list.indexOf(name), list.length);
}

for (const each of RECORDINGS) {
  test(`reads light, motion and times: ${each.coding.name}${tagOf(each)}`, async () => {
    const path = write(each);
    const luma = decodeLuma(path, 320, 240, each.bitDepth ?? 8);
    const seconds = frameSecondsOf(path);
    expect(luma.frames).toHaveLength(30);
    const gate = await withFile<ReadBack>(page, path, 'read', { want: 'gate' });
    expect(gate).toMatchObject({ kind: 'gate', frameCount: 30, firstFrame: 0 });
    expect(gate.bitDepth).toBe(each.bitDepth ?? 8);
    expect(gate.facts).toMatchObject({ codedWidth: 320, codedHeight: 240, ...each.facts });
    expect(differing(gate.bands, bandsByHand(luma).flat(), 1e-9)).toEqual([]);
    // Times as the file tells them, to the tick of a millisecond in Matroska and a microsecond elsewhere.
    expect(differing(gate.frameSeconds, seconds, 2e-6)).toEqual([]);
    const film = await withFile<ReadBack>(page, path, 'read', { want: 'film' });
    expect(film.frameSeconds).toEqual(gate.frameSeconds);
    const gram = gramByHand(luma).flatMap((numbers) => [...numbers]);
    // Kept in seven digits, so that an hour of recording fits beside the page.
    expect(differing(film.gram, gram, 1e-12, 6e-8)).toEqual([]);
    expect(Math.max(...film.gram)).toBeGreaterThan(1e-4);
  });
}

test('reads a chosen part, in full range, and tells what is clipped', async () => {
  const path = writeCodedClip(
    folder,
    {
      name: 'full range',
      ending: 'mp4',
      options: [...X264, ...TAGS, '-color_range', 'pc', '-pix_fmt', 'yuvj420p'],
    },
    {
      frames: 60,
      fps: '25',
      filter: 'drawbox=x=0:y=0:w=80:h=240:color=white:t=fill,format=yuvj420p',
    },
  );
  const luma = decodeLuma(path, 320, 240, 8);
  const read = await withFile<ReadBack>(page, path, 'read', {
    want: 'gate',
    fromSeconds: 0.8,
    seconds: 1,
  });
  expect(read).toMatchObject({ firstFrame: 20, frameCount: 25 });
  expect(read.facts['colour']).toMatchObject({ isFullRange: true, isRangeTagged: true });
  const byHand = bandsByHand({ ...luma, frames: luma.frames.slice(20, 45) }, true).flat();
  expect(differing(read.bands, byHand, 1e-9)).toEqual([]);
  const white = luma.frames
    .slice(20, 45)
    .map((frame) => frame.filter((code) => code >= 254).length);
  const share = white.reduce((a, b) => a + b) / (25 * 320 * 240);
  expect(share).toBeGreaterThan(0.2);
  expect(read.clippedShare).toBeCloseTo(share, 9);
});

test('reads the demo recordings of the book', async () => {
  for (const [name, want, frameCount, cameraFps] of [
    ['empty-gate.mp4', 'gate', 250, 25],
    ['film.mp4', 'film', 400, 50],
  ] as const) {
    const path = join(projectFolder, 'src/public/recordings', name);
    const read = await withFile<ReadBack>(page, path, 'timeReading', { want });
    expect(read).toMatchObject({ kind: want, frameCount });
    expect(read.facts['cameraFps']).toBeCloseTo(cameraFps, 6);
    expect(read.facts['colour']).toMatchObject({ matrix: 'bt709', isRangeTagged: true });
  }
});

/** A file with a few bytes changed or cut. */
function changed(path: string, name: string, change: (bytes: Buffer) => Buffer): string {
  const other = join(folder, name);
  writeFileSync(other, change(Buffer.from(readFileSync(path))));
  return other;
}

function overwritten(bytes: Buffer, from: number, to: number): Buffer {
  for (let at = from; at < to; at += 1) bytes[at] = (at * 37 + 11) % 251;
  return bytes;
}

interface BadFile {
  readonly name: string;
  readonly make: () => string;
  readonly obstacle: string;
  readonly says: RegExp;
  readonly hasCommand?: true;
}

const short = { frames: 50, fps: '25' };
const [, MOV_ALONE] = ALONE;
/** Two seconds of plain MP4, written once: what is spoilt is a copy of it. */
let uncut: string | undefined;
const uncutMp4 = (): string => (uncut ??= writeCodedClip(folder, plain('uncut', 'mp4'), short));

/** What no browser decodes, or no container that it reads; all coded from the same pictures in one run. */
const FOREIGN: readonly Coding[] = [
  { name: 'prores', ending: 'mov', options: ['-c:v', 'prores_ks'] },
  { name: 'jpeg', ending: 'mov', options: ['-c:v', 'mjpeg', '-pix_fmt', 'yuvj420p'] },
  {
    name: 'dnx',
    ending: 'mov',
    options: ['-c:v', 'dnxhd', '-profile:v', 'dnxhr_sq', '-pix_fmt', 'yuv422p'],
  },
  { name: 'mpeg2', ending: 'mkv', options: ['-c:v', 'mpeg2video'] },
  { name: 'ffv1', ending: 'mkv', options: ['-c:v', 'ffv1'] },
  { name: 'avi', ending: 'avi', options: ['-c:v', 'mjpeg', '-pix_fmt', 'yuvj420p'] },
  { name: 'mxf', ending: 'mxf', options: ['-c:v', 'mpeg2video'] },
];
let foreignPaths: readonly string[] | undefined;
const foreign = (name: string): string => {
  foreignPaths ??= writeCodedClips(folder, FOREIGN, { frames: 10, fps: '25', size: '640x360' });
  return foreignPaths[FOREIGN.findIndex((coding) => coding.name === name)]!;
};
const written = (name: string, content: Buffer | string): string => {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
};

const BAD_FILES: readonly BadFile[] = [
  {
    name: 'an empty file',
    make: () => written('empty.mp4', ''),
    obstacle: 'empty',
    says: /is empty/u,
  },
  {
    name: 'a text',
    make: () => written('notes.mp4', 'Reel 3: rowing, summer 1967. '.repeat(40)),
    obstacle: 'not-a-recording',
    says: /no video recording/u,
  },
  {
    name: 'zeros',
    make: () => written('zeros.mov', Buffer.alloc(100_000)),
    obstacle: 'damaged',
    says: /nothing but zeros/u,
  },
  {
    name: 'sound alone',
    make: () => {
      const path = join(folder, 'sound.m4a');
      runFfmpeg(['-f', 'lavfi', '-i', 'sine=duration=1', '-c:a', 'aac', path]);
      return path;
    },
    obstacle: 'no-pictures',
    says: /sound and no pictures/u,
  },
  {
    name: 'MP4 cut off before its index',
    make: () => changed(uncutMp4(), 'cut.mp4', (bytes) => bytes.subarray(0, bytes.length / 2)),
    obstacle: 'cut-off',
    says: /cut off/u,
  },
  {
    name: 'MP4 cut off after its index',
    make: () =>
      changed(
        writeCodedClip(folder, plain('index first', 'mp4', '-movflags', 'faststart'), short),
        'half.mp4',
        (bytes) => bytes.subarray(0, bytes.length * 0.6),
      ),
    obstacle: 'cut-off',
    says: /cut off/u,
  },
  {
    name: 'Matroska cut off',
    make: () =>
      changed(
        writeCodedClip(
          folder,
          plain('uncut', 'mkv', '-g', '5', '-cluster_time_limit', '200'),
          short,
        ),
        'cut.mkv',
        (bytes) => bytes.subarray(0, bytes.length * 0.5),
      ),
    obstacle: 'cut-off',
    says: /Only \d+ of about 50 frames are there/u,
  },
  {
    name: 'pictures overwritten',
    make: () =>
      changed(
        writeCodedClip(folder, plain('whole', 'mp4', '-bf', '0'), short),
        'spoilt.mp4',
        (bytes) =>
          overwritten(bytes, Math.floor(bytes.length * 0.3), Math.floor(bytes.length * 0.7)),
      ),
    obstacle: 'damaged',
    says: /damaged .*s from its beginning/u,
  },
  {
    name: 'an index overwritten',
    make: () =>
      changed(uncutMp4(), 'index.mp4', (bytes) =>
        overwritten(bytes, bytes.indexOf('moov') + 200, bytes.length),
      ),
    obstacle: 'cut-off|damaged|not-a-recording',
    says: /damaged|cut off/u,
  },
  {
    name: 'pictures of an absurd size',
    make: () =>
      changed(uncutMp4(), 'huge.mp4', (bytes) => {
        const entry = bytes.indexOf('avc1', bytes.indexOf('stsd'));
        bytes.writeUInt16BE(65_000, entry + 28);
        bytes.writeUInt16BE(65_000, entry + 30);
        return bytes;
      }),
    obstacle: 'picture-too-large',
    says: /65000 × 65000/u,
    hasCommand: true,
  },
  {
    name: 'a trimmed recording',
    make: () => {
      const path = join(folder, 'trimmed.mp4');
      const whole = writeCodedClip(folder, plain('untrimmed', 'mp4', '-g', '50'), short);
      runFfmpeg(['-ss', '0.6', '-i', whole, '-c', 'copy', path]);
      return path;
    },
    obstacle: 'trimmed',
    says: /15 of its 50 pictures are hidden/u,
  },
  {
    name: 'HEVC',
    make: () => writeCodedClip(folder, ALONE[3]!, short),
    obstacle: 'codec-not-decoded',
    says: /coded as HEVC/u,
    hasCommand: true,
  },
  {
    name: 'ProRes',
    make: () => foreign('prores'),
    obstacle: 'codec-not-decoded',
    says: /coded as ProRes/u,
    hasCommand: true,
  },
  {
    name: 'motion JPEG',
    make: () => foreign('jpeg'),
    obstacle: 'codec-not-decoded',
    says: /coded as motion JPEG/u,
    hasCommand: true,
  },
  {
    name: 'VC-3',
    make: () => foreign('dnx'),
    obstacle: 'codec-not-decoded',
    says: /coded as VC-3/u,
    hasCommand: true,
  },
  {
    name: 'MPEG-2',
    make: () => foreign('mpeg2'),
    obstacle: 'codec-not-decoded',
    says: /coded as MPEG-2/u,
    hasCommand: true,
  },
  {
    name: 'FFV1',
    make: () => foreign('ffv1'),
    obstacle: 'codec-not-decoded',
    says: /coded as FFV1/u,
    hasCommand: true,
  },
  {
    name: 'AVI',
    make: () => foreign('avi'),
    obstacle: 'container-not-read',
    says: /is AVI/u,
    hasCommand: true,
  },
  {
    name: 'MXF',
    make: () => foreign('mxf'),
    obstacle: 'container-not-read',
    says: /is MXF/u,
    hasCommand: true,
  },
];

test('says of each bad file what is wrong with it, and goes on', async () => {
  const sentences = new Set<string>();
  for (const { name, make, obstacle, says, hasCommand } of BAD_FILES) {
    await test.step(name, async () => {
      const refused = await withFile<Refused>(page, make(), 'read', { want: 'film' });
      expect
        .soft(refused.refusal?.obstacle ?? 'read', name)
        .toMatch(new RegExp(`^(?:${obstacle})$`, 'u'));
      expect.soft(refused.refusal?.sentence ?? '', name).toMatch(says);
      expect.soft(refused.refusal?.advice ?? '', name).not.toBe('');
      expect
        .soft(refused.refusal?.command, name)
        .toBe(hasCommand ? READABLE_COPY_COMMAND : undefined);
      sentences.add(refused.refusal?.sentence ?? '');
    });
  }
  expect(sentences.size).toBeGreaterThanOrEqual(BAD_FILES.length - 2);
  expect(await withFile<ReadBack>(page, uncutMp4(), 'read', { want: 'gate' })).toMatchObject({
    frameCount: 50,
  });
});

test('reads what the printed command makes of a recording that it cannot read', async () => {
  const own = mkdtempSync(join(folder, 'convert-'));
  runFfmpeg([
    ...['-f', 'lavfi', '-i', 'testsrc2=size=640x360:rate=30000/1001', '-frames:v', '30'],
    ...['-vf', UNEVEN.replace('25', '(30000/1001)'), '-vsync', 'passthrough'],
    ...['-c:v', 'prores_ks', '-video_track_timescale', '30000', join(own, 'recording.mov')],
  ]);
  const args = READABLE_COPY_COMMAND.replace(/^ffmpeg /u, '')
    .split(' ')
    .map((part) => part.replaceAll('"', ''));
  runFfmpeg(args, own);
  const before = frameSecondsOf(join(own, 'recording.mov'));
  const read = await withFile<ReadBack>(page, join(own, 'to-read.mp4'), 'read', { want: 'gate' });
  expect(read.frameCount).toBe(30);
  const sinceFirst = (times: readonly number[]) => times.map((time) => time - times[0]!);
  expect(differing(sinceFirst(read.frameSeconds), sinceFirst(before), 5e-5)).toEqual([]);
});

test('stops at once when asked', async () => {
  const path = writeCodedClip(folder, plain('long', 'mp4'), { frames: 500, fps: '50' });
  const begin = Date.now();
  const stopped = await withFile<Refused>(page, path, 'readStopped', 40);
  expect(stopped).toMatchObject({ kind: 'refused', refusal: { obstacle: 'stopped' } });
  expect(Date.now() - begin).toBeLessThan(5000);
});

test('decodes the sound to one channel, in step with the pictures', async () => {
  const path = join(folder, 'claw.mp4');
  // A click of 2 ms every 1/18 s in the left channel alone.
  const click = 'aevalsrc=exprs=0.8*lt(mod(t\\,1/18)\\,0.002)|0:s=48000:d=3';
  runFfmpeg([
    ...[
      '-f',
      'lavfi',
      '-i',
      'testsrc2=size=320x240:rate=25',
      '-f',
      'lavfi',
      '-i',
      click,
      '-t',
      '3',
    ],
    ...[...X264, '-pix_fmt', 'yuv420p', '-c:a', 'aac', '-b:a', '192k', path],
  ]);
  const heard = await withFile<{ sampleRate: number; samples: Float32Array; kind: string }>(
    page,
    path,
    'sound',
    2,
  );
  expect(heard).toMatchObject({ kind: 'sound', sampleRate: 48_000 });
  expect(heard.samples).toHaveLength(96_000);
  const energy = (from: number, to: number): number =>
    heard.samples
      .slice(Math.round(from * 48_000), Math.round(to * 48_000))
      .reduce((sum, x) => sum + x * x, 0);
  for (const click of [4, 9, 17, 30]) {
    const at = click / 18;
    expect(energy(at - 0.002, at + 0.005)).toBeGreaterThan(20 * energy(at + 0.02, at + 0.027));
  }
  expect(await withFile(page, uncutMp4(), 'sound', 2)).toEqual({ kind: 'none' });
});

test('gives the picture of any frame, and kept frames one after the other', async () => {
  // Frame n is as bright as n tells.
  const path = join(folder, 'steps.mp4');
  runFfmpeg([
    ...['-f', 'lavfi', '-i', 'nullsrc=size=16x12:rate=50', '-frames:v', '60'],
    ...[
      '-vf',
      "geq=lum='20+3*N':cb=128:cr=128,scale=320:240:flags=neighbor",
      ...X264,
      '-bf',
      '2',
      '-pix_fmt',
      'yuv420p',
      ...TAGS,
      path,
    ],
  ]);
  interface Shown {
    readonly cameraFrame: number;
    readonly width: number;
    readonly height: number;
    readonly colour: readonly number[];
  }
  const kept = [2, 5, 8, 8, 10, 13, 30, 59];
  const { frameCount, shown, played } = await withFile<{
    frameCount: number;
    shown: (Shown | undefined)[];
    played: Shown[];
  }>(page, path, 'pictures', [0, 30, 29, 31, 59, 60], kept);
  const numberOf = ({ colour }: Shown): number => ((colour[1]! / 255) * 219 + 16 - 20) / 3;
  expect(frameCount).toBe(60);
  expect(shown.slice(0, 5).map((each) => Math.round(numberOf(each!)))).toEqual([0, 30, 29, 31, 59]);
  expect(shown[5]).toBeUndefined();
  expect(shown[0]).toMatchObject({ width: 64, height: 48 });
  expect(played.map((each) => Math.round(numberOf(each)))).toEqual(kept);
  expect(played.map(({ cameraFrame }) => cameraFrame)).toEqual(kept);
});

interface SavedBack {
  readonly kind: string;
  readonly file: string;
  readonly extension: string;
  readonly refusal?: { obstacle: string };
}

function writeBack({ file, extension }: SavedBack, name: string): string {
  return written(`${name}.${extension}`, Buffer.from(file, 'base64'));
}

const KEPT = [3, 5, 8, 8, 11, 10, 14, 17, 20, 29];

const SAVED = [
  ['H.264', MOV_ALONE, 'mov'],
  ['H.264', MOV_ALONE, 'mkv'],
  ['H.264 10 bit', ALONE[2], 'mkv'],
  ['HEVC', ALONE[3], 'mkv'],
  ['ProRes', ALONE[5], 'mkv'],
] as const;

// The test command saves the first, and in turn one of those in Matroska.
for (const [index, [name, coding, ending]] of SAVED.entries()) {
  const tag = index === 0 ? '' : turnTag(index, SAVED.length - 1);
  test(`saves kept pictures of ${name} in ${ending} byte for byte${tag}`, async () => {
    const options =
      ending === 'mkv'
        ? coding!.options.filter((each) => !/^(?:-tag:v|hvc1)$/u.test(each))
        : coding!.options;
    const path = writeCodedClip(
      folder,
      { name: `${name} saved`, ending, options },
      { frames: 30, fps: '50' },
    );
    const pictures = pictureChecksums(path);
    const copy = await withFile<SavedBack>(page, path, 'save', KEPT, '24000/1001');
    expect(copy.refusal).toBeUndefined();
    const saved = writeBack(copy, `${name}-${ending}`.replaceAll(' ', '-'));
    expect(pictureChecksums(saved)).toEqual(KEPT.map((frame) => pictures[frame]));
    const { color_space, color_range, pix_fmt } = streamFacts(path);
    expect(streamFacts(saved)).toMatchObject({
      ...{ color_space, color_range, pix_fmt },
      ...{ r_frame_rate: '24000/1001', avg_frame_rate: '24000/1001' },
    });
  });
}

test('saves more pictures than are gathered at once byte for byte', async () => {
  const path = writeCodedClip(
    folder,
    { name: 'a long film', ending: 'mov', options: [...MOV_ALONE!.options, '-qp', '46'] },
    { frames: 2120, fps: '50', size: '96x64' },
  );
  const packets = packetChecksums(path);
  // No two neighbours, so every picture is a stretch of its own.
  const kept = Array.from({ length: RANGES_AT_ONCE + 30 }, (_, film) => 2 * film);
  const copy = await withFile<SavedBack>(page, path, 'save', kept, '18');
  expect(copy.refusal).toBeUndefined();
  const saved = writeBack(copy, 'a-long-film-saved');
  expect(packetChecksums(saved)).toEqual(kept.map((frame) => packets[frame]));
});

test('refuses to copy Matroska recordings whose pictures lean on each other', async () => {
  const codings = [...NOT_ALONE, { name: 'JPEG', options: ALONE[6]!.options }].map(
    (coding) => ({ ...coding, ending: 'mkv' }) as const,
  );
  for (const path of writeCodedClips(folder, codings, { frames: 30, fps: '50' })) {
    const refused = await withFile<SavedBack>(page, path, 'save', [0, 7], '18');
    expect(refused.kind, path).toBe('refused');
    expect(refused.refusal!.obstacle, path).toMatch(
      /^(?:few-stand-alone|reordered|unknown-codec)$/u,
    );
  }
});

interface Watched extends SavedBack {
  readonly stored: readonly string[];
  readonly storedBefore: readonly string[];
  readonly frameCount: number;
}

test('makes a copy to watch from the planes, turned and cut to size, and leaves nothing behind', async () => {
  const path = writeCodedClip(folder, plain('to watch', 'mp4'), { frames: 40, fps: '50' });
  const kept = [1, 4, 7, 9, 12, 15, 18, 21, 21, 24, 30, 39];
  const watched = await withFile<Watched>(page, path, 'watch', kept, '18', {
    turn: { isUpsideDown: true, isLeftRightChanged: true },
    crop: { left: 33, top: 10, width: 241, height: 200 },
    bitsPerSecond: 4_000_000,
  });
  expect(watched).toMatchObject({
    kind: 'made',
    codec: 'H.264',
    bitDepth: 8,
    frameCount: 12,
    stored: [],
  });
  expect(watched.storedBefore).toHaveLength(1);
  const saved = writeBack(watched, 'watched');
  expect(streamFacts(saved)).toMatchObject({
    width: '240',
    height: '200',
    r_frame_rate: '18/1',
    avg_frame_rate: '18/1',
    nb_frames: '12',
    pix_fmt: 'yuv420p',
    color_range: 'tv',
    color_space: 'bt709',
    color_transfer: 'bt709',
    color_primaries: 'bt709',
  });
  // The right picture at each place, the right way round: like the turned original, unlike its neighbours.
  const original = decodeLuma(path, 320, 240, 8).frames;
  const copy = decodeLuma(saved, 240, 200, 8).frames;
  const distance = (film: number, frame: number): number => {
    let sum = 0;
    for (let row = 0; row < 200; row += 1) {
      for (let column = 0; column < 240; column += 1) {
        const from = original[frame]![(10 + 199 - row) * 320 + 32 + 239 - column]!;
        sum += Math.abs(from - copy[film]![row * 240 + column]!);
      }
    }
    return sum / (200 * 240);
  };
  kept.forEach((frame, film) => {
    const own = distance(film, frame);
    expect(own, `film frame ${film}`).toBeLessThan(4);
    for (const near of [frame - 1, frame + 1].filter((each) => each >= 0 && each < 40)) {
      expect(distance(film, near), `film frame ${film}`).toBeGreaterThan(own);
    }
  });
});

test('makes a copy in VP9 where H.264 cannot be had, shown as the recording is', async () => {
  const upright = writeCodedClip(folder, plain('on its side', 'mov'), { frames: 20, fps: '25' });
  const turned = join(folder, 'laid-over.mov');
  runFfmpeg(['-i', upright, '-c', 'copy', '-metadata:s:v:0', 'rotate=-90', turned]);
  // What is left and right as shown is top and bottom as coded.
  const turn = { isUpsideDown: false, isLeftRightChanged: true };
  const kept = [2, 5, 9, 14];
  for (const [codec, ending] of [
    ['vp9', 'webm'],
    ['avc', 'mp4'],
  ] as const) {
    const watched = await withFile<Watched>(page, turned, 'watch', kept, '24000/1001', {
      turn,
      bitsPerSecond: 4_000_000,
      codecs: [codec],
    });
    expect(watched).toMatchObject({ kind: 'made', extension: ending, frameCount: 4, stored: [] });
    const saved = writeBack(watched, `on-its-side-${codec}`);
    const facts = streamFacts(saved);
    expect(facts).toMatchObject({ color_range: 'tv', color_space: 'bt709' });
    expect(facts['rotation'], codec).toBe(streamFacts(turned)['rotation']);
    if (codec === 'avc') expect(facts['r_frame_rate']).toBe('24000/1001');
    const original = decodeLuma(turned, 320, 240, 8).frames;
    const copy = decodeLuma(saved, 320, 240, 8).frames;
    kept.forEach((frame, film) => {
      let off = 0;
      for (let at = 0; at < 320 * 240; at += 1) {
        const upsideDown = (239 - Math.floor(at / 320)) * 320 + (at % 320);
        off += Math.abs(original[frame]![upsideDown]! - copy[film]![at]!);
      }
      expect(off / (320 * 240), `${codec} ${film}`).toBeLessThan(4);
    });
  }
});

test('makes a copy of 10-bit 4:2:2 pictures in full range with its tags right', async () => {
  const path = writeCodedClip(
    folder,
    {
      name: 'ten',
      ending: 'mp4',
      options: [...X264, ...TAGS, '-color_range', 'pc', '-pix_fmt', 'yuv422p10le'],
    },
    { frames: 12, fps: '25' },
  );
  const watched = await withFile<Watched>(page, path, 'watch', [0, 3, 6, 9], '16', {
    turn: { isUpsideDown: false, isLeftRightChanged: false },
    bitsPerSecond: 8_000_000,
  });
  expect(watched.kind).toBe('made');
  const saved = writeBack(watched, 'ten-watched');
  expect(streamFacts(saved)).toMatchObject({
    color_range: 'pc',
    color_space: 'bt709',
    r_frame_rate: '16/1',
  });
  const original = decodeLuma(path, 320, 240, 10).frames;
  const copy = decodeLuma(saved, 320, 240, 8).frames;
  [0, 3, 6, 9].forEach((frame, film) => {
    const off = copy[film]!.reduce(
      (sum, code, at) => sum + Math.abs(code - original[frame]![at]! / 4),
      0,
    );
    expect(off / (320 * 240)).toBeLessThan(4);
  });
});

test('leaves nothing behind when a copy is stopped, when the store is full, and after a crash', async () => {
  const path = writeCodedClip(folder, plain('stopped', 'mp4'), { frames: 200, fps: '50' });
  const kept = Array.from({ length: 100 }, (_, film) => 2 * film);
  const turn = { isUpsideDown: true, isLeftRightChanged: false };
  const stopped = await withFile<Watched & Refused>(page, path, 'watch', kept, '18', {
    turn,
    bitsPerSecond: 4_000_000,
    stopAtShare: 0.2,
  });
  expect(stopped).toMatchObject({ kind: 'refused', refusal: { obstacle: 'stopped' }, stored: [] });
  const old = `film-to-watch-${Date.now() - 2 * 86_400_000}-left`;
  expect(await withFile(page, path, 'leaveOldCopy', old)).toEqual([]);
  const devTools = await page.context().newCDPSession(page);
  const { origin } = new URL(served.address);
  // The browser states the same free room whatever there is, so that only writing tells.
  for (const [quotaSize, bitsPerSecond] of [
    [60_000, 4_000_000],
    [12_000, 2000],
  ] as const) {
    await devTools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize });
    const full = await withFile<Watched & Refused>(page, path, 'watch', kept, '18', {
      turn,
      bitsPerSecond,
    });
    expect(full.stored, String(quotaSize)).toEqual([]);
    expect(full.refusal?.sentence).toMatch(/is full/u);
    expect(full.refusal?.obstacle, `${quotaSize}: ${JSON.stringify(full).slice(0, 200)}`).toBe(
      'store-full',
    );
  }
  await devTools.send('Storage.overrideQuotaForOrigin', { origin });
  const good = await withFile<Watched>(page, path, 'watch', kept.slice(0, 10), '18', {
    turn,
    bitsPerSecond: 2_000_000,
  });
  expect(good).toMatchObject({ kind: 'made', stored: [] });
});
