// The chain of files from the recording to the copy to watch, run as printed and measured in the result.
import Fraction from 'fraction.js';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { FILE_NAMES } from '../../src/core/file/file-names.ts';
import { keepRuleOf, makeKeepList, type KeepRule } from '../../src/core/file/keep-list.ts';
import { keepCommand, repeatCommand } from '../../src/core/file/picture-commands.ts';
import {
  HALF_TURN,
  LEFT_TO_RIGHT,
  RIGHT_WAY_ROUND,
  TOP_TO_BOTTOM,
} from '../../src/core/gate/picture-turn.ts';
import type { CodeRange } from '../../src/core/file/recorded-picture.ts';
import {
  CAMERA_CHECKSUM_COMMANDS,
  describeCommand,
  DETECT_COMMAND,
  evenGridCommand,
  fieldsCommand,
  FRAME_TIMES_COMMAND,
  lookCommand,
} from '../../src/core/file/recording-commands.ts';
import { offsetCommands, respeedCommands } from '../../src/core/file/sound-commands.ts';
import {
  cropFilter,
  MASTER_WITH_SOUND_COMMAND,
  PICTURE_CHECKSUMS_COMMAND,
  READ_MASTER_COMMAND,
  viewingCommand,
} from '../../src/core/file/viewing-commands.ts';
import {
  AS_STORED,
  chainTitle,
  runAsPasted,
  runFfmpeg,
  runPasted,
  runsWholeChain,
} from '../tools/ffmpeg.ts';
import {
  drawPicture,
  EIGHT_BIT,
  HEIGHT,
  levelCount,
  patchLevel,
  pictureSums,
  readClip,
  readNumber,
  TEN_BIT,
  turned,
  WIDTH,
  woven,
  writeClip,
  writeClips,
  type Clip,
  type Layout,
  type Picture,
} from '../tools/lettered-clip.ts';
import { makeOnce } from '../tools/made-once.ts';
import { withFolder } from '../tools/numbered-frames.ts';
import { isAsked, someOf } from '../tools/sample-sizes.ts';
import { loudestSeconds, readSound, rmsBetween, writeSound } from '../tools/sound-files.ts';

const FILM_FPS = 18;
const FILM_FRAMES = 12;
/** Camera frame of the middle of film frame 0. */
const START = 3;

/** Film frame in front of the camera at a camera frame, for a film that moves half-way between. */
const filmFrameAt = (cameraFrame: number, cameraFps: number): number =>
  Math.max(0, Math.round(((cameraFrame - START) * FILM_FPS) / cameraFps));

const cameraFrames = (cameraFps: number): readonly number[] =>
  Array.from(
    { length: Math.ceil((FILM_FRAMES * cameraFps) / FILM_FPS) + START + 3 },
    (_, at) => at,
  );

function keepRule(cameraFps: number): KeepRule {
  const rule = keepRuleOf(
    makeKeepList(new Fraction(FILM_FPS), new Fraction(cameraFps), START, FILM_FRAMES),
  );
  if (rule === undefined) throw new Error('the camera is slower than the film');
  return rule;
}

const BT709 = ['-colorspace', 'bt709', '-color_primaries', 'bt709', '-color_trc', 'bt709'];
const BT601 = ['-colorspace', 'smpte170m', '-color_primaries', 'bt709', '-color_trc', 'bt709'];

interface Kind {
  readonly name: string;
  readonly layout: Layout;
  readonly options: readonly string[];
  readonly codeRange: CodeRange;
  readonly tags: readonly [range: string, matrix: string];
}

