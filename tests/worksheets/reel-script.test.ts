// The script sheet with names as people give them and a measured list beside the recording, as typed into
// its fields, run under sh on real files.
import Fraction from 'fraction.js';
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { frameFilterText } from '../../src/core/file/frame-filter.ts';
import { TROUBLE } from '../../src/core/file/reel-script/script-words.ts';
import { TOP_TO_BOTTOM } from '../../src/core/gate/picture-turn.ts';
import { textOf } from '../../src/ui/file-text.ts';
import { evaluate, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import { findWorksheet } from '../../src/worksheets/registry.ts';
import { chainTitle, runFfmpeg, runsWholeChain } from '../tools/ffmpeg.ts';
import {
  drawPicture,
  EIGHT_BIT,
  readClip,
  readNumber,
  turned,
  WIDTH,
  writeClip,
} from '../tools/lettered-clip.ts';
import { withFolder } from '../tools/numbered-frames.ts';
import { writeSound } from '../tools/sound-files.ts';

const worksheet = findWorksheet('reel-script');
const RECORDING = 'Ada\'s „Müller & Söhne“ $HOME `1962` "x" (50%) ’t; #1!.mov';
const SOUND = '-Ton für Tom\'s "Film" $(date).wav';
const REEL = 'Reel 7 „Regatta“ \'62; $(rm -rf .) `x` "%PATH%"';
/** Camera frames at uneven steps, as a motor that wanders gives them. */
const KEPT = [4, 7, 9, 12, 15, 17, 21, 23, 26, 29, 31, 34];
const CAMERA_FRAMES = 42;
/** Every camera frame tells its own number. */
const TYPED: Entries = {
  reelName: REEL,
  recordingName: RECORDING,
  keepBy: 'list',
  filmFps: '18',
  cameraFps: '50',
  nativeFps: '18',
  filmFrames: String(KEPT.length),
  turn: 'upside-down-mirrored',
  codeRange: 'limited',
  sound: 'taken',
  soundName: SOUND,
  takenFps: '18',
};

async function scriptOf(entries: Entries): Promise<string> {
  const { messages, outcome } = evaluate(worksheet, entries);
  expect(messages).toEqual({});
  return textOf(outcome!.files!.find(({ fileName }) => fileName === 'make-reel.sh')!);
}

const filterText = (frames: readonly number[], nativeFps = 18): string =>
  frameFilterText(frames, new Fraction(nativeFps), { turn: TOP_TO_BOTTOM, codeRange: 'limited' });

/** A folder of a reel with recording, sound and list, and the script run in it. */
function run(folder: string, script: string, list: string | undefined) {
  const pictures = Array.from({ length: CAMERA_FRAMES }, (_, at) =>
    turned(drawPicture(at, EIGHT_BIT), true, false),
  );
  const tags = ['-colorspace', 'bt709', '-color_primaries', 'bt709', '-color_trc', 'bt709'];
  writeClip(folder, 'plain.mov', EIGHT_BIT, pictures, '50', ['-color_range', 'tv', ...tags]);
  spawnSync('mv', ['--', 'plain.mov', RECORDING], { cwd: folder });
  writeSound(join(folder, SOUND), 48_000, 2, new Int32Array(2 * 48_000));
  if (list !== undefined) writeFileSync(join(folder, 'keep-filter.txt'), list);
  writeFileSync(join(folder, 'make-reel.sh'), script);
  const { status, stdout, stderr } = spawnSync('sh', ['make-reel.sh'], {
    cwd: folder,
    input: '',
    encoding: 'utf8',
  });
  return { status, said: `${stdout}${stderr}` };
}

describe.runIf(runsWholeChain)(chainTitle('the script by a measured list'), () => {
  test('takes exactly its frames, looks at the first of them, and minds names of every kind', async () => {
    const script = await scriptOf(TYPED);
    withFolder((folder) => {
      const { status, said } = run(folder, script, filterText(KEPT));
      expect(said).not.toContain('STOPPED');
      expect(status).toBe(0);
      const film = readClip(folder, 'film.mkv', EIGHT_BIT);
      expect(film.map(([luma]) => readNumber(luma!, 8))).toEqual(KEPT);
      // The list is read and not written.
      expect(readFileSync(join(folder, 'keep-filter.txt'), 'utf8')).toBe(filterText(KEPT));
      const log = readFileSync(join(folder, 'reel-log.txt'), 'utf8');
      expect(log).toContain(`---- ${REEL}`);
      expect(log).toContain(RECORDING);
      expect(log).toContain(`all there: ${KEPT.length}`);
      const look = runFfmpeg(['-i', 'look.png', '-f', 'rawvideo', '-pix_fmt', 'gray', '-'], folder);
      const first = [...film[0]![0]!.values];
      const off = first.reduce((sum, code, at) => sum + Math.abs(code - look[at]!), 0);
      expect(look).toHaveLength(first.length);
      expect(off / first.length).toBeLessThan(12);
      expect(first.length % WIDTH).toBe(0);
      // Sound beside it, from the file with the hard name.
      const streams = runFfmpeg(
        ['-i', 'film-with-sound.mkv', '-map', '0:a', '-f', 'framecrc', '-'],
        folder,
      );
      expect(String(streams)).toContain('#media_type 0: audio');
    });
  }, 40_000);

  test.each([
    ['no list', undefined, `${TROUBLE.noList} keep-filter.txt`],
    [
      'a list of another number of frames',
      filterText(KEPT.slice(1)),
      `${TROUBLE.otherCount} 12, 11`,
    ],
    [
      'a list for another native rate',
      filterText(KEPT, 16),
      `${TROUBLE.otherMaking} keep-filter.txt`,
    ],
    [
      'a list for pictures the other way round',
      frameFilterText(KEPT, new Fraction(18)),
      `${TROUBLE.otherMaking} keep-filter.txt`,
    ],
    [
      'a list that goes on after the recording',
      filterText([...KEPT.slice(0, -1), CAMERA_FRAMES]),
      `${TROUBLE.tooShort} ${CAMERA_FRAMES}`,
    ],
  ])(
    'stops at %s, and makes nothing',
    async (_, list, says) => {
      const script = await scriptOf(TYPED);
      withFolder((folder) => {
        const { status, said } = run(folder, script, list);
        expect(said).toContain(`STOPPED: ${says}`);
        expect(status).toBe(1);
        expect(() => readFileSync(join(folder, 'film.mkv'))).toThrow();
        rmSync(join(folder, 'reel-log.txt'), { force: true });
      });
    },
    40_000,
  );
});

describe('names typed into the sheet', () => {
  test.each([
    ['recordingName', '', 'Nothing is written here. Try recording.mov.'],
    ['recordingName', 'a\nb.mov', 'There is a sign in it that cannot be seen. Try recording.mov.'],
    ['soundName', `${'x'.repeat(121)}`, 'That is more than 120 signs. Try taken.wav.'],
  ])('%s “%s” is refused in words', (key, text, says) => {
    expect(evaluate(worksheet, { ...TYPED, [key]: text }).messages[key]).toBe(says);
  });

  test('stand in the script with spaces at their ends taken off, and a reel may have none', async () => {
    const script = await scriptOf({ ...TYPED, reelName: '', recordingName: '  reel 7.mov ' });
    expect(script).toContain("recording='reel 7.mov'\n");
    expect(script).toContain("reel='12 film frames at 18 a second'\n");
  });
});
