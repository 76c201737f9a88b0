import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { makeGateLight } from '../../../src/core/gate/gate-light.ts';
import { keepRuleOf, makeKeepList } from '../../../src/core/file/keep-list.ts';
import { keepCommand, repeatCommand } from '../../../src/core/file/picture-commands.ts';
import { filmFrameAtOutput, outputFramesFor } from '../../../src/core/file/repeat-pattern.ts';
import { makeEqualShutter } from '../../../src/core/gate/shutter.ts';
import { evaluate, fillEntries } from '../../../src/worksheets/machine/evaluate.ts';
import { worksheet as keepListWorksheet } from '../../../src/worksheets/file/keep-list/worksheet.ts';
import { worksheet as repeatWorksheet } from '../../../src/worksheets/file/repeat-pattern/worksheet.ts';
import type { Worksheet } from '../../../src/worksheets/machine/types.ts';
import { ffmpeg, ffmpegTitle, runPasted } from '../../tools/ffmpeg.ts';
import {
  drawNumber,
  expose,
  readNumber,
  readVideo,
  withFolder,
  writeVideo,
  type ReadVideo,
  type Recording,
} from '../../tools/numbered-frames.ts';
import { someOf } from '../../tools/sample-sizes.ts';

/** The command that the worksheet prints for these entries. */
function printedCommand(worksheet: Worksheet, entries: Record<string, string>): string {
  const { outcome, messages } = evaluate(worksheet, fillEntries(worksheet.inputs, entries));
  const command = outcome?.commands?.[0]?.text;
  if (command === undefined) throw new Error(`no command: ${JSON.stringify(messages)}`);
  return command;
}

interface Setting {
  readonly name: string;
  /** As the film really ran. */
  readonly filmFps: string;
  readonly flashes: number;
  readonly cameraFps: string;
  readonly exposure: string;
  readonly readoutMilliseconds: number;
  readonly nativeFps: string;
  readonly filmFrames: number;
  /** Where the middle of film frame 0 falls, in camera frames. */
  readonly middle: number;
  /** At 2 to 3 and this phase every camera frame is whole; the list still has to drop a third. */
  readonly hasBlends: boolean;
}

const settings: readonly Setting[] = [
  {
    name: '18 in 50',
    filmFps: '18',
    flashes: 3,
    cameraFps: '50',
    exposure: '1/54',
    readoutMilliseconds: 0,
    nativeFps: '18',
    filmFrames: 200,
    middle: 12.31,
    hasBlends: true,
  },
  {
    name: '16 2/3 in 25',
    filmFps: '50/3',
    flashes: 3,
    cameraFps: '25',
    exposure: '1/50',
    readoutMilliseconds: 0,
    nativeFps: '50/3',
    filmFrames: 200,
    middle: 7.06,
    hasBlends: false,
  },
  {
    name: '24 in 59.94 with a rolling shutter',
    filmFps: '24',
    flashes: 3,
    cameraFps: '60000/1001',
    exposure: '1/72',
    readoutMilliseconds: 6,
    nativeFps: '24000/1001',
    filmFrames: 240,
    middle: 9.5,
    hasBlends: true,
  },
  {
    name: '17.93 in 50, stamped at 18',
    filmFps: '17.93',
    flashes: 3,
    cameraFps: '50',
    exposure: '100/5379',
    readoutMilliseconds: 4,
    nativeFps: '18',
    filmFrames: 300,
    middle: 20.8,
    hasBlends: true,
  },
];

const rate = (text: string): Fraction => new Fraction(text);

/** Camera frames of a setting, drawn once for all tests that take them. */
const recorded = new Map<string, readonly Uint8Array[]>();

function record(setting: Setting): readonly Uint8Array[] {
  const pictures = recorded.get(setting.name) ?? exposeAll(setting);
  recorded.set(setting.name, pictures);
  return pictures;
}