const kinds: readonly Kind[] = [
  {
    name: 'full range, 8 bits, bt709',
    layout: EIGHT_BIT,
    options: ['-color_range', 'pc', ...BT709],
    codeRange: 'full-bt709',
    tags: ['pc', 'bt709'],
  },
  {
    name: 'full range, 8 bits, smpte170m',
    layout: EIGHT_BIT,
    options: ['-color_range', 'pc', ...BT601],
    codeRange: 'full-bt601',
    tags: ['pc', 'smpte170m'],
  },
  {
    name: 'limited range, 8 bits',
    layout: EIGHT_BIT,
    options: ['-color_range', 'tv', ...BT709],
    codeRange: 'limited',
    tags: ['tv', 'bt709'],
  },
  {
    name: 'no tags, 8 bits',
    layout: EIGHT_BIT,
    options: [],
    codeRange: 'limited-unnamed',
    tags: ['tv', 'bt709'],
  },
  {
    name: 'limited range, 10 bits 4:2:2',
    layout: TEN_BIT,
    options: ['-color_range', 'tv', ...BT709],
    codeRange: 'limited',
    tags: ['tv', 'bt709'],
  },
];

/** What a file says about itself, by name. */
function propertiesOf(folder: string, fileName: 'film.mkv' | 'viewing.mp4' | 'recording.mov') {
  const lines = runPasted(folder, describeCommand(fileName)).stdout.trim().split('\n');
  return Object.fromEntries(lines.map((line) => line.trim().split('='))) as Record<string, string>;
}

/** A recording straight into the gate: heads down and mirrored. */
function recordingOf(kind: Kind, isUpsideDown = true, isLeftRight = false): Clip {
  const { layout, options } = kind;
  // The film runs on after the last frame that is kept.
  const passing = cameraFrames(50).map((at) => filmFrameAt(at, 50));
  const shown = Array.from({ length: passing.at(-1)! + 1 }, (_, at) =>
    turned(drawPicture(at, layout), isUpsideDown, isLeftRight),
  );
  const pictures = passing.map((at) => shown[at]!);
  return { fileName: FILE_NAMES.recording, layout, pictures, fps: '50', options };
}

function record(folder: string, kind: Kind, isUpsideDown?: boolean, isLeftRight?: boolean): void {
  writeClips(folder, [recordingOf(kind, isUpsideDown, isLeftRight)]);
}

/** How a recording may show the film, and the turn that makes it read right. */
const turns = [
  ['heads down and mirrored', TOP_TO_BOTTOM, true, false],
  ['heads up and mirrored', LEFT_TO_RIGHT, false, true],
  ['turned by half', HALF_TURN, true, true],
  ['right', RIGHT_WAY_ROUND, false, false],
] as const;

const film = (layout: Layout): readonly Picture[] =>
  Array.from({ length: FILM_FRAMES }, (_, at) => drawPicture(at, layout));

/** Runs a command that makes the master, or copies what it made of the same recording before. */
function keep(folder: string, command: string): void {
  const recording = readFileSync(join(folder, FILE_NAMES.recording));
  makeOnce(join(folder, FILE_NAMES.film), [command, recording], () => runPasted(folder, command));
}

/** A recording and the master that the printed command makes of it. */
function recordAndKeep(folder: string, kind: Kind): void {
  record(folder, kind);
  const recorded = { turn: TOP_TO_BOTTOM, codeRange: kind.codeRange };
  keep(folder, keepCommand(keepRule(50), new Fraction(FILM_FPS), recorded));
}

/** What the prober says of the packets of the master, one line for each. */
const packetLines = (folder: string, facts: string): readonly string[] =>
  runPasted(
    folder,
    `ffprobe -v error -show_entries packet=${facts} -of csv=p=0 ${FILE_NAMES.film}`,
  ).stdout.match(/^\S+/gmu) ?? [];

