// A film file made of a recording's own coded pictures: real coders write the recording, and ffmpeg
// decodes both files.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Fraction from 'fraction.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { forecastCopy, saveCopy, type SavedCopy } from '../../src/clip/save/save-copy.ts';
import {
  ALONE,
  asBlob,
  NOT_ALONE,
  streamFacts,
  writeCodedClip,
  writeCodedClips,
  type Coding,
} from '../tools/coded-clips.ts';
import { chainTitle, runFfmpeg, runsWholeChain } from '../tools/ffmpeg.ts';
import { checksumsOf } from '../tools/picture-checksums.ts';
import { isAsked } from '../tools/sample-sizes.ts';

const folder = mkdtempSync(join(tmpdir(), 'save-copy-'));
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const FRAMES = 40;
const SIZE = '160x120';
/** Kept frames as a list really has them: uneven steps, one frame for two film frames, and a step back. */
const KEPT = [3, 5, 8, 8, 11, 10, 14, 17, 20, 22, 25, 28, 31, 34, 37, 39];
const RATES = ['16', '18', '24000/1001'] as const;

/** The test command tries each rate with a third of the codings, in turn, the long run all with all. */
const ratesOf = (coding: Coding): readonly string[] =>
  RATES.filter((_, at) => isAsked(ALONE.indexOf(coding) + at, RATES.length));

type Saved = Extract<SavedCopy, { kind: 'saved' }>;

async function saved(path: string, kept: readonly number[], rate: string): Promise<Saved> {
  const copy = await saveCopy(asBlob(path), { cameraFrames: kept, filmFps: new Fraction(rate) });
  if (copy.kind === 'refused') throw new Error(copy.refusal.sentence);
  return copy;
}

async function obstacleOf(path: string, kept: readonly number[] = [0, 5, 9]): Promise<string> {
  const copy = await saveCopy(asBlob(path), { cameraFrames: kept, filmFps: new Fraction(18) });
  return copy.kind === 'refused' ? `${copy.refusal.obstacle}: ${copy.refusal.sentence}` : 'saved';
}

async function writeSaved(copy: Saved, name: string): Promise<string> {
  const path = join(folder, `${name.replaceAll(/\W+/gu, '-')}.${copy.extension}`);
  writeFileSync(path, new Uint8Array(await copy.file.arrayBuffer()));
  return path;
}

const withoutTimes = ({
  nb_frames: _,
  r_frame_rate: __,
  avg_frame_rate: ___,
  ...rest
}: Readonly<Record<string, string>>) => rest;

/** The smallest picture of this coding is larger than ours. */
const isLarge = ({ name }: Coding): boolean => name.startsWith('DNx');
const ALONE_CLIP = { frames: FRAMES, fps: '50', size: SIZE };
const NOT_ALONE_CLIP = { frames: 30, fps: '50', size: SIZE };

