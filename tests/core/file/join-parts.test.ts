import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { FILE_NAMES } from '../../../src/core/file/file-names.ts';
import { JOIN_PARTS_COMMAND } from '../../../src/core/file/recording-commands.ts';
import { ffmpeg, ffmpegTitle, runFfmpeg, runPasted } from '../../tools/ffmpeg.ts';
import {
  drawPicture,
  EIGHT_BIT,
  readClip,
  readNumber,
  writeClip,
} from '../../tools/lettered-clip.ts';
import { withFolder } from '../../tools/numbered-frames.ts';

const PARTS = [
  ['clip 1.mov', [0, 1, 2, 3, 4, 5, 6]],
  ['clip 2.mov', [7, 8, 9]],
  ['clip 3.mov', [10, 11, 12, 13, 14]],
] as const;

/** Checksums of every picture of a file. */
const checksums = (folder: string, fileName: string): readonly string[] =>
  String(runFfmpeg(['-i', fileName, '-map', '0:v', '-f', 'framemd5', '-'], folder))
    .split('\n')
    .filter((line) => /^0,/u.test(line))
    .map((line) => line.split(',').at(-1)!.trim());

describe.skipIf(ffmpeg === undefined)(ffmpegTitle('parts that a camera cut'), () => {
  test.each([
    ['picture alone', []],
    ['picture with sound', ['-f', 'lavfi', '-i', 'sine=frequency=440:sample_rate=48000']],
  ])('%s: every picture follows the one before it, unchanged', (_, sound) => {
    withFolder((folder) => {
      for (const [name, numbers] of PARTS) {
        writeClip(
          folder,
          'plain.mov',
          EIGHT_BIT,
          numbers.map((number) => drawPicture(number, EIGHT_BIT)),
          '25',
          ['-bf', '2', '-g', '4'],
        );
        runFfmpeg(
          ['-i', 'plain.mov', ...sound, '-c:v', 'copy', '-c:a', 'pcm_s16le', '-shortest', name],
          folder,
        );
      }
      const list = PARTS.map(([name]) => `file '${name}'\n`).join('');
      writeFileSync(join(folder, FILE_NAMES.parts), list);
      runPasted(folder, JOIN_PARTS_COMMAND);
      const shown = readClip(folder, FILE_NAMES.recording, EIGHT_BIT).map((picture) =>
        readNumber(picture[0]!, 8),
      );
      expect(shown).toEqual(Array.from({ length: 15 }, (_unused, at) => at));
      expect(checksums(folder, FILE_NAMES.recording)).toEqual(
        PARTS.flatMap(([name]) => checksums(folder, name)),
      );
    });
  });
});