describe.runIf(runsWholeChain)(chainTitle('the master made of a recording'), () => {
  // All recordings in one run of the program; each test finds its own made already.
  beforeAll(() => {
    withFolder((folder) => {
      const recordings = [
        ...kinds.map((kind) => recordingOf(kind)),
        ...turns.slice(1).map(([, , down, left]) => recordingOf(kinds[2]!, down, left)),
      ];
      writeClips(
        folder,
        recordings.map((clip, at) => ({ ...clip, fileName: `${at}.mov` })),
      );
    });
  });

  test.each(kinds)('$name: every code value of every film frame, tagged as recorded', (kind) => {
    withFolder((folder) => {
      recordAndKeep(folder, kind);
      const master = readClip(folder, FILE_NAMES.film, kind.layout);
      expect(pictureSums(master)).toEqual(pictureSums(film(kind.layout)));
      expect(levelCount(master[0]!)).toBe(2 ** kind.layout.bits);
      const properties = propertiesOf(folder, 'film.mkv');
      expect(properties).toMatchObject({
        codec_name: 'ffv1',
        pix_fmt: kind.layout.pixelFormat,
        color_range: kind.tags[0],
        color_space: kind.tags[1],
        avg_frame_rate: '18/1',
      });
    });
  });

  test('left to an unsuspecting command, full range loses 36 of its 256 levels, so the test can fail', () => {
    withFolder((folder) => {
      record(folder, kinds[0]!);
      const recorded = { turn: TOP_TO_BOTTOM, codeRange: 'limited' } as const;
      runPasted(folder, keepCommand(keepRule(50), new Fraction(FILM_FPS), recorded));
      expect(levelCount(readClip(folder, FILE_NAMES.film, EIGHT_BIT)[0]!)).toBeLessThan(256);
    });
  });

  test.each(turns)(
    'a recording that shows the film %s reads right afterwards',
    (_, turn, down, left) => {
      withFolder((folder) => {
        const kind = kinds[2]!;
        record(folder, kind, down, left);
        const recorded = { turn, codeRange: kind.codeRange };
        keep(folder, keepCommand(keepRule(50), new Fraction(FILM_FPS), recorded));
        const [first] = film(kind.layout);
        const raw = turned(first!, down, left);
        expect(pictureSums([raw])[0] === pictureSums([first!])[0]).toBe(!down && !left);
        const master = readClip(folder, FILE_NAMES.film, kind.layout);
        expect(pictureSums(master)).toEqual(pictureSums(film(kind.layout)));
      });
    },
  );

  test('can be looked into', () => {
    withFolder((folder) => {
      recordAndKeep(folder, kinds[2]!);
      runPasted(folder, lookCommand(FILE_NAMES.film, [], 0));
      const look = readFileSync(join(folder, FILE_NAMES.look));
      expect(look.length).toBeGreaterThan(100);
      expect([look.readUInt32BE(16), look.readUInt32BE(20)]).toEqual([WIDTH, HEIGHT]);
    });
  });

  test('takes several stretches of one list in one command', () => {
    withFolder((folder) => {
      const kind = kinds[2]!;
      record(folder, kind);
      const rule = keepRule(50);
      // The same list in two stretches, as a list has that is tied in the middle.
      const middle = Math.floor((rule.first + rule.last) / 2);
      const stretches = [
        { ...rule, last: middle },
        { ...rule, first: middle + 1 },
      ];
      const recorded = { turn: TOP_TO_BOTTOM, codeRange: kind.codeRange };
      runPasted(folder, keepCommand(stretches, new Fraction(FILM_FPS), recorded));
      const master = readClip(folder, FILE_NAMES.film, kind.layout);
      expect(pictureSums(master)).toEqual(pictureSums(film(kind.layout)));
    });
  });

  test('is FFV1 version 3, every picture a key picture, a checksum in each of 16 slices', () => {
    withFolder((folder) => {
      recordAndKeep(folder, kinds[0]!);
      const said = runPasted(
        folder,
        `ffmpeg -v debug -debug pict -i ${FILE_NAMES.film} -frames:v 1 -f null -`,
      ).stderr;
      expect(said).toMatch(/ffv1.*ver:3\.\d.*slices:4x4.*ec:1 intra:1/u);
      const flags = packetLines(folder, 'flags');
      expect(flags).toHaveLength(FILM_FRAMES);
      expect(flags.every((flag) => flag.startsWith('K'))).toBe(true);
    });
  });

  test('is read in silence, and one flipped bit in any picture is noticed', () => {
    withFolder((folder) => {
      recordAndKeep(folder, kinds[2]!);
      expect(runPasted(folder, READ_MASTER_COMMAND).stderr).toBe('');
      const places = packetLines(folder, 'pos,size').map((line) => {
        const [first, second] = line.split(',').map(Number);
        // The prober prints size before place in some versions; the size is the smaller after the head.
        return { size: Math.min(first!, second!), place: Math.max(first!, second!) };
      });
      expect(places).toHaveLength(FILM_FRAMES);
      const path = join(folder, FILE_NAMES.film);
      const whole = readFileSync(path);
      /** Times of the pictures of which the reading complains, with a bit flipped in each of these. */
      const noticed = (damagedPictures: readonly number[]): readonly string[] => {
        const damaged = Buffer.from(whole);
        for (const at of damagedPictures) {
          const { size, place } = places[at]!;
          const spot = place + 16 + Math.floor((size - 32) * (at / FILM_FRAMES));
          damaged[spot] = damaged[spot]! ^ (1 << (at % 8));
        }
        writeFileSync(path, damaged);
        const said = runPasted(folder, READ_MASTER_COMMAND).stderr;
        const times = [...said.matchAll(/CRC mismatch.*?at ([\d.]+) seconds/gu)];
        return [...new Set(times.map(([, seconds]) => seconds!))];
      };
      const all = noticed(places.map((_, at) => at));
      expect(all).toHaveLength(FILM_FRAMES);
      for (const [at, seconds] of all.entries())
        if (isAsked(at, FILM_FRAMES)) expect(noticed([at])).toEqual([seconds]);
    });
  });
});

