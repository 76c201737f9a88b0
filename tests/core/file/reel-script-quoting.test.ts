// Quoting for both shells, and whether the PowerShell text says the same as the POSIX one that is run.
import fc from 'fast-check';
import Fraction from 'fraction.js';
import { spawnSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';
import { makeKeepReel } from '../../../src/core/file/keep-ties.ts';
import { commandWords } from '../../../src/core/file/reel-script/command-words.ts';
import { reelScripts } from '../../../src/core/file/reel-script/reel-scripts.ts';
import type { ReelScriptEntries } from '../../../src/core/file/reel-script/script-entries.ts';
import {
  commentText,
  posixQuoted,
  powershellQuoted,
} from '../../../src/core/file/reel-script/shell-quoting.ts';
import { TOP_TO_BOTTOM } from '../../../src/core/gate/picture-turn.ts';
import { readPowershell, wordListsIn } from './powershell-text.ts';

const HARD_NAMES = [
  "Ada's reel.mov",
  'Ada’s ‘reel’ ‚7‛.mov',
  '„Müller & Söhne“ "1962".mov',
  '$HOME `date` $(rm -rf .) \\ %PATH% !.mov',
  "'; exit 1; '",
  '-n.mov',
  '#~*?[a]{b}|<>&.mov',
  "''",
];

const entries: ReelScriptEntries = {
  reelName: 'Reel 7',
  recordingName: 'recording.mov',
  cameraFps: new Fraction(50),
  nativeFps: new Fraction(18),
  deliveryFps: new Fraction(25),
  keep: {
    by: 'ties',
    reel: makeKeepReel(
      [{ filmFrame: 0, cameraFrame: 126 }],
      new Fraction(18),
      new Fraction(50),
      3600,
    ),
  },
  recorded: { turn: TOP_TO_BOTTOM, codeRange: 'limited' },
  crop: { leftPixels: 6, topPixels: 12, widthPixels: 84, heightPixels: 48 },
  sound: {
    fileName: 'taken.wav',
    takenFps: new Fraction(20),
    sampleRateHz: 48_000,
    lateSeconds: -0.25,
  },
};
const measured: ReelScriptEntries = {
  ...entries,
  keep: { by: 'measured', cameraFrames: [1, 4, 7, 9] },
};

const byFile: ReelScriptEntries = { ...entries, keep: { by: 'file', filmFrames: 4 } };

/** A text that sh reads from a quoted word. */
const readBySh = (words: readonly string[]): readonly string[] =>
  spawnSync('sh', ['-c', `for word in ${words.join(' ')}; do printf '%s\\0' "$word"; done`], {
    encoding: 'utf8',
  })
    .stdout.split('\0')
    .slice(0, -1);

describe('a quoted word', () => {
  test('is read back by sh sign for sign', () => {
    const random = fc.sample(fc.string({ unit: 'binary', minLength: 1, maxLength: 30 }), {
      numRuns: 60,
      seed: 7,
    });
    const texts = [...HARD_NAMES, ...random].filter(
      (text) => !text.includes('\0') && text.isWellFormed(),
    );
    expect(texts.length).toBeGreaterThan(40);
    expect(readBySh(texts.map((text) => posixQuoted(text)))).toEqual(texts);
  });

  test('is one verbatim text by the lexical rules of PowerShell', () => {
    const signs = fc.constantFrom(...'\'‘’‚‛"“”„`$()@#;\nabü ');
    fc.assert(
      fc.property(fc.string({ unit: signs, maxLength: 30 }), (text) => {
        expect(readPowershell(powershellQuoted(text))).toEqual([{ kind: 'text', value: text }]);
      }),
    );
  });

  test('would break without the curly quotes, so the rule matters', () => {
    expect(readPowershell("'Ada’s'x'")).not.toEqual([{ kind: 'text', value: 'Ada’s' }]);
    expect(powershellQuoted('Ada’s')).toBe("'Ada’’s'");
  });
});

describe('the words of a command', () => {
  test('refuse a line that a shell would not take literally', () => {
    for (const line of ['a $b', 'a `b`', 'a > b', 'a | b', "a 'b'", 'a "b', 'a  b', 'a b; c'])
      expect(() => commandWords(line)).toThrow('not a plain command');
  });
});

describe('names in a script', () => {
  test.each(HARD_NAMES)('%s reaches both shells unchanged', (name) => {
    const scripts = reelScripts({
      ...entries,
      recordingName: name,
      sound: { ...entries.sound!, fileName: name },
    });
    const settings = scripts.posix
      .split('\n')
      .filter((line) => /^(?:recording|taken)='/u.test(line))
      .map((line) => line.replace(/^\w+=/u, ''));
    expect(readBySh(settings)).toEqual([name, name]);
    const texts = readPowershell(scripts.powershell).filter(({ kind }) => kind === 'text');
    // First the mode, then the two names.
    expect(texts.slice(0, 3).map(({ value }) => value)).toEqual(['all', name, name]);
  });

  test('of a reel stay in one comment line, whatever they hold', () => {
    const reelName = 'Reel 7\nrm -rf .\r\u2028Remove-Item *\u202e';
    expect(commentText(reelName)).toBe('Reel 7 rm -rf . Remove-Item *');
    const { posix, powershell } = reelScripts({ ...entries, reelName });
    for (const script of [posix, powershell]) {
      expect(script).toContain('# Reel 7 rm -rf . Remove-Item *\n');
      expect(script).not.toMatch(/^(?:rm -rf|Remove-Item \*)/mu);
    }
  });

  test('with line breaks, and empty ones, are refused', () => {
    for (const recordingName of ['', ' ', 'a\nb.mov', 'a\0.mov'])
      expect(() => reelScripts({ ...entries, recordingName })).toThrow(OutOfRangeError);
    expect(() =>
      reelScripts({ ...entries, sound: { ...entries.sound!, fileName: 'a\rb.wav' } }),
    ).toThrow(/soundName/u);
  });
});

describe('numbers that no script can hold', () => {
  test.each([
    ['deliveryFps', { deliveryFps: new Fraction(16) }],
    [
      'cameraFps',
      {
        keep: {
          by: 'ties',
          reel: makeKeepReel(
            [{ filmFrame: 0, cameraFrame: 5 }],
            new Fraction(18),
            new Fraction(15),
            10,
          ),
        },
      },
    ],
    ['cameraFrames', { keep: { by: 'measured', cameraFrames: [] } }],
    ['cameraFrames', { keep: { by: 'measured', cameraFrames: [3, 3] } }],
  ] as const)('name %s', (argument, wrong) => {
    expect(() => reelScripts({ ...entries, ...wrong })).toThrow(new RegExp(`^${argument}:`, 'u'));
  });
});

/** The commands that make files, as sh reads them. */
function commandsOfSh(script: string): readonly (readonly string[])[] {
  const lines = script
    .split('\n')
    .filter((line) => /^(?:then |else )?make \S+ ffmpeg/u.test(line))
    .map((line) => line.replace(/^(?:then|else) /u, ''));
  const { stdout } = spawnSync(
    'sh',
    [
      '-c',
      `recording='$recording'; taken='$taken'; make() { shift; printf '%s\\0' "$@"; printf '\\n'; }\n${lines.join('\n')}`,
    ],
    { encoding: 'utf8' },
  );
  return stdout
    .trimEnd()
    .split('\n')
    .map((line) => line.split('\0').slice(0, -1));
}

describe.each([
  ['by ties', entries],
  ['by a measured list', measured],
  ['by the file of a measured list', byFile],
  ['without sound', { ...entries, sound: undefined }],
])('the PowerShell text of a reel %s', (_, reel) => {
  const { posix, powershell } = reelScripts(reel);
  const tokens = readPowershell(powershell);
  const code = tokens.flatMap(({ kind, value }) => (kind === 'other' ? [value] : [])).join(' ');

  test('begins with the mark by which PowerShell 5.1 knows UTF-8', () => {
    expect(powershell.startsWith('\uFEFF#')).toBe(true);
  });

  test('runs the very commands that sh runs, word for word and in order', () => {
    const made = commandsOfSh(posix);
    expect(made.length).toBeGreaterThanOrEqual(4);
    const lists = wordListsIn(tokens).filter(
      ([program, first, second]) => program === 'ffmpeg' && first === '-nostdin' && second === '-n',
    );
    expect(lists).toEqual(made);
  });

  test('closes every bracket that it opens', () => {
    const open: string[] = [];
    const pairs: Readonly<Record<string, string>> = { ')': '(', ']': '[', '}': '{' };
    for (const sign of code.match(/[()[\]{}]/gu) ?? []) {
      const opener = pairs[sign];
      if (opener === undefined) open.push(sign);
      else expect(open.pop()).toBe(opener);
    }
    expect(open).toEqual([]);
  });

  test('calls only functions that it defines, and cmdlets of version 5.1', () => {
    const defined = [...code.matchAll(/function ([\w-]+)/gu)].map(([, name]) => name!);
    expect(defined.length).toBeGreaterThan(5);
    const cmdlets =
      'Get-ChildItem Where-Object ForEach-Object Get-FileHash Resolve-Path Get-Content Test-Path Join-Path Get-Location Write-Host Remove-Item Get-Item Rename-Item Get-Command';
    const called = code.match(/\b[A-Z][a-z]+-[A-Z][A-Za-z]+\b/gu) ?? [];
    expect(called.length).toBeGreaterThan(20);
    for (const name of called) expect([...defined, ...cmdlets.split(' ')]).toContain(name);
  });

  test('reads only variables that it has set', () => {
    const set = new Set([
      ...[...code.matchAll(/\$(?:script:)?(\w+)(?:, \$\w+)* =/gu)].map(([, name]) => name!),
      ...[...code.matchAll(/function [\w-]+\(([^)]*)\)/gu)].flatMap(([, names]) =>
        [...names!.matchAll(/\$(\w+)/gu)].map(([, name]) => name!),
      ),
      ...[...code.matchAll(/foreach \(\$(\w+) in/gu)].map(([, name]) => name!),
      ...['_', 'false', 'LASTEXITCODE', 'PWD', 'Matches', 'name'],
    ]);
    const inTexts = tokens.flatMap(({ kind, value }) => (kind === 'expandable' ? [value] : []));
    const read = [code, ...inTexts].flatMap((text) =>
      [...text.matchAll(/\$\{?(?:script:)?(\w+)/gu)].map(([, name]) => name!),
    );
    expect(read.length).toBeGreaterThan(30);
    for (const name of read) expect([...set]).toContain(name);
  });
});
