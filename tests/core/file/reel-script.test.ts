// The script of a reel, run under sh on real files, and everything that it made measured.
import Fraction from 'fraction.js';
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { delimiter, join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { makeKeepReel } from '../../../src/core/file/keep-ties.ts';
import { reelScripts } from '../../../src/core/file/reel-script/reel-scripts.ts';
import type { ReelScriptEntries } from '../../../src/core/file/reel-script/script-entries.ts';
import { TROUBLE } from '../../../src/core/file/reel-script/script-words.ts';
import { TOP_TO_BOTTOM, HALF_TURN } from '../../../src/core/gate/picture-turn.ts';
import { AS_STORED, chainTitle, runFfmpeg, runsWholeChain } from '../../tools/ffmpeg.ts';
import {
  drawPicture,
  EIGHT_BIT,
  HEIGHT,
  packed,
  pictureSums,
  readClip,
  TEN_BIT,
  turned,
  WIDTH,
  woven,
  writeClip,
  writeClips,
  type Clip,
  type Layout,
  type Picture,
} from '../../tools/lettered-clip.ts';
import { withFolder } from '../../tools/numbered-frames.ts';
import { loudestSeconds, readSound, writeSound } from '../../tools/sound-files.ts';

const FILM_FPS = 18;
const CAMERA_FPS = 50;
const FILM_FRAMES = 12;
/** Camera frame of the middle of film frame 0. */
const START = 3;
const CAMERA_FRAMES = 42;
const BT709 = ['-colorspace', 'bt709', '-color_primaries', 'bt709', '-color_trc', 'bt709'];
const LIMITED = ['-color_range', 'tv', ...BT709];

/** A name with everything that a shell could trip over. */
const HARD_NAME = 'Ada\'s „Müller & Söhne“ $HOME `1962` "x" (50%) ’t; #1!.mov';
const HARD_SOUND = '-Ton für Tom\'s "Film" $(date).wav';

const filmFrameAt = (cameraFrame: number): number =>
  Math.max(0, Math.round(((cameraFrame - START) * FILM_FPS) / CAMERA_FPS));

/** A recording straight into the gate, heads down and mirrored. */
const recordingOf = (fileName: string, layout: Layout, options: readonly string[]): Clip => ({
  fileName,
  layout,
  pictures: Array.from({ length: CAMERA_FRAMES }, (_, at) =>
    turned(drawPicture(filmFrameAt(at), layout), true, false),
  ),
  fps: String(CAMERA_FPS),
  options,
});

function record(folder: string, name: string, layout: Layout, options: readonly string[]): void {
  writeClips(folder, [recordingOf('plain.mov', layout, options)]);
  renameSync(join(folder, 'plain.mov'), join(folder, name));
}

/** Options that make the pictures of a recording last unevenly long. */
const UNEVEN = [
  ...['-vf', "settb=1/1000,setpts='N*20+if(eq(mod(N,4),1),3,0)'", ...AS_STORED],
  ...['-enc_time_base', '1/1000', '-video_track_timescale', '1000', '-bf', '0'],
  ...['-r', '1000', ...LIMITED],
];
/** Options of a recording in full range. */
const FULL = ['-color_range', 'pc', ...BT709];

// All recordings in one run of the program; each test finds its own made already.
beforeAll(() => {
  if (!runsWholeChain) return;
  withFolder((folder) => {
    writeClips(folder, [
      recordingOf('10-bit.mov', TEN_BIT, LIMITED),
      ...[LIMITED, FULL, [], UNEVEN].map((options, at) =>
        recordingOf(`${at}.mov`, EIGHT_BIT, options),
      ),
    ]);
  });
});

/** Sound with one click in it, taken while the film ran at another rate. */
function recordSound(folder: string, name: string, clickSeconds: number): void {
  const samples = Int32Array.from({ length: 2 * 48_000 }, (_, at) =>
    at === Math.round(clickSeconds * 48_000) ? 4_000_000 : 0,
  );
  writeSound(join(folder, name), 48_000, 2, samples);
}

const ties = (filmFrames = FILM_FRAMES): ReelScriptEntries['keep'] => ({
  by: 'ties',
  reel: makeKeepReel(
    [{ filmFrame: 0, cameraFrame: START }],
    new Fraction(FILM_FPS),
    new Fraction(CAMERA_FPS),
    filmFrames,
  ),
});

const silent: ReelScriptEntries = {
  reelName: 'Reel 7, Regatta',
  recordingName: 'recording.mov',
  cameraFps: new Fraction(CAMERA_FPS),
  nativeFps: new Fraction(FILM_FPS),
  deliveryFps: new Fraction(25),
  keep: ties(),
  recorded: { turn: TOP_TO_BOTTOM, codeRange: 'limited' },
  crop: undefined,
  sound: undefined,
};

/** Runs the script as its first lines say, in the folder. */
function run(
  folder: string,
  entries: ReelScriptEntries,
  words: readonly string[] = [],
  programs?: string,
) {
  writeFileSync(join(folder, 'make-reel.sh'), reelScripts(entries).posix);
  const path = [...(programs === undefined ? [] : [programs]), process.env['PATH'] ?? ''];
  const { status, stdout, stderr } = spawnSync('sh', ['make-reel.sh', ...words], {
    cwd: folder,
    input: '',
    encoding: 'utf8',
    env: { ...process.env, PATH: path.join(delimiter) },
  });
  return { status, stdout, stderr };
}

const hashOf = (folder: string, name: string): string =>
  createHash('sha256')
    .update(readFileSync(join(folder, name)))
    .digest('hex');

/** Every file of the folder with its hash. */
const hashesOf = (folder: string): Readonly<Record<string, string>> =>
  Object.fromEntries(
    readdirSync(folder)
      .filter((name) => statSync(join(folder, name)).isFile())
      .map((name) => [name, hashOf(folder, name)]),
  );

const logOf = (folder: string): string => readFileSync(join(folder, 'reel-log.txt'), 'utf8');

/** What a list of checksums has to say of these pictures, summed here over their bytes. */
const trueChecksums = (pictures: readonly Picture[], layout: Layout): readonly string[] =>
  pictures.map((picture) => createHash('md5').update(packed(picture, layout.bits)).digest('hex'));

const checksumsIn = (list: string): readonly string[] =>
  [...list.matchAll(/^0,.*,\s*([0-9a-f]{32})$/gmu)].map(([, sum]) => sum!);

/** Options of one more output: the sound of a file as a file of whole samples. */
const HEARD = ['-map', '0:a', '-c:a', 'pcm_s24le', 'heard.wav'];

describe.runIf(runsWholeChain)(chainTitle('the script of a reel'), () => {
  test('makes all files of a reel with hard names, and run again refuses to write over anything', () => {
    withFolder((folder) => {
      const clickFrame = 6;
      const takenFps = 20;
      // Half a second after its picture, in the time of the film.
      const late = 0.5;
      record(folder, HARD_NAME, TEN_BIT, LIMITED);
      recordSound(folder, HARD_SOUND, ((clickFrame / FILM_FPS + late) * FILM_FPS) / takenFps);
      const entries: ReelScriptEntries = {
        ...silent,
        reelName: "Reel 7\nrm -rf . „Regatta“ '62",
        recordingName: HARD_NAME,
        crop: { leftPixels: 6, topPixels: 12, widthPixels: 84, heightPixels: 48 },
        sound: {
          fileName: HARD_SOUND,
          takenFps: new Fraction(takenFps),
          sampleRateHz: 48_000,
          lateSeconds: late,
        },
      };
      const before = [hashOf(folder, HARD_NAME), hashOf(folder, HARD_SOUND)];
      const { status, stdout, stderr } = run(folder, entries);
      expect(`${stdout}${stderr}`).not.toContain('STOPPED');
      expect(status).toBe(0);

      // Nothing but what was promised, and what was there is untouched.
      expect(readdirSync(folder).toSorted()).toEqual(
        [
          HARD_NAME,
          HARD_SOUND,
          ...['checksums.txt', 'film-with-sound.mkv', 'film.framemd5', 'film.mkv', 'look.png'],
          ...['make-reel.sh', 'reel-log.txt', 'sound.wav', 'viewing.mp4'],
        ].toSorted(),
      );
      expect([hashOf(folder, HARD_NAME), hashOf(folder, HARD_SOUND)]).toEqual(before);

      // Master: every film frame once, in order, the right way round, every value of it.
      const film = Array.from({ length: FILM_FRAMES }, (_, at) => drawPicture(at, TEN_BIT));
      const kept = readClip(folder, 'film.mkv', TEN_BIT);
      expect(pictureSums(kept)).toEqual(pictureSums(film));
      const listed = checksumsIn(readFileSync(join(folder, 'film.framemd5'), 'utf8'));
      expect(listed).toEqual(trueChecksums(film, TEN_BIT));
      expect(new Set(listed).size).toBe(FILM_FRAMES);

      // Sound: click on its picture, to two samples, in the master and in the copy to watch.
      const sound = readSound(join(folder, 'sound.wav'));
      expect(sound).toMatchObject({ sampleRate: 48_000, channels: 2, bits: 24 });
      const expectInStep = (file: string, within: number): void => {
        const heard = loudestSeconds(readSound(join(folder, file)));
        expect(Math.abs(heard - clickFrame / FILM_FPS)).toBeLessThan(within);
      };
      expectInStep('sound.wav', 2 / 48_000);
      const whole = readClip(folder, 'film-with-sound.mkv', TEN_BIT, WIDTH, HEIGHT, HEARD);
      expect(pictureSums(whole)).toEqual(pictureSums(film));
      expectInStep('heard.wav', 2 / 48_000);

      // Copy to watch: cropped, 25 frames a second, as long as the film, each frame in its turn.
      const shown = readClip(folder, 'viewing.mp4', EIGHT_BIT, 84, 48, HEARD);
      expectInStep('heard.wav', 0.002);
      rmSync(join(folder, 'heard.wav'));
      expect(Math.abs(shown.length / 25 - FILM_FRAMES / FILM_FPS)).toBeLessThan(1.01 / 25);
      const drawn = drawPicture(0, EIGHT_BIT)[0]!;
      let error = 0;
      for (let y = 0; y < 48; y += 1)
        for (let x = 0; x < 84; x += 1)
          error += Math.abs(
            shown[0]![0]!.values[y * 84 + x]! - drawn.values[(y + 12) * WIDTH + x + 6]!,
          );
      expect(error / (84 * 48)).toBeLessThan(3);
      // The look is the same part of the first film frame.
      const look = readFileSync(join(folder, 'look.png'));
      expect([look.readUInt32BE(16), look.readUInt32BE(20)]).toEqual([84, 48]);

      // Checksums: one line for each file, each as this program sums it.
      const lines = readFileSync(join(folder, 'checksums.txt'), 'utf8').trim().split('\n');
      const sums = Object.fromEntries(
        lines.map((line) => [line.replace(/^\\?[0-9a-f]{64} [ *]\.\//u, ''), line]),
      );
      const hashes = Object.fromEntries(
        Object.entries(hashesOf(folder)).filter(([name]) => name !== 'checksums.txt'),
      );
      expect(Object.keys(sums).toSorted()).toEqual(Object.keys(hashes).toSorted());
      for (const [name, hash] of Object.entries(hashes)) expect(sums[name]).toContain(hash);

      const log = logOf(folder);
      expect(log).toMatch(
        /^\d{4}-\d\d-\d\d \d\d:\d\d:\d\d UTC {2}---- Reel 7 rm -rf \. „Regatta“ '62$/mu,
      );
      expect(log).toContain(HARD_NAME);
      expect(log).toContain(`Pictures in the recording: ${CAMERA_FRAMES}`);
      expect(log).toContain(`all there: ${FILM_FRAMES}`);
      for (const made of ['film.mkv', 'sound.wav', 'film-with-sound.mkv', 'viewing.mp4'])
        expect(log).toContain(`made: ${made}`);

      // Run a second time, it refuses to write over anything and changes no byte.
      const finished = hashesOf(folder);
      const again = run(folder, entries);
      expect(again.status).toBe(1);
      expect(again.stdout).toContain(`STOPPED: ${TROUBLE.inTheWay} film.mkv.`);
      expect(hashesOf(folder)).toEqual(finished);
    });
  }, 30_000);

  test('takes a measured list frame by frame, with the turn that was entered, so that a wrong one shows', () => {
    withFolder((folder) => {
      record(folder, 'recording.mov', EIGHT_BIT, LIMITED);
      // Any camera frames of the film frames, at uneven steps; the recording is turned otherwise.
      const cameraFrames = [1, 5, 9, 10, 14, 17, 19, 23, 25, 27, 31, 33];
      const result = run(folder, {
        ...silent,
        keep: { by: 'measured', cameraFrames },
        recorded: { turn: HALF_TURN, codeRange: 'limited' },
      });
      expect(`${result.stdout}${result.stderr}`).not.toContain('STOPPED');
      expect(result.status).toBe(0);
      const film = cameraFrames.map((at) =>
        turned(drawPicture(filmFrameAt(at), EIGHT_BIT), false, true),
      );
      expect(pictureSums(readClip(folder, 'film.mkv', EIGHT_BIT))).toEqual(pictureSums(film));
    });
  }, 30_000);

  test('tried first, makes one picture to look at and nothing else', () => {
    withFolder((folder) => {
      record(folder, 'my recording.mov', EIGHT_BIT, LIMITED);
      const { status } = run(folder, silent, ['try', 'my recording.mov']);
      expect(status).toBe(0);
      expect(readdirSync(folder).toSorted()).toEqual(
        ['look.png', 'make-reel.sh', 'my recording.mov', 'reel-log.txt'].toSorted(),
      );
      const raw = runFfmpeg(['-i', 'look.png', '-f', 'rawvideo', '-pix_fmt', 'gray', '-'], folder);
      // The letter stands upright at the upper left: bright stem, dark gap below its arms.
      const at = (x: number, y: number) => raw[y * WIDTH + x]!;
      expect(at(10, 34)).toBeGreaterThan(at(24, 34) + 50);
      expect(at(10, 18)).toBeGreaterThan(150);
    });
  }, 20_000);

  test('a step that fails stops it with a sentence, and leaves what was finished', () => {
    withFolder((folder) => {
      record(folder, 'recording.mov', EIGHT_BIT, LIMITED);
      const programs = join(folder, 'programs');
      mkdirSync(programs);
      // A program that breaks down half-way through the copy to watch, as on a full drive.
      writeFileSync(
        join(programs, 'ffmpeg'),
        `#!/bin/sh\ncase "$*" in *libx264*) for last; do :; done; echo half > "$last"; exit 1 ;; esac\nexec ${realFfmpeg()} "$@"\n`,
      );
      chmodSync(join(programs, 'ffmpeg'), 0o755);
      const { status, stdout } = run(folder, silent, [], programs);
      expect(status).toBe(1);
      expect(stdout).toContain('STOPPED: The copy to watch could not be made.');
      expect(logOf(folder)).toContain('STOPPED: The copy to watch could not be made.');
      expect(readClip(folder, 'film.mkv', EIGHT_BIT)).toHaveLength(FILM_FRAMES);
      expect(existsSync(join(folder, 'film.framemd5'))).toBe(true);
      expect(existsSync(join(folder, 'delivery.mkv'))).toBe(true);
      for (const name of readdirSync(folder)) expect(name).not.toMatch(/^unfinished|^viewing/u);
    });
  }, 30_000);
});

/** The program behind the name, so that a stand-in of the same name can call it. */
function realFfmpeg(): string {
  return spawnSync('sh', ['-c', 'command -v ffmpeg'], { encoding: 'utf8' }).stdout.trim();
}

describe.runIf(runsWholeChain)(chainTitle('what a script refuses before any work'), () => {
  interface Refusal {
    readonly name: string;
    readonly entries?: Partial<ReelScriptEntries>;
    readonly options?: readonly string[];
    readonly says: string;
  }
  const sound = { fileName: 'taken.wav', takenFps: new Fraction(18), lateSeconds: 0 };
  const refusals: readonly Refusal[] = [
    {
      name: 'another rate',
      entries: { cameraFps: new Fraction(60000, 1001) },
      says: `${TROUBLE.otherRate} 50/1`,
    },
    {
      name: 'full range taken for limited',
      options: FULL,
      says: `${TROUBLE.otherRange} pc, bt709`,
    },
    {
      name: 'a matrix that is not named',
      options: [],
      says: `${TROUBLE.otherRange} unknown, unknown`,
    },
    {
      name: 'a list longer than the recording',
      entries: { keep: ties(20) },
      says: `${TROUBLE.tooShort} 42`,
    },
    {
      name: 'sound of another sample rate',
      entries: { sound: { ...sound, sampleRateHz: 44_100 } },
      says: `${TROUBLE.otherSampleRate} 48000`,
    },
    {
      name: 'sound that is not there',
      entries: { sound: { ...sound, fileName: 'tape.wav', sampleRateHz: 48_000 } },
      says: `${TROUBLE.noSound} tape.wav`,
    },
    {
      name: 'a recording that is not there',
      entries: { recordingName: 'other.mov' },
      says: `${TROUBLE.noRecording} other.mov`,
    },
  ];

  test.each(refusals)('$name', ({ entries, options, says }) => {
    withFolder((folder) => {
      record(folder, 'recording.mov', EIGHT_BIT, options ?? LIMITED);
      recordSound(folder, 'taken.wav', 0.5);
      const { status, stdout } = run(folder, { ...silent, ...entries });
      expect(stdout).toContain(`STOPPED: ${says}`);
      expect(status).toBe(1);
      expect(existsSync(join(folder, 'film.mkv'))).toBe(false);
    });
  });

  test('a first word that it does not know, rather than run with another recording than was meant', () => {
    withFolder((folder) => {
      record(folder, 'recording.mov', EIGHT_BIT, LIMITED);
      const { status, stdout } = run(folder, silent, ['my recording.mov']);
      expect(stdout).toContain(`STOPPED: ${TROUBLE.noSuchWork} my recording.mov`);
      expect(status).toBe(1);
      expect(readdirSync(folder).toSorted()).toEqual(['make-reel.sh', 'recording.mov']);
    });
  });

  test('a crop that lies outside the frame, with a sentence of its own', () => {
    withFolder((folder) => {
      record(folder, 'recording.mov', EIGHT_BIT, LIMITED);
      const crop = { leftPixels: 6, topPixels: 12, widthPixels: 900, heightPixels: 48 };
      const { status, stdout } = run(folder, { ...silent, crop });
      expect(stdout).toContain(`STOPPED: ${TROUBLE.noLook}`);
      expect(status).toBe(1);
    });
  });

  test('fields, even where the file does not name them', () => {
    withFolder((folder) => {
      const drawn = Array.from({ length: CAMERA_FRAMES * 2 }, (_, at) =>
        turned(drawPicture(filmFrameAt(at), EIGHT_BIT), true, false),
      );
      const pairs = Array.from({ length: CAMERA_FRAMES }, (_, at) =>
        woven(drawn[2 * at]!, drawn[2 * at + 1]!),
      );
      writeClip(folder, 'recording.mov', EIGHT_BIT, pairs, '50', LIMITED);
      const { status, stdout } = run(folder, silent);
      expect(stdout).toContain(`STOPPED: ${TROUBLE.fields}`);
      expect(status).toBe(1);
    });
  });

  test('pictures of uneven length, though their mean rate is right', () => {
    withFolder((folder) => {
      record(folder, 'recording.mov', EIGHT_BIT, UNEVEN);
      const { status, stdout } = run(folder, silent);
      expect(status).toBe(1);
      // The rates that the file names may give it away before the pictures do.
      expect(stdout).toMatch(
        /STOPPED: The (?:pictures of the recording are not all|recording has another rate)/u,
      );
    });
  });
});