describe.runIf(runsWholeChain)(chainTitle('recordings that are not plain'), () => {
  /** Numbers that two detectors print. */
  function detected(folder: string) {
    const said = runPasted(folder, DETECT_COMMAND).stderr;
    // Some versions print a first set of lines with nothing but zeros.
    const fields = [
      ...said.matchAll(/Multi frame detection: TFF:\s*(\d+) BFF:\s*(\d+) Progressive:\s*(\d+)/gu),
    ].at(-1);
    const uneven = [...said.matchAll(/VFR:([\d.]+)/gu)].at(-1);
    return {
      fields: Number(fields?.[1]) + Number(fields?.[2]),
      progressive: Number(fields?.[3]),
      unevenShare: Number(uneven?.[1]),
    };
  }

  /** Luma of the rows that a field has itself: the even ones of the first, the odd ones of the second. */
  const ownRows = ([luma]: Picture, field: number): Buffer =>
    Buffer.from(luma!.values.filter((_, at) => Math.floor(at / WIDTH) % 2 === field % 2));

  /** Fields at 50 a second, woven two by two. */
  function recordFields(folder: string, fileName: string): void {
    const moments = cameraFrames(50);
    const drawn = moments.map((at) =>
      turned(drawPicture(filmFrameAt(at, 50), EIGHT_BIT), true, false),
    );
    const pairs = Array.from({ length: Math.floor(moments.length / 2) }, (_, at) =>
      woven(drawn[2 * at]!, drawn[2 * at + 1]!),
    );
    const marks = ['-vf', 'setfield=tff', '-flags', '+ildct+ilme', '-color_range', 'tv', ...BT709];
    writeClip(folder, fileName, EIGHT_BIT, pairs, '25', marks);
  }

  test('fields are detected, and a plain recording is not taken for one', () => {
    withFolder((folder) => {
      recordFields(folder, FILE_NAMES.recording);
      const woven = detected(folder);
      expect(woven.fields).toBeGreaterThan(3 * woven.progressive);
      expect(woven.unevenShare).toBe(0);
      expect(propertiesOf(folder, 'recording.mov')['field_order']).toBe('tt');
    });
    withFolder((folder) => {
      record(folder, kinds[2]!);
      const plain = detected(folder);
      expect(plain.fields).toBe(0);
      expect(plain.unevenShare).toBe(0);
      expect(propertiesOf(folder, 'recording.mov')['field_order']).not.toBe('tt');
    });
  });

  test('fields become pictures of their own moment, and every film frame is found whole', () => {
    withFolder((folder) => {
      recordFields(folder, FILE_NAMES.camera);
      runPasted(folder, fieldsCommand());
      const fields = readClip(folder, FILE_NAMES.evenRecording, EIGHT_BIT);
      const moments = cameraFrames(50).slice(0, fields.length);
      expect(fields.length).toBeGreaterThan(FILM_FRAMES * 2);
      for (const [at, field] of fields.entries()) {
        const truth = turned(drawPicture(filmFrameAt(moments[at]!, 50), EIGHT_BIT), true, false);
        // The rows of the field itself are untouched.
        expect(ownRows(field, at).equals(ownRows(truth, at))).toBe(true);
        // The number is uniform down its digits, so a row from another moment would show.
        const upright = turned(field, true, false)[0]!;
        expect(readNumber(upright, 8, 12)).toBe(filmFrameAt(moments[at]!, 50));
      }
      const command = keepCommand(keepRule(50), new Fraction(FILM_FPS), {
        turn: TOP_TO_BOTTOM,
        codeRange: 'limited',
      });
      runPasted(folder, command.replace(FILE_NAMES.recording, FILE_NAMES.evenRecording));
      const numbers = readClip(folder, FILE_NAMES.film, EIGHT_BIT).map((picture) =>
        readNumber(picture[0]!, 8, 12),
      );
      expect(numbers).toEqual(Array.from({ length: FILM_FRAMES }, (_, at) => at));
    });
  });

  /** Camera frames of a phone, s: near 1/50, some early, some late, one missing now and then. */
  function unevenTimes(): readonly number[] {
    return cameraFrames(50)
      .filter((at) => at % 11 !== 10)
      .map((at) => at / 50 + (at % 3 === 1 ? 0.006 : at % 5 === 2 ? -0.004 : 0));
  }

  function recordUneven(folder: string, fileName: string): void {
    const times = unevenTimes();
    const pictures = times.map((seconds) =>
      turned(drawPicture(filmFrameAt(seconds * 50, 50), EIGHT_BIT), true, false),
    );
    const stamps = times
      .map((seconds, at) => `eq(N,${at})*${Math.round(seconds * 1000)}`)
      .join('+');
    writeClip(folder, fileName, EIGHT_BIT, pictures, '50', [
      ...['-vf', `settb=1/1000,setpts='${stamps}'`, ...AS_STORED],
      ...['-enc_time_base', '1/1000', '-video_track_timescale', '1000', '-bf', '0'],
      ...['-color_range', 'tv', ...BT709],
    ]);
  }

  test('uneven picture times are detected', () => {
    withFolder((folder) => {
      recordUneven(folder, FILE_NAMES.recording);
      expect(detected(folder).unevenShare).toBeGreaterThan(0.2);
    });
  });

  test('uneven times are listed, kept on a grid, and no picture is lost', () => {
    withFolder((folder) => {
      recordUneven(folder, FILE_NAMES.camera);
      runPasted(folder, FRAME_TIMES_COMMAND);
      const listed = readFileSync(join(folder, FILE_NAMES.cameraTimes), 'utf8').match(/^[\d.]+/gmu);
      const times = unevenTimes();
      expect(listed).toHaveLength(times.length);
      for (const [at, text] of listed!.entries()) expect(Number(text)).toBeCloseTo(times[at]!, 5);
      const spellings = Object.values(CAMERA_CHECKSUM_COMMANDS).map((command) => {
        const { status } = runAsPasted(folder, command);
        if (status !== 0) return undefined;
        const list = readFileSync(join(folder, FILE_NAMES.cameraChecksums), 'utf8');
        rmSync(join(folder, FILE_NAMES.cameraChecksums));
        return list.match(/^0,/gmu)?.length;
      });
      // Each version of the program knows one of the two spellings or both.
      expect(spellings.filter((count) => count !== undefined)).not.toEqual([]);
      for (const count of spellings) expect([undefined, times.length]).toContain(count);
      runPasted(folder, evenGridCommand(new Fraction(200)));
      const grid = readClip(folder, FILE_NAMES.evenRecording, EIGHT_BIT);
      const shown = grid.map((picture) => readNumber(turned(picture, true, false)[0]!, 8)!);
      for (const [at, number] of shown.entries()) {
        // The picture on show at a grid line began at most half a step after it.
        const latest = times.filter((seconds) => seconds <= at / 200 + 0.0025 + 1e-9).at(-1)!;
        expect(number).toBe(filmFrameAt(latest * 50, 50));
      }
      const command = keepCommand(gridRule(), new Fraction(FILM_FPS), {
        turn: TOP_TO_BOTTOM,
        codeRange: 'limited',
      });
      runPasted(folder, command.replace(FILE_NAMES.recording, FILE_NAMES.evenRecording));
      const numbers = readClip(folder, FILE_NAMES.film, EIGHT_BIT).map((picture) =>
        readNumber(picture[0]!, 8),
      );
      expect(numbers).toEqual(Array.from({ length: FILM_FRAMES }, (_, at) => at));
    });
  });

  /** Keep list on the grid of 200: film frame 0 has its middle at the same time. */
  function gridRule(): KeepRule {
    const list = makeKeepList(
      new Fraction(FILM_FPS),
      new Fraction(200),
      START * 4 + 2,
      FILM_FRAMES,
    );
    return keepRuleOf(list)!;
  }
});

