import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { CHECKSUM_COMMANDS, VERIFY_COMMANDS } from '../../src/core/file/file-checks.ts';
import { FILE_NAMES } from '../../src/core/file/file-names.ts';
import {
  CAMERA_CHECKSUM_COMMANDS,
  describeCommand,
  DETECT_COMMAND,
  evenGridCommand,
  fieldsCommand,
  FRAME_TIMES_COMMAND,
  JOIN_PARTS_COMMAND,
} from '../../src/core/file/recording-commands.ts';
import {
  MASTER_WITH_SOUND_COMMAND,
  PICTURE_CHECKSUMS_COMMAND,
  READ_MASTER_COMMAND,
  viewingCommand,
} from '../../src/core/file/viewing-commands.ts';
import { worksheets } from '../../src/worksheets/registry.ts';
import { evaluate, fillEntries } from '../../src/worksheets/machine/evaluate.ts';
import { readChapters } from './read-content.ts';

/** Commands that a chapter prints to be copied, in order. */
function commandsIn(body: string): readonly string[] {
  return [...body.matchAll(/^```(?:sh|powershell)\n([^\n]+)\n```$/gmu)].map(
    ([, line = '']) => line,
  );
}

const chapters = readChapters();
const printed = chapters.flatMap(({ id, body }) =>
  commandsIn(body).map((command) => ({ chapter: id, command })),
);

/** Commands of the core that no sheet prints; tests/core runs each of them on real files. */
const PROVEN: readonly string[] = [
  describeCommand(FILE_NAMES.recording),
  DETECT_COMMAND,
  fieldsCommand(),
  FRAME_TIMES_COMMAND,
  JOIN_PARTS_COMMAND,
  evenGridCommand(new Fraction(120)),
  ...Object.values(CAMERA_CHECKSUM_COMMANDS),
  READ_MASTER_COMMAND,
  PICTURE_CHECKSUMS_COMMAND,
  MASTER_WITH_SOUND_COMMAND,
  viewingCommand(undefined, false),
  viewingCommand(undefined, true),
  ...Object.values(CHECKSUM_COMMANDS),
  ...Object.values(VERIFY_COMMANDS),
];

/** Every command that a sheet prints with its first entries, and with those that make it print more. */
const ofSheets = [...worksheets.values()].flatMap((worksheet) =>
  [{}, { loopErrorFrames: '2' }, { pitch: 'kept', shownFps: '25' }].flatMap((entries) => {
    const known = Object.entries(entries).filter(([key]) => key in worksheet.inputs);
    const { outcome } = evaluate(
      worksheet,
      fillEntries(worksheet.inputs, Object.fromEntries(known)),
    );
    return (outcome?.commands ?? []).map(({ text }) => text);
  }),
);

const NAMES: readonly string[] = Object.values(FILE_NAMES);

/** Names of files in a command; numbers and filters have no such ending. */
const namesIn = (command: string): readonly string[] =>
  command.match(/[\w-]+\.(?:mov|mkv|mp4|wav|png|csv|txt|framemd5)\b/gu) ?? [];

describe('the commands printed in chapters', () => {
  test('are those that the tests of the core run, all of them', () => {
    expect(printed.length).toBe(PROVEN.length);
    expect(printed.map(({ command }) => command).toSorted()).toEqual(PROVEN.toSorted());
  });

  test('stand alone in a block, so that a reader copies one line', () => {
    for (const { body } of chapters) {
      const blocks = body.match(/^```\w+\n/gmu) ?? [];
      expect(commandsIn(body)).toHaveLength(blocks.length);
    }
  });
});

describe('the names of files', () => {
  test('are the same in every command of chapters and sheets', () => {
    const all = [...printed.map(({ command }) => command), ...ofSheets];
    expect(ofSheets.length).toBeGreaterThan(8);
    for (const command of all) {
      expect(namesIn(command).length).toBeGreaterThan(0);
      for (const name of namesIn(command)) expect(NAMES).toContain(name);
    }
  });

  test('link up: what a command reads was written by another, by a camera, a recorder or by hand', () => {
    const all = [...printed.map(({ command }) => command), ...ofSheets];
    const { camera, recording, taken, parts } = FILE_NAMES;
    const made = new Set<string>([camera, recording, taken, parts]);
    for (const command of all) {
      const written = /(?:^ffmpeg .* |> )"?([\w-]+\.\w+)"?$/u.exec(command)?.[1];
      if (written !== undefined) made.add(written);
      const bySox = /^sox \S+ -b 24 (\S+)/u.exec(command)?.[1];
      if (bySox !== undefined) made.add(bySox);
    }
    const read = all.flatMap((command) =>
      [...command.matchAll(/(?:-i|^sox) "?([\w-]+\.\w+)"?/gu)].map(([, name]) => name!),
    );
    expect(read.length).toBeGreaterThan(20);
    for (const name of read) expect([...made]).toContain(name);
  });

  test('that a chapter speaks of are names of the chain', () => {
    const spoken = chapters
      .filter(({ id }) => /^file\/|^gate\/lens/u.test(id))
      .flatMap(({ body }) => [...body.matchAll(/`([\w-]+\.(?:mkv|mp4|wav|png|csv|framemd5))`/gu)])
      .map(([, name]) => name!)
      // The example of a lasting name in the section on names.
      .filter((name) => !name.startsWith('millbrook-'));
    expect(spoken.length).toBeGreaterThan(10);
    for (const name of spoken) expect(NAMES).toContain(name);
  });

  test('that a reader may choose stand between quotation marks', () => {
    for (const command of [...printed.map((each) => each.command), ...ofSheets]) {
      for (const name of ['recording.mov', 'camera.mov', 'taken.wav']) {
        if (command.includes(name)) expect(command).toContain(`"${name}"`);
      }
    }
  });
});
