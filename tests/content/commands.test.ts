import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ffmpeg, ffmpegTitle, runFfmpeg } from '../tools/ffmpeg.ts';
import { readChapters } from './read-content.ts';

/** Commands that a chapter prints to be copied, in order. */
function commandsIn(body: string): readonly string[] {
  return [...body.matchAll(/^```sh\n([^\n]+)\n```$/gmu)].map(([, command = '']) => command);
}

const commands = readChapters().flatMap(({ id, body }) =>
  commandsIn(body).map((command) => ({ chapter: id, command })),
);

/** The chapter names this one for systems that lack the first. */
const checksumTool =
  spawnSync('sha256sum', ['--version']).status === 0 ? 'sha256sum' : 'shasum -a 256';

describe.runIf(ffmpeg !== undefined)(ffmpegTitle('the commands printed in chapters'), () => {
  let folder = '';

  /** Runs a command in the folder as a reader's terminal would, with the ffmpeg of the tests. */
  function runInFolder(command: string): string {
    const line = command
      .replace(/^ffmpeg /u, `"${ffmpeg?.path ?? ''}" -loglevel error -nostdin -y `)
      .replace(/^sha256sum /u, `${checksumTool} `);
    const { status, stdout, stderr } = spawnSync('sh', ['-c', line], {
      cwd: folder,
      encoding: 'utf8',
    });
    if (status !== 0) throw new Error(`${command}: ${stderr}`);
    return stdout;
  }

  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'film-'));
    const pattern = ['-f', 'lavfi', '-i', 'testsrc2=s=160x120:r=18', '-frames:v', '36'];
    runFfmpeg([...pattern, '-c:v', 'ffv1', 'film.mkv'], folder);
    runFfmpeg(['-i', 'film.mkv', '-r', '25', '-c:v', 'ffv1', 'delivery.mkv'], folder);
    runFfmpeg(['-f', 'lavfi', '-i', 'sine=440:r=48000', '-t', '2', 'shown.wav'], folder);
  });

  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  test('are there', () => {
    expect(commands.length).toBeGreaterThan(3);
  });

  test.each(commands)('$chapter: $command', ({ command }) => {
    const said = runInFolder(command);
    const written = /(?:^ffmpeg .* |> )([\w-]+\.\w+)$/u.exec(command)?.[1];
    if (written === undefined) {
      expect(said).toMatch(/: OK$/mu);
      return;
    }
    expect(existsSync(join(folder, written))).toBe(true);
    expect(statSync(join(folder, written)).size).toBeGreaterThan(100);
  });

  test('list one checksum for each picture, the same for a rewrapped master', () => {
    const pictures = (file: string): readonly string[] =>
      readFileSync(join(folder, file), 'utf8')
        .split('\n')
        .filter((line) => line !== '' && !line.startsWith('#'));
    runInFolder('ffmpeg -i film-with-sound.mkv -map 0:v -f framemd5 again.framemd5');
    const before = pictures('film.framemd5').map((line) => line.split(',').at(-1));
    const after = pictures('again.framemd5').map((line) => line.split(',').at(-1));
    expect(before).toHaveLength(36);
    expect(after).toEqual(before);
  });
});
