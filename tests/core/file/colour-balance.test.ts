import { writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { balanceStops, codeDensity, dyeRestoring } from '../../../src/core/file/colour-balance.ts';
import { FILE_NAMES } from '../../../src/core/file/file-names.ts';
import { cropFilter, viewingCommand } from '../../../src/core/file/viewing-commands.ts';
import { evaluate, fillEntries } from '../../../src/worksheets/machine/evaluate.ts';
import { worksheet as fadedSheet } from '../../../src/worksheets/file/faded-dye/worksheet.ts';
import { worksheet as greySheet } from '../../../src/worksheets/file/grey-patch/worksheet.ts';
import { ffmpeg, ffmpegTitle, runFfmpeg, runPasted } from '../../tools/ffmpeg.ts';
import { withFolder } from '../../tools/numbered-frames.ts';
import { expectRelative } from '../relative.ts';

const grey = (entries: Record<string, string>) =>
  evaluate(greySheet, fillEntries(greySheet.inputs, entries)).outcome!;
const faded = (entries: Record<string, string>) =>
  evaluate(fadedSheet, fillEntries(fadedSheet.inputs, entries)).outcome!;

describe('balance from a grey patch', () => {
  test.each([
    [0.6, 0.5, 0.4, -0.579, 0.708],
    [0.55, 0.5, 0.42, -0.303, 0.553],
  ])('%d %d %d', (red, green, blue, redStops, blueStops) => {
    const stops = balanceStops({ red, green, blue }, 2.2);
    expect(stops.red).toBeCloseTo(redStops, 3);
    expect(stops.blue).toBeCloseTo(blueStops, 3);
    // Light of each channel, doubled so many times, is that of green.
    expectRelative(red ** 2.2 * 2 ** stops.red, green ** 2.2, 1e-9);
    expectRelative(blue ** 2.2 * 2 ** stops.blue, green ** 2.2, 1e-9);
  });

  test('refuses a patch that clips or drowns, and leaves a neutral one', () => {
    expect(grey({ red: '250' }).verdict.level).toBe('stop');
    expect(grey({ blue: '10' }).verdict.level).toBe('stop');
    expect(grey({ red: '128', green: '128', blue: '128' }).verdict.level).toBe('good');
    expect(grey({ red: '250' }).commands).toBeUndefined();
    expect(
      evaluate(greySheet, fillEntries(greySheet.inputs, { red: '600' })).messages,
    ).toHaveProperty('red');
  });
});

test('crop and colour go into one command as the chapter says', () => {
  const coloured = grey({}).commands![1]!.text;
  const crop = { leftPixels: 288, topPixels: 34, widthPixels: 1344, heightPixels: 1014 };
  const filter = /lutrgb=[^"]*(?=,scale)/u.exec(coloured)![0];
  const byHand = coloured.replace('lutrgb=', `${cropFilter(crop)},lutrgb=`);
  expect(byHand).toBe(viewingCommand(crop, false, [filter]));
});

describe('faded dye', () => {
  const codeOf = (density: number) => 10 ** (-density / 2.2);

  test('gets the contrast and the offset worked out by hand', () => {
    const restoring = dyeRestoring(
      { red: codeOf(0.1), green: codeOf(0.12), blue: codeOf(0.25) },
      { red: codeOf(1.1), green: codeOf(1.9), blue: codeOf(1.7) },
      2.2,
    );
    expectRelative(codeDensity(codeOf(1.1), 2.2), 1.1, 1e-9);
    expect(restoring.red.contrast).toBeCloseTo(1.78, 3);
    expect(restoring.green.contrast).toBeCloseTo(1, 9);
    expect(restoring.blue.contrast).toBeCloseTo(1.228, 3);
    expect(restoring.red.offset).toBeCloseTo(-0.058, 3);
    expect(restoring.blue.offset).toBeCloseTo(-0.187, 3);
  });

  test('says stop where too little dye is left, care where the codes are few', () => {
    expect(faded({}).verdict.level).toBe('note');
    expect(faded({ blackRed: '140' }).verdict.level).toBe('stop');
    expect(faded({ blackRed: '100', whiteRed: '175' }).verdict.level).not.toBe('note');
    expect(
      evaluate(fadedSheet, fillEntries(fadedSheet.inputs, { blackRed: '240' })).messages,
    ).toHaveProperty('blackRed');
  });
});

/** A delivery file of two flat halves, lossless, and what the command of a sheet makes of them. */
function throughCommand(
  command: string,
  left: readonly number[],
  right: readonly number[],
): readonly (readonly number[])[] {
  return withFolder((folder) => {
    const width = 64;
    const frame = Buffer.alloc(width * width * 3);
    for (let at = 0; at < width * width; at += 1) {
      const colour = at % width < width / 2 ? left : right;
      colour.forEach((code, channel) => {
        frame[at * 3 + channel] = code;
      });
    }
    const raw = `${folder}/in.rgb`;
    runFfmpegInput(folder, raw, frame, width);
    runPasted(folder, command);
    const out = runFfmpeg(
      [
        ...['-i', FILE_NAMES.viewing, '-frames:v', '1'],
        ...[
          '-vf',
          'scale=in_color_matrix=bt709:in_range=limited:flags=accurate_rnd+full_chroma_int',
        ],
        ...['-pix_fmt', 'rgb24', '-f', 'rawvideo', '-'],
      ],
      folder,
    );
    const pixel = (x: number): readonly number[] => {
      const at = (32 * width + x) * 3;
      return [out[at]!, out[at + 1]!, out[at + 2]!];
    };
    return [pixel(12), pixel(52)];
  });
}

function runFfmpegInput(folder: string, raw: string, frame: Buffer, width: number): void {
  writeFileSync(raw, Buffer.concat([frame, frame]));
  runFfmpeg(
    [
      ...['-f', 'rawvideo', '-pix_fmt', 'rgb24', '-s', `${width}x${width}`, '-r', '25'],
      ...[
        '-i',
        'in.rgb',
        '-vf',
        'scale=out_color_matrix=bt709:out_range=full',
        '-pix_fmt',
        'yuv444p',
      ],
      ...['-color_range', 'pc', '-colorspace', 'bt709', '-c:v', 'ffv1', FILE_NAMES.delivery],
    ],
    folder,
  );
}

describe.skipIf(ffmpeg === undefined)(ffmpegTitle('the command of the colour sheets'), () => {
  const near = (codes: readonly number[], wanted: readonly number[], within: number) => {
    codes.forEach((code, channel) => {
      expect(Math.abs(code - wanted[channel]!), `${codes} for ${wanted}`).toBeLessThanOrEqual(
        within,
      );
    });
  };

  test('makes the grey patch grey and leaves its green', () => {
    const command = grey({}).commands![1]!.text;
    const [patch, other] = throughCommand(command, [153, 128, 102], [60, 100, 40]);
    near(patch!, [128, 128, 128], 4);
    near(other!, [50, 100, 50], 4);
  });

  test('brings a faded clear part and a faded black back to neutral', () => {
    const command = faded({}).commands![1]!.text;
    const [clear, black] = throughCommand(command, [230, 225, 196], [81, 35, 43]);
    near(clear!, [225, 225, 224], 4);
    near(black!, [35, 35, 34], 4);
  });
});