function exposeAll(setting: Setting): readonly Uint8Array[] {
  const filmFps = rate(setting.filmFps).valueOf();
  const cameraFps = rate(setting.cameraFps).valueOf();
  const exposureSeconds = rate(setting.exposure).valueOf();
  const readoutSeconds = setting.readoutMilliseconds / 1000;
  const middleOfFirst = 0.5 / filmFps;
  const recording: Recording = {
    light: makeGateLight(filmFps, makeEqualShutter(setting.flashes, 0.5)),
    cameraFps,
    exposureSeconds,
    readoutSeconds,
    startSeconds:
      middleOfFirst - setting.middle / cameraFps - (exposureSeconds + readoutSeconds) / 2,
  };
  const length = Math.ceil((setting.filmFrames / filmFps) * cameraFps + setting.middle) + 5;
  return Array.from({ length }, (_, cameraFrame) => expose(recording, cameraFrame));
}

/** Middle of the camera frames that show a film frame clean, as a reader finds it by stepping. */
function middleOfClean(pictures: readonly Uint8Array[], filmFrame: number): number {
  const clean = pictures.flatMap((picture, at) => (readNumber(picture) === filmFrame ? [at] : []));
  const [first] = clean;
  const last = clean.at(-1);
  if (first === undefined || last === undefined) throw new Error(`${filmFrame} is never clean`);
  return (first + last) / 2;
}

function entriesFor(setting: Setting, pictures: readonly Uint8Array[]): Record<string, string> {
  return {
    filmFps: setting.filmFps,
    cameraFps: setting.cameraFps,
    nativeFps: setting.nativeFps,
    filmFrames: String(setting.filmFrames),
    firstCameraFrame: String(middleOfClean(pictures, 0)),
    exposureSeconds: setting.exposure,
    readoutSeconds: `${setting.readoutMilliseconds} ms`,
    flashesPerFrame: String(setting.flashes),
    turn: 'right',
  };
}

function pickFrames(
  setting: Setting,
  pictures: readonly Uint8Array[],
  entries: Record<string, string>,
): ReadVideo {
  return withFolder((folder) => {
    writeVideo(folder, 'recording.mov', setting.cameraFps, pictures);
    runPasted(folder, printedCommand(keepListWorksheet, entries));
    return readVideo(folder, 'film.mkv');
  });
}

const counted = (length: number): readonly number[] => Array.from({ length }, (_, at) => at);

/** Matroska rounds time stamps to a millisecond. */
const STAMP_ROUNDING = 0.00051;

describe.skipIf(ffmpeg === undefined)(ffmpegTitle('the printed keep command'), () => {
  test.each(settings)('$name: every film frame once, in order, at the native rate', (setting) => {
    const pictures = record(setting);
    const hasBlends = pictures.some((picture) => readNumber(picture) === undefined);
    expect(hasBlends).toBe(setting.hasBlends);
    const film = pickFrames(setting, pictures, entriesFor(setting, pictures));
    expect(film.numbers).toEqual(counted(setting.filmFrames));
    const nativeFps = rate(setting.nativeFps).valueOf();
    expect(film.statedFps).toBeCloseTo(nativeFps, 1);
    expect(film.seconds).toHaveLength(setting.filmFrames);
    for (const [at, seconds] of film.seconds.entries()) {
      expect(Math.abs(seconds - at / nativeFps)).toBeLessThan(STAMP_ROUNDING);
    }
  });

  test('a list tied at both ends makes up for a film rate that was typed 0.4 % too fast', () => {
    const setting = settings[3]!;
    const pictures = record(setting);
    const untied = { ...entriesFor(setting, pictures), filmFps: '18' };
    const lost = pickFrames(setting, pictures, untied);
    expect(lost.numbers).not.toEqual(counted(setting.filmFrames));
    const last = middleOfClean(pictures, setting.filmFrames - 1);
    const tied = pickFrames(setting, pictures, {
      ...untied,
      lastCameraFrame: String(last),
    });
    expect(tied.numbers).toEqual(counted(setting.filmFrames));
  });

  test('a list through four ties, with the film rate typed wrong, picks every film frame once', () => {
    const setting = settings[3]!;
    const pictures = record(setting);
    const places = [90, 201];
    const tied = pickFrames(setting, pictures, {
      ...entriesFor(setting, pictures),
      filmFps: '18',
      lastCameraFrame: String(middleOfClean(pictures, setting.filmFrames - 1)),
      tieFilmFrames: places.map((place) => place + 1).join('; '),
      tieCameraFrames: places.map((place) => middleOfClean(pictures, place)).join('; '),
    });
    expect(tied.numbers).toEqual(counted(setting.filmFrames));
  });

  test('a list for a film rate that is out picks blended or wrong frames, so the test can fail', () => {
    const setting = settings[0]!;
    const pictures = record(setting);
    const entries = { ...entriesFor(setting, pictures), filmFps: '18.2' };
    const film = pickFrames(setting, pictures, entries);
    expect(film.numbers).toHaveLength(setting.filmFrames);
    expect(film.numbers).not.toEqual(counted(setting.filmFrames));
  });
});

