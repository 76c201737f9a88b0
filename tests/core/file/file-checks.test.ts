import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { CHECKSUM_COMMANDS, VERIFY_COMMANDS } from '../../../src/core/file/file-checks.ts';
import { FILE_NAMES } from '../../../src/core/file/file-names.ts';
import { runAsPasted, runPasted } from '../../tools/ffmpeg.ts';
import { withFolder } from '../../tools/numbered-frames.ts';

/** One file of every kind in the chain, some in folders, some with names that a shell could break. */
const FILES = [
  ...Object.values(FILE_NAMES).filter((name) => name !== FILE_NAMES.fileChecksums),
  'what was done.txt',
  'reel 7/film.mkv',
  'reel 7/Box, side “A” (1974) & lid.jpg',
  "reel 7/Oma's sound [left].wav",
  'reel 8/deeper/notes.csv',
];

function fill(folder: string): void {
  for (const name of FILES) {
    mkdirSync(join(folder, name, '..'), { recursive: true });
    writeFileSync(join(folder, name), `bytes of ${name}\n`);
  }
  writeFileSync(join(folder, '.DS_Store'), 'a note of the system');
}

const knows = (program: string): boolean =>
  spawnSync(program, ['--version']).status === 0 || spawnSync(program, ['-v']).status === 0;

const systems = [
  { system: 'linux', program: 'sha256sum' },
  { system: 'macos', program: 'shasum' },
] as const;

describe.each(systems)('the checksums of a folder on $system', ({ system, program }) => {
  const title = (text: string) => (knows(program) ? text : `${text} (SKIPPED: no ${program})`);

  test.runIf(knows(program))(title('cover every file of every kind, and nothing else'), () => {
    withFolder((folder) => {
      fill(folder);
      runPasted(folder, CHECKSUM_COMMANDS[system]);
      // A second run must not list the list.
      runPasted(folder, CHECKSUM_COMMANDS[system]);
      const lines = readFileSync(join(folder, FILE_NAMES.fileChecksums), 'utf8').trim().split('\n');
      const listed = new Map(lines.map((line) => [line.slice(66), line.slice(0, 64)] as const));
      expect([...listed.keys()].toSorted()).toEqual(FILES.map((name) => `./${name}`).toSorted());
      for (const [name, sum] of listed) {
        const bytes = readFileSync(join(folder, name));
        expect(sum).toBe(createHash('sha256').update(bytes).digest('hex'));
      }
    });
  });

  test.runIf(knows(program))(title('find one changed byte, a missing file, and no other'), () => {
    withFolder((folder) => {
      fill(folder);
      runPasted(folder, CHECKSUM_COMMANDS[system]);
      const whole = runPasted(folder, VERIFY_COMMANDS[system]).stdout;
      expect(whole.match(/: OK$/gmu)).toHaveLength(FILES.length);
      /** What the check says of the files of a group, with one byte changed in each of them. */
      const expectFound = (changed: readonly string[]): void => {
        for (const name of changed) changeByte(join(folder, name));
        const { status, stdout } = runAsPasted(folder, VERIFY_COMMANDS[system]);
        expect(status).not.toBe(0);
        const failed = [...stdout.matchAll(/^\.\/(.*): FAILED$/gmu)].map(([, name]) => name);
        expect(failed.toSorted()).toEqual(changed.toSorted());
        for (const name of changed) changeByte(join(folder, name));
      };
      expectFound([FILES.at(-2)!]);
      // Groups in which no two files are alike, so that one taken for another would show.
      for (let group = 1; group <= FILES.length; group *= 2)
        expectFound(FILES.filter((_, at) => ((at + 1) & group) !== 0));
      runPasted(folder, VERIFY_COMMANDS[system]);
      renameSync(join(folder, FILES[0]!), join(folder, '.gone'));
      expect(runAsPasted(folder, VERIFY_COMMANDS[system]).status).not.toBe(0);
    });
  });
});

/** Turns one bit of a file, or turns it back. */
function changeByte(path: string): void {
  const bytes = readFileSync(path);
  bytes[3] = bytes[3]! ^ 1;
  writeFileSync(path, bytes);
}

describe('the checksum lines for Windows', () => {
  // No PowerShell runs with these tests; what can be read off the line is held here.
  test('take names as they are, write the same list, and leave the list itself out', () => {
    const { windows } = CHECKSUM_COMMANDS;
    expect(windows).toContain('-Recurse -File');
    expect(windows).toContain(`-ne "${FILE_NAMES.fileChecksums}"`);
    expect(windows.match(/-LiteralPath/gu)).toHaveLength(3);
    // A folder on another computer has a path that calls outside the shell read in this form only.
    expect(windows).toContain('$PWD.ProviderPath');
    expect(windows).not.toMatch(/\$PWD(?!\.ProviderPath)/u);
    expect(windows).toContain('.ToLower() + "  ."');
    expect(windows).toContain(String.raw`.Replace("\", "/")`);
    expect(windows).not.toContain('\n');
    expect(VERIFY_COMMANDS.windows).toContain('-LiteralPath $name');
    expect(VERIFY_COMMANDS.windows).not.toContain('\n');
  });
});