describe.skipIf(!runsWholeChain)(chainTitle('a film made of coded pictures'), () => {
  // All clips of one size in one run of the program; each test finds its own made already.
  beforeAll(() => {
    const codings = ALONE.filter((coding) => !isLarge(coding));
    writeCodedClips(folder, codings, ALONE_CLIP);
    writeCodedClips(folder, NOT_ALONE, NOT_ALONE_CLIP);
  });

  it.each(ALONE)(
    'holds exactly the listed pictures of $name, at rates exact and rounded',
    async (coding) => {
      const recording = writeCodedClip(folder, coding, {
        ...ALONE_CLIP,
        ...(isLarge(coding) ? { size: '256x144' } : {}),
      });
      const whole = withoutTimes(streamFacts(recording));
      const copies = [];
      for (const rate of ratesOf(coding)) {
        const copy = await saved(recording, KEPT, rate);
        copies.push({ rate, copy, path: await writeSaved(copy, `${coding.name} ${rate}`) });
      }
      const paths = [recording, ...copies.map(({ path }) => path)];
      const sums = checksumsOf([
        ...paths.map((path) => ({ path, of: 'pictures' as const })),
        ...paths.map((path) => ({ path, of: 'packets' as const })),
      ]);
      const [pictures, ...keptPictures] = sums.slice(0, paths.length);
      const [packets, ...keptPackets] = sums.slice(paths.length);
      expect(new Set(pictures).size).toBe(FRAMES);
      for (const [at, { rate, copy, path }] of copies.entries()) {
        expect(keptPictures[at]).toEqual(KEPT.map((frame) => pictures![frame]));
        expect(keptPackets[at]).toEqual(KEPT.map((frame) => packets![frame]));
        const facts = streamFacts(path);
        const exact = rate.includes('/') ? rate : `${rate}/1`;
        expect(facts).toMatchObject({
          r_frame_rate: exact,
          avg_frame_rate: exact,
          nb_frames: '16',
        });
        expect(withoutTimes(facts)).toEqual(whole);
        expect(copy.checked).toMatchObject({ frameCount: 16, totalBytes: copy.file.size });
      }
    },
  );

  it('keeps the way round, the shape of a sample and the order of fields', async () => {
    const flat: Coding = { ...ALONE[1]!, name: 'flat' };
    const upright = writeCodedClip(folder, flat, {
      frames: 20,
      fps: '25',
      size: SIZE,
      filter: 'setsar=16/15',
    });
    const turned = join(folder, 'turned.mov');
    runFfmpeg(['-i', upright, '-c', 'copy', '-metadata:s:v:0', 'rotate=90', turned]);
    const woven = writeCodedClip(
      folder,
      {
        name: 'woven',
        ending: 'mov',
        options: ['-c:v', 'prores_ks', '-flags', '+ildct', '-top', '1'],
      },
      { frames: 20, fps: '25', size: SIZE, filter: 'setfield=tff' },
    );
    for (const recording of [turned, woven]) {
      const before = streamFacts(recording);
      const path = await writeSaved(await saved(recording, [1, 4, 7, 9], '18'), 'as tagged');
      expect(withoutTimes(streamFacts(path))).toEqual(withoutTimes(before));
    }
    expect(streamFacts(turned)).toMatchObject({ rotation: '90', sample_aspect_ratio: '16:15' });
    expect(streamFacts(woven)['field_order']).toMatch(/^t/u);
  });

  it('leaves the sound out and says so, and foretells the size to the byte', async () => {
    const recording = writeCodedClip(
      folder,
      { ...ALONE[1]!, name: 'with sound' },
      {
        frames: 30,
        fps: '25',
        size: SIZE,
        inputs: ['-f', 'lavfi', '-i', 'sine=frequency=440', '-shortest'],
      },
    );
    const forecast = await forecastCopy(asBlob(recording), KEPT.slice(0, 9), new Fraction(18));
    const copy = await saved(recording, KEPT.slice(0, 9), '18');
    expect(forecast).toEqual({
      kind: 'possible',
      totalBytes: copy.file.size,
      isExact: true,
      leavesSoundOut: true,
    });
    const path = await writeSaved(copy, 'without sound');
    expect(
      String(runFfmpeg(['-i', path, '-map', '0', '-c', 'copy', '-f', 'framecrc', '-'])),
    ).not.toContain('#media_type 1');
  });

  it.each(NOT_ALONE)('is refused for $name', async (coding) => {
    const recording = writeCodedClip(folder, coding, NOT_ALONE_CLIP);
    expect(await obstacleOf(recording)).toMatch(/^(?:few-stand-alone|reordered): .*\d/u);
    const forecast = await forecastCopy(asBlob(recording), [0], new Fraction(18));
    expect(forecast.kind).toBe('refused');
  });

  it('is refused where marks of the container lie about groups', async () => {
    const recording = writeCodedClip(
      folder,
      { ...NOT_ALONE[0]!, name: 'lying marks' },
      NOT_ALONE_CLIP,
    );
    const bytes = readFileSync(recording);
    // Without its list of pictures that stand alone, every picture counts as one.
    bytes.write('free', bytes.indexOf('stss'), 'latin1');
    writeFileSync(recording, bytes);
    expect(await obstacleOf(recording, [0, 12, 24])).toBe('saved');
    expect(await obstacleOf(recording, [0, 12, 13])).toMatch(/^few-stand-alone: Camera frame 13 /u);
  });

  it('is refused for H.264 whose tables lie outside its pictures, and for fragments', async () => {
    const bare = writeCodedClip(
      folder,
      { ...ALONE[1]!, name: 'bare' },
      { frames: 10, fps: '25', size: SIZE },
    );
    const bytes = readFileSync(bare);
    bytes.write('free', bytes.indexOf('avcC'), 'latin1');
    bytes.write('ai12', bytes.indexOf('avc1', bytes.indexOf('stsd')), 'latin1');
    writeFileSync(bare, bytes);
    expect(await obstacleOf(bare)).toMatch(/^(?:not-proven|parameter-sets): /u);
    const fragments = join(folder, 'fragments.mp4');
    const whole = writeCodedClip(
      folder,
      { ...ALONE[0]!, name: 'whole' },
      { frames: 20, fps: '25', size: SIZE },
    );
    runFfmpeg(['-i', whole, '-c', 'copy', '-movflags', 'frag_keyframe+empty_moov', fragments]);
    expect(await obstacleOf(fragments)).toMatch(/^fragmented: /u);
    const trimmed = join(folder, 'trimmed.mp4');
    const slow = writeCodedClip(
      folder,
      { ...NOT_ALONE[0]!, name: 'slow' },
      { frames: 40, fps: '25', size: SIZE },
    );
    runFfmpeg(['-ss', '0.6', '-i', slow, '-c', 'copy', trimmed]);
    expect(await obstacleOf(trimmed)).toMatch(/^few-stand-alone: /u);
  });

  it('is refused for protected pictures, for two descriptions, and for a list beyond the file', async () => {
    const whole = writeCodedClip(
      folder,
      { ...ALONE[0]!, name: 'plain' },
      { frames: 20, fps: '25', size: SIZE },
    );
    const locked = join(folder, 'locked.mp4');
    runFfmpeg([
      ...['-i', whole, '-c', 'copy', '-encryption_scheme', 'cenc-aes-ctr'],
      ...['-encryption_key', '76a6c65c5ea762046bd749a2e632ccbb'],
      ...['-encryption_kid', 'a7e61c373e219033c21091fa607bf3b8', locked],
    ]);
    expect(await obstacleOf(locked)).toMatch(/^encrypted: /u);
    expect(await obstacleOf(whole, [0, 20])).toMatch(/^frame-not-in-file: .*20.*19/u);
    expect(await obstacleOf(whole, [])).toMatch(/^nothing-kept: /u);
  });

  it('is refused for a file that is cut off, at any place, and never stops the page', async () => {
    const whole = writeCodedClip(
      folder,
      { ...ALONE[0]!, name: 'cut' },
      { frames: 20, fps: '25', size: SIZE },
    );
    const bytes = readFileSync(whole);
    for (let length = 0; length < bytes.length; length += 997) {
      const cut = new Blob([new Uint8Array(bytes.subarray(0, length))]);
      const copy = await saveCopy(cut, { cameraFrames: [0, 19], filmFps: new Fraction(18) });
      expect(copy.kind, `${length} bytes`).toBe('refused');
    }
    // Every byte of the index in turn says something else.
    const index = bytes.indexOf('moov') - 4;
    for (let at = index; at < bytes.length; at += 3) {
      const bent = new Uint8Array(bytes);
      bent[at] = (bent[at] ?? 0) ^ 0xff;
      const copy = await saveCopy(new Blob([bent]), {
        cameraFrames: [0, 19],
        filmFps: new Fraction(18),
      });
      expect(['saved', 'refused']).toContain(copy.kind);
    }
  });

  it('stops when asked, with nothing left', async () => {
    const whole = writeCodedClip(
      folder,
      { ...ALONE[0]!, name: 'stopped' },
      { frames: 20, fps: '25', size: SIZE },
    );
    const stopped = await saveCopy(asBlob(whole), {
      cameraFrames: [0, 5],
      filmFps: new Fraction(18),
      signal: AbortSignal.abort(),
    });
    expect(stopped).toMatchObject({ kind: 'refused', refusal: { obstacle: 'stopped' } });
  });
});