describe.skipIf(ffmpeg === undefined)(ffmpegTitle('the printed repeat command'), () => {
  /** Any two that come three apart are one pair of whole numbers and one that is none. */
  const timelines = [
    ['18', '25', 90],
    ['18', '50', 91],
    ['16', '24', 80],
    ['24', '30000/1001', 100],
    ['24000/1001', '60000/1001', 97],
    ['50/3', '25', 77],
  ] as const;

  test.each(someOf(timelines, 'timelines'))(
    '%s on a timeline of %s shows each frame as the pattern says',
    (native, delivery, length) => {
      const command = printedCommand(repeatWorksheet, {
        nativeFps: native,
        deliveryFps: delivery,
        filmFrames: String(length),
      });
      const shown = withFolder((folder) => {
        writeVideo(folder, 'film.mkv', native, counted(length).map(drawNumber));
        runPasted(folder, command);
        return readVideo(folder, 'delivery.mkv');
      });
      const outputs = outputFramesFor(length, rate(native), rate(delivery));
      expect(shown.numbers).toEqual(
        counted(outputs).map((at) => filmFrameAtOutput(at, rate(native), rate(delivery))),
      );
      const deliveryFps = rate(delivery).valueOf();
      expect(shown.statedFps).toBeCloseTo(deliveryFps, 1);
      for (const [at, seconds] of shown.seconds.entries()) {
        expect(Math.abs(seconds - at / deliveryFps)).toBeLessThan(STAMP_ROUNDING);
      }
    },
  );
});

describe('the text of the commands', () => {
  test('keeps rates exact and short enough for a video tool', () => {
    const list = makeKeepList(rate('18'), rate('60000/1001'), 0, 100);
    const rule = keepRuleOf(list);
    expect(rule).toBeDefined();
    if (rule === undefined) return;
    expect(keepCommand([rule], rate('24000/1001'))).toContain('settb=1001/24000,');
    expect(keepCommand([rule], rate('24000/1001'))).toContain('-r 24000/1001 ');
    const odd = keepCommand([rule], rate('17.123456789123'));
    const [, top = '', bottom = ''] = /-r (\d+)\/(\d+) /u.exec(odd) ?? [];
    expect(Number(top)).toBeLessThan(2 ** 31);
    expect(Number(top) / Number(bottom)).toBeCloseTo(17.123456789123, 7);
  });

  test('names the matrix that the scaler of some versions drops, or that the recording lacks', () => {
    const tags = (codeRange: string): string =>
      printedCommand(keepListWorksheet, { codeRange }).replace(/^.*-slicecrc 1/u, '');
    expect(tags('full-bt709')).toContain('-colorspace bt709');
    expect(tags('full-bt601')).toContain('-colorspace smpte170m');
    expect(tags('limited-unnamed')).toContain('-color_range tv -colorspace bt709');
    expect(tags('limited')).not.toContain('-colorspace');
  });

  test('holds nothing that a shell would act on inside its double quotes', () => {
    const commands = [
      repeatCommand(rate('18'), rate('25')),
      printedCommand(keepListWorksheet, {}),
      printedCommand(repeatWorksheet, {}),
    ];
    for (const command of commands) expect(command).not.toMatch(/[$`\\!%^&|<>]/u);
  });
});
