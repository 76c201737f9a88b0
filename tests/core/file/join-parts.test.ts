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
import { checksumsOf } from '../../tools/picture-checksums.ts';

const PARTS = [
  ['clip 1.mov', [0, 1, 2, 3, 4, 5, 6]],
  ['clip 2.mov', [7, 8, 9]],
  ['clip 3.mov', [10, 11, 12, 13, 14]],
] as const;

const plainName = (name: string): string => `plain ${name}`;

/** The parts in the folder, with as much sound beside the picture as the picture lasts. */
function writeParts(folder: string, sound: readonly string[]): void {
  for (const [name, numbers] of PARTS) {
    writeClip(
      folder,
      sound.length === 0 ? name : plainName(name),
      EIGHT_BIT,
      numbers.map((number) => drawPicture(number, EIGHT_BIT)),
      '25',
      ['-bf', '2', '-g', '4'],
    );
  }
  if (sound.length === 0) return;
  const pictures = PARTS.flatMap(([name]) => ['-i', plainName(name)]);
  const parts = PARTS.flatMap(([name, numbers], at) => [
    ...['-map', `${at}:v`, '-map', `${PARTS.length}:a`, '-c:v', 'copy', '-c:a', 'pcm_s16le'],
    ...['-t', String(numbers.length / 25), name],
  ]);
  runFfmpeg([...pictures, ...sound, ...parts], folder);
}

describe.skipIf(ffmpeg === undefined)(ffmpegTitle('parts that a camera cut'), () => {
  test.each([
    ['picture alone', []],
    ['picture with sound', ['-f', 'lavfi', '-i', 'sine=frequency=440:sample_rate=48000']],
  ])('%s: every picture follows the one before it, unchanged', (_, sound) => {
    withFolder((folder) => {
      writeParts(folder, sound);
      const list = PARTS.map(([name]) => `file '${name}'\n`).join('');
      writeFileSync(join(folder, FILE_NAMES.parts), list);
      runPasted(folder, JOIN_PARTS_COMMAND);
      const shown = readClip(folder, FILE_NAMES.recording, EIGHT_BIT).map((picture) =>
        readNumber(picture[0]!, 8),
      );
      expect(shown).toEqual(Array.from({ length: 15 }, (_unused, at) => at));
      const [whole, ...parts] = checksumsOf(
        [FILE_NAMES.recording, ...PARTS.map(([name]) => name)].map((name) => ({
          path: join(folder, name),
          of: 'pictures',
        })),
      );
      expect(whole).toEqual(parts.flat());
    });
  });
});