describe.runIf(runsWholeChain)(chainTitle('the whole chain to the copy to watch'), () => {
  const TAKEN_FPS = 20;
  const CLICK_FRAME = 6;
  /** The first and the third differ in everything, and so do the second and the fourth. */
  const cases = [
    { sampleRate: 48_000, channels: 1, tool: 'ffmpeg', taken: 1.2, kind: kinds[0]! },
    { sampleRate: 48_000, channels: 2, tool: 'sox', taken: 1.2, kind: kinds[1]! },
    { sampleRate: 96_000, channels: 2, tool: 'sox', taken: 0.1, kind: kinds[4]! },
    { sampleRate: 96_000, channels: 1, tool: 'ffmpeg', taken: 0.1, kind: kinds[2]! },
  ] as const;
  /** A tone of 40 steps of 24 bits: less than a sixth of one step of 16 bits. */
  const QUIET = 40;

  function recordSound(folder: string, sampleRate: number, channels: number, click: number): void {
    const samples = Int32Array.from({ length: 3 * sampleRate }, (_, at) =>
      at === Math.round(click * sampleRate)
        ? 4_000_000
        : Math.round(QUIET * Math.sin((2 * Math.PI * 997 * at) / sampleRate)),
    );
    writeSound(join(folder, FILE_NAMES.taken), sampleRate, channels, samples);
  }

  test.each(someOf(cases, 'chains'))(
    '$kind.name with sound of $sampleRate Hz moved by $tool: picture and click together in every file',
    ({ sampleRate, channels, tool, taken, kind }) => {
      withFolder((folder) => {
        recordAndKeep(folder, kind);
        recordSound(folder, sampleRate, channels, taken);
        const run = (command: string) => runPasted(folder, command);
        const native = new Fraction(FILM_FPS);
        run(respeedCommands(sampleRate, new Fraction(FILM_FPS, TAKEN_FPS))[tool]);
        const corrected = readSound(join(folder, FILE_NAMES.corrected));
        const late = loudestSeconds(corrected) - CLICK_FRAME / FILM_FPS;
        expect(Math.abs(late)).toBeGreaterThan(0.1);
        run(offsetCommands('corrected', late)[tool]);

        const sound = readSound(join(folder, FILE_NAMES.sound));
        expect(sound).toMatchObject({ sampleRate, channels, bits: 24 });
        expect(Math.abs(loudestSeconds(sound) - CLICK_FRAME / FILM_FPS)).toBeLessThan(
          2 / sampleRate,
        );
        // What 16 bits would have flattened to nothing is still there.
        const quiet = rmsBetween(sound, CLICK_FRAME / FILM_FPS + 0.4, CLICK_FRAME / FILM_FPS + 1.2);
        expect(quiet / (QUIET / Math.SQRT2)).toBeGreaterThan(0.9);
        expect(quiet / (QUIET / Math.SQRT2)).toBeLessThan(1.1);

        run(MASTER_WITH_SOUND_COMMAND);
        runFfmpeg(
          [
            ...['-i', FILE_NAMES.filmWithSound, '-map', '0:a', '-c:a', 'copy', 'out.wav'],
            ...['-map', '0:v', '-f', 'framemd5', 'b.md5'],
          ],
          folder,
        );
        const { samples, ...carried } = readSound(join(folder, 'out.wav'));
        expect(carried).toEqual({ sampleRate, channels, bits: 24 });
        expect(Buffer.from(samples.buffer).equals(Buffer.from(sound.samples.buffer))).toBe(true);
        run(PICTURE_CHECKSUMS_COMMAND);
        const lines = (name: string) =>
          readFileSync(join(folder, name), 'utf8')
            .split('\n')
            .filter((line) => /^0,/u.test(line));
        expect(lines(FILE_NAMES.pictureChecksums)).toHaveLength(FILM_FRAMES);
        expect(lines('b.md5').map((line) => line.split(',').at(-1))).toEqual(
          lines(FILE_NAMES.pictureChecksums).map((line) => line.split(',').at(-1)),
        );

        run(repeatCommand(native, new Fraction(25)));
        run(viewingCommand(undefined, true));
        const properties = propertiesOf(folder, 'viewing.mp4');
        expect(properties).toMatchObject({
          codec_name: 'h264',
          pix_fmt: 'yuv420p',
          color_range: 'tv',
          color_space: 'bt709',
          avg_frame_rate: '25/1',
        });
        const heardToo = ['-map', '0:a', '-c:a', 'pcm_s24le', 'heard.wav'];
        const pictures = readClip(folder, FILE_NAMES.viewing, EIGHT_BIT, WIDTH, HEIGHT, heardToo);
        const luma = pictures[0]![0]!;
        const isFull = kind.codeRange.startsWith('full');
        // A full-range file comes down to 16 and 235; a limited one keeps what it had.
        expect(Math.abs(patchLevel(luma, 'black') - (isFull ? 16 : 0))).toBeLessThan(2.5);
        expect(Math.abs(patchLevel(luma, 'white') - (isFull ? 235 : 255))).toBeLessThan(2.5);
        const heard = readSound(join(folder, 'heard.wav'));
        expect(Math.abs(loudestSeconds(heard) - CLICK_FRAME / FILM_FPS)).toBeLessThan(0.002);
        const seen = pictures.map((picture) => numberOf(picture, isFull));
        expect(seen.indexOf(CLICK_FRAME)).toBe(Math.ceil((CLICK_FRAME * 25) / FILM_FPS));
      });
    },
  );

  /** The number of a picture of the copy to watch, whose levels are nearly those of the master. */
  function numberOf([luma]: Picture, isFull: boolean): number | undefined {
    const values = luma!.values.map((value) => (isFull ? ((value - 16) * 255) / 219 : value));
    return readNumber({ ...luma!, values }, 8, 12);
  }

  test('a crop keeps just its part, letters and all', () => {
    withFolder((folder) => {
      recordAndKeep(folder, kinds[2]!);
      const native = new Fraction(FILM_FPS);
      runPasted(folder, repeatCommand(native, new Fraction(25)));
      const crop = { leftPixels: 6, topPixels: 12, widthPixels: 84, heightPixels: 48 };
      runPasted(folder, viewingCommand(crop, false));
      const [first] = readClip(folder, FILE_NAMES.viewing, EIGHT_BIT, 84, 48);
      const whole = drawPicture(0, EIGHT_BIT)[0]!;
      let error = 0;
      for (let y = 0; y < 48; y += 1) {
        for (let x = 0; x < 84; x += 1) {
          const truth = whole.values[(y + 12) * WIDTH + x + 6]!;
          error += Math.abs(first![0]!.values[y * 84 + x]! - truth) / (84 * 48);
        }
      }
      expect(error).toBeLessThan(3);
      runPasted(folder, lookCommand(FILE_NAMES.film, [cropFilter(crop)], 0));
      const look = readFileSync(join(folder, FILE_NAMES.look));
      // Width and height stand in the head of the picture file.
      expect([look.readUInt32BE(16), look.readUInt32BE(20)]).toEqual([84, 48]);
    });
  });
});
