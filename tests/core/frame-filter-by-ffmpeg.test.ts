// The filter file and the lossless copy, run by ffmpeg as printed and compared picture by picture.
import Fraction from 'fraction.js';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FILE_NAMES } from '../../src/core/file/file-names.ts';
import { frameFilterCommands, frameFilterText } from '../../src/core/file/frame-filter.ts';
import { packetDropCommands } from '../../src/core/file/packet-drop-commands.ts';
import { checkResult } from '../../src/core/file/result-check.ts';
import { chainTitle, runFfmpeg, runPasted, runsWholeChain } from '../tools/ffmpeg.ts';
import { checksumsOf } from '../tools/picture-checksums.ts';
import { seededRandom } from '../tools/random-benches.ts';
import { isLongRun } from '../tools/sample-sizes.ts';

/** Half a reel, in the long run a whole one; a flat list of conditions fails above a hundred. */
const FILM_FRAMES = isLongRun ? 3600 : 1800;

/** An uneven list, as a motor that wanders gives it. */
function wanderingList(filmFrames: number, ratio: number): readonly number[] {
  const random = seededRandom(18);
  let at = 3;
  return Array.from({ length: filmFrames }, () => {
    const frame = Math.floor(at);
    at += ratio + (random() - 0.5) * 0.4;
    return frame;
  });
}

/** A reel at 18 in a recording at 25. */
const LIST = wanderingList(FILM_FRAMES, 25 / 18);
const CAMERA_FRAMES = LIST.at(-1)! + 5;
/** Where a second rate asks no more of a list than its rate, or than to fill several commands. */
const SECOND_LIST = isLongRun ? LIST : LIST.slice(0, 700);

/** One checksum for each picture of a file. */
const checksums = (folder: string, file: string): readonly string[] =>
  checksumsOf([{ path: join(folder, file), of: 'pictures' }])[0]!;

function rateOf(folder: string, file: string): string {
  const asked = `ffprobe -v error -select_streams v:0 -show_entries stream=r_frame_rate -of csv=p=0 ${file}`;
  return runPasted(folder, asked).stdout.trim().replace(/,$/u, '');
}

/** A small recording every picture of which differs, intra-only. */
function writeRecording(folder: string, codec: readonly string[]): void {
  const source = `color=size=32x32:rate=50:duration=${CAMERA_FRAMES / 50},noise=alls=60:allf=t`;
  const picture = ['-f', 'lavfi', '-i', source, '-frames:v', String(CAMERA_FRAMES)];
  runFfmpeg([...picture, ...codec, '-threads', '1', FILE_NAMES.recording], folder);
}

interface Recording {
  readonly folder: string;
  readonly checksums: readonly string[];
}

/** Makes one recording for all tests of a group, which only read it, and takes it away after them. */
function recordOnce(codec: readonly string[]): () => Recording {
  let recording: Recording | undefined;
  beforeAll(() => {
    const folder = mkdtempSync(join(tmpdir(), 'measured-keep-list-'));
    writeRecording(folder, codec);
    recording = { folder, checksums: checksums(folder, FILE_NAMES.recording) };
  });
  afterAll(() => {
    if (recording !== undefined) rmSync(recording.folder, { recursive: true, force: true });
  });
  return () => recording!;
}

describe.skipIf(!runsWholeChain)(
  chainTitle(`a measured keep list of ${FILM_FRAMES} film frames`),
  () => {
    const recorded = recordOnce('-c:v mpeg2video -g 1 -q:v 4 -pix_fmt yuv420p'.split(' '));

    it.each([
      ['18', '18/1', LIST],
      ['24000/1001', '24000/1001', SECOND_LIST],
    ])('is picked exactly by the filter file at %s', (native, rate, list) => {
      const { folder, checksums: recording } = recorded();
      const fps = new Fraction(native);
      writeFileSync(join(folder, FILE_NAMES.keepFilter), frameFilterText(list, fps));
      const { current, older } = frameFilterCommands(fps);
      const spelling = runFfmpeg(['-h', 'long']).includes('filter_script') ? older : current;
      rmSync(join(folder, FILE_NAMES.film), { force: true });
      runPasted(folder, spelling);
      const film = checksums(folder, FILE_NAMES.film);
      expect(new Set(recording).size).toBe(CAMERA_FRAMES);
      expect(film).toHaveLength(list.length);
      expect(list.filter((frame, place) => film[place] !== recording[frame])).toEqual([]);
      expect(rateOf(folder, FILE_NAMES.film)).toBe(rate);
      expect(checkResult(recording, list, film).isExact).toBe(true);
      // A film frame that is left out, and a camera frame between two kept ones that came in.
      const before = list.findIndex((frame, at) => at > 190 && list[at + 1]! > frame + 1);
      const spoilt = [
        ...film.slice(0, 99),
        ...film.slice(100, before + 1),
        recording[list[before]! + 1]!,
        ...film.slice(before + 1),
      ];
      const check = checkResult(recording, list, spoilt);
      expect(check.missing).toEqual([99]);
      expect(check.extra).toEqual([{ resultFrame: before, cameraFrame: list[before]! + 1 }]);
    });
  },
);

describe.skipIf(!runsWholeChain)(chainTitle('a recording whose pictures stand alone'), () => {
  const recorded = recordOnce('-c:v mjpeg -q:v 4 -pix_fmt yuvj420p'.split(' '));

  it.each([
    ['posix', '18', '18/1', LIST, 1],
    ['windows', '24000/1001', '24000/1001', SECOND_LIST, 2],
  ] as const)(
    'is copied exactly by the commands for %s at %s',
    (shell, native, rate, list, fewest) => {
      const { folder, checksums: recording } = recorded();
      const proof = { isIntraOnly: true, wrapper: 'mov' } as const;
      const made = packetDropCommands(proof, list, new Fraction(native), shell)!;
      expect(made.commands.length).toBeGreaterThanOrEqual(fewest);
      const copied = `${FILE_NAMES.copiedFilm}.mov`;
      rmSync(join(folder, copied), { force: true });
      for (const command of made.commands) runPasted(folder, command);
      if (made.join !== undefined) {
        writeFileSync(join(folder, FILE_NAMES.partList), made.join.listText);
        runPasted(folder, made.join.command);
      }
      expect(checksums(folder, copied)).toEqual(list.map((frame) => recording[frame]));
      expect(rateOf(folder, copied)).toBe(rate);
      expect(readFileSync(join(folder, copied)).length).toBeGreaterThan(list.length * 100);
    },
  );
});

describe('the lossless copy', () => {
  it('is not offered without the proof', () => {
    expect(packetDropCommands(undefined, [1, 2], new Fraction(18), 'posix')).toBeUndefined();
  });

  it('fits the command line of each system', () => {
    const proof = { isIntraOnly: true, wrapper: 'mp4' } as const;
    const long = wanderingList(20_000, 2.78);
    for (const [shell, most] of [
      ['posix', 131_071],
      ['windows', 8_191],
    ] as const) {
      const { commands, join: joined } = packetDropCommands(proof, long, new Fraction(18), shell)!;
      expect(Math.max(...commands.map((command) => command.length))).toBeLessThanOrEqual(most);
      const named = commands.join('').match(/eq\(n,\d+\)/gu)!;
      expect(named).toEqual(long.map((frame) => `eq(n,${frame})`));
      expect(joined?.listText.split('\n')).toHaveLength(commands.length + 1);
    }
  });
});
