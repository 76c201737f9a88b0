// The PowerShell text of a reel, read by a grammar of others and held against what sh really runs.
//
// No PowerShell runs with these tests. Its text is parsed by the grammar of tree-sitter-powershell, the
// words of each command are worked out by the rules of the language, and the script for sh is run with
// stand-ins for the two programs that write down how they were called: both must be the same, call by
// call. What Windows PowerShell 5.1 does otherwise than a POSIX shell is asked of the tree.
import fc from 'fast-check';
import Fraction from 'fraction.js';
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { CHECKSUM_COMMANDS, VERIFY_COMMANDS } from '../../../src/core/file/file-checks.ts';
import { frameFilterText } from '../../../src/core/file/frame-filter.ts';
import { makeKeepReel } from '../../../src/core/file/keep-ties.ts';
import type { CodeRange } from '../../../src/core/file/recorded-picture.ts';
import { reelScripts } from '../../../src/core/file/reel-script/reel-scripts.ts';
import type { ReelScriptEntries } from '../../../src/core/file/reel-script/script-entries.ts';
import {
  HALF_TURN,
  LEFT_TO_RIGHT,
  RIGHT_WAY_ROUND,
  TOP_TO_BOTTOM,
} from '../../../src/core/gate/picture-turn.ts';
import { withFolder } from '../../tools/numbered-frames.ts';
import {
  around,
  ofType,
  powershellTree,
  settingsTree,
  valueOf,
  wordsIn,
  type TreeNode,
} from '../../tools/powershell-tree.ts';
import { isAsked } from '../../tools/sample-sizes.ts';

/** Names that a folder of Linux or macOS can hold; the last four also one of Windows. */
const HARD_NAMES = [
  '„Müller & Söhne“ "1962".mov',
  '"; Remove-Item * #.mov',
  '-n `whoami` $(date) $HOME.mov',
  "Ada's reel (1).mov",
  'Ada’s ‘reel’ ‚7‛ [a-z]{2}.mov',
  'Straße  #1, $env;@x%PATH%.mov',
  "''.mov",
];

const CAMERA_FPS = new Fraction(50);
const NATIVE_FPS = new Fraction(18);

const reel: ReelScriptEntries = {
  reelName: 'Reel 7',
  recordingName: 'recording.mov',
  cameraFps: CAMERA_FPS,
  nativeFps: NATIVE_FPS,
  deliveryFps: new Fraction(25),
  keep: {
    by: 'ties',
    reel: makeKeepReel([{ filmFrame: 0, cameraFrame: 126 }], NATIVE_FPS, CAMERA_FPS, 3600),
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
const sound = reel.sound!;
const LIST = [1, 4, 7, 9];
const twoTies = makeKeepReel(
  [
    { filmFrame: 0, cameraFrame: 5 },
    { filmFrame: 400, cameraFrame: 1005 },
  ],
  new Fraction(24),
  new Fraction(60000, 1001),
  401,
);

const REELS: Readonly<Record<string, ReelScriptEntries>> = {
  'by one tie, with late sound': reel,
  'by ties, without sound, whole picture': { ...reel, sound: undefined, crop: undefined },
  'by two ties, at rates that are no whole numbers': {
    ...reel,
    cameraFps: new Fraction(60000, 1001),
    nativeFps: new Fraction(24),
    deliveryFps: new Fraction(30000, 1001),
    keep: { by: 'ties', reel: twoTies },
    sound: { ...sound, takenFps: new Fraction(24), lateSeconds: 0, sampleRateHz: 96_000 },
  },
  'by a measured list, full range': {
    ...reel,
    keep: { by: 'measured', cameraFrames: LIST },
    recorded: { turn: HALF_TURN, codeRange: 'full-bt709' },
    sound: { ...sound, lateSeconds: 0.4 },
  },
  'by a measured list, silent, range not named': {
    ...reel,
    keep: { by: 'measured', cameraFrames: LIST },
    recorded: { turn: RIGHT_WAY_ROUND, codeRange: 'full-unnamed' },
    sound: undefined,
  },
  'by the file of a measured list': {
    ...reel,
    keep: { by: 'file', filmFrames: LIST.length },
    recorded: { turn: LEFT_TO_RIGHT, codeRange: 'full-bt601' },
  },
  'by the file of a measured list, silent, whole picture': {
    ...reel,
    keep: { by: 'file', filmFrames: LIST.length },
    recorded: { turn: TOP_TO_BOTTOM, codeRange: 'limited-unnamed' },
    sound: undefined,
    crop: undefined,
  },
  ...Object.fromEntries(
    HARD_NAMES.map((name) => [
      `with the name ${name}`,
      { ...reel, reelName: name, recordingName: name, sound: { ...sound, fileName: `s${name}` } },
    ]),
  ),
};

/** What a recording says of itself where its range was entered so. */
const COLOURS: Readonly<Record<CodeRange, string>> = {
  limited: 'color_range=tv\ncolor_space=bt709',
  'limited-unnamed': 'color_range=tv\ncolor_space=unknown',
  'full-bt709': 'color_range=pc\ncolor_space=bt709',
  'full-bt601': 'color_range=pc\ncolor_space=smpte170m',
  'full-unnamed': 'color_range=pc\ncolor_space=unknown',
};

/** Writes down how it was called, and answers as a program would to whom all is well. */
const STAND_IN = `#!/bin/sh
{ printf '%s\\0' "\${0##*/}" "$@"; printf '\\0'; } >> "$CALLS"
for last; do :; done
case "$*" in
  *-version*) echo "ffmpeg version $VERSION.1 Copyright" ;;
  *idet*) echo 'Multi frame detection: TFF: 0 BFF: 0 Progressive: 42' >&2; echo 'VFR:0.000000' >&2 ;;
  *codec_name*) printf '%s\\n' "$FACTS" ;;
  *nb_read_packets*) echo 100000 ;;
  *sample_rate*) echo "$HERTZ" ;;
  *stream=duration*) echo "$LASTS" ;;
  *framemd5*) yes '0, 0' | head -n "$FRAMES" > "$last" ;;
  *'-f null -'*) ;;
  *) echo made > "$last" ;;
esac
`;

const framesOf = ({ keep }: ReelScriptEntries): number =>
  keep.by === 'ties'
    ? keep.reel.filmFrames
    : keep.by === 'file'
      ? keep.filmFrames
      : keep.cameraFrames.length;

interface RunBySh {
  /** Every call of a program, in order, with its words. */
  readonly calls: readonly (readonly string[])[];
  /** Lines said on the screen that are no report of a result. */
  readonly said: readonly string[];
  readonly keepFilter: string | undefined;
  readonly isThere: (name: string) => boolean;
}

/** Runs the script for sh with the stand-ins. */
function runBySh(entries: ReelScriptEntries, version: number, use: (run: RunBySh) => void): void {
  withFolder((folder) => {
    const programs = join(folder, 'programs');
    mkdirSync(programs);
    for (const name of ['ffmpeg', 'ffprobe']) {
      writeFileSync(join(programs, name), STAND_IN);
      chmodSync(join(programs, name), 0o755);
    }
    const work = join(folder, 'work');
    mkdirSync(work);
    writeFileSync(join(work, 'make-reel.sh'), reelScripts(entries).posix);
    writeFileSync(join(work, entries.recordingName), 'x');
    if (entries.sound !== undefined) writeFileSync(join(work, entries.sound.fileName), 'x');
    if (entries.keep.by === 'file') {
      const text = frameFilterText(LIST, entries.nativeFps, entries.recorded);
      writeFileSync(join(work, 'keep-filter.txt'), text);
    }
    const rate = `${entries.cameraFps.n}/${entries.cameraFps.d}`;
    const facts = `field_order=progressive\n${COLOURS[entries.recorded.codeRange]}\nr_frame_rate=${rate}\navg_frame_rate=${rate}`;
    const { status, stdout, stderr } = spawnSync('sh', ['make-reel.sh'], {
      cwd: work,
      encoding: 'utf8',
      env: {
        ...process.env,
        PATH: [programs, process.env['PATH'] ?? ''].join(delimiter),
        CALLS: join(folder, 'calls'),
        VERSION: String(version),
        FACTS: facts,
        HERTZ: String(entries.sound?.sampleRateHz ?? ''),
        LASTS: String(framesOf(entries) / entries.nativeFps.valueOf()),
        FRAMES: String(framesOf(entries)),
      },
    });
    expect(`${stdout}${stderr}`).not.toContain('STOPPED');
    expect(status).toBe(0);
    const filter = join(work, 'keep-filter.txt');
    use({
      calls: readFileSync(join(folder, 'calls'), 'utf8')
        .split('\0\0')
        .slice(0, -1)
        .map((call) => call.split('\0')),
      said: stdout
        .trimEnd()
        .split('\n')
        .filter((line) => !/^ |: OK$/u.test(line)),
      keepFilter: existsSync(filter) ? readFileSync(filter, 'utf8') : undefined,
      isThere: (name) => existsSync(join(work, name)),
    });
  });
}

/** Name by which a call names its command: a plain one, or the variable after the sign of a call. */
const nameOf = ({ children }: TreeNode): string =>
  children.find(({ type }) => type.startsWith('command_name'))?.text ?? '';

/** Arguments of a call, each as the node of its word or of its list. */
function argumentsOf(command: TreeNode): readonly TreeNode[] {
  const elements = command.children.find(({ type }) => type === 'command_elements');
  return (elements?.children ?? []).filter(
    ({ type }) => type !== 'command_argument_sep' && type !== 'command_parameter',
  );
}

const named = ({ children }: TreeNode): readonly TreeNode[] =>
  children.filter(({ isNamed }) => isNamed);

/** Nodes of what runs when all is well, with this version of the program: no function, no stop. */
function running(root: TreeNode, version: number): readonly TreeNode[] {
  const nodes: TreeNode[] = [];
  const add = (node: TreeNode): void => {
    if (node.type === 'function_statement' || node.type === 'trap_statement') return;
    if (node.type !== 'if_statement') {
      nodes.push(node);
      for (const child of node.children) add(child);
      return;
    }
    const [condition] = named(node);
    const branches = node.children.filter(({ type }) =>
      ['statement_block', 'else_clause'].includes(type),
    );
    // Only the version of the program has a branch for each case; any other block is a refusal.
    if (condition!.text !== '$major -ge 7') {
      add(condition!);
      return;
    }
    expect(branches).toHaveLength(2);
    add(branches[version >= 7 ? 0 : 1]!);
  };
  add(root);
  return nodes;
}

const variablesOf = (entries: ReelScriptEntries): Readonly<Record<string, string>> => ({
  recording: entries.recordingName,
  taken: entries.sound?.fileName ?? '',
  ...(entries.keep.by === 'file'
    ? { begin: (LIST[0]! / entries.cameraFps.valueOf()).toFixed(3) }
    : {}),
});

/** Every call of a program as the text of PowerShell words it. */
function callsIn(root: TreeNode, entries: ReelScriptEntries, version: number) {
  const variables = variablesOf(entries);
  const valuesOf = (node: TreeNode): readonly string[] =>
    wordsIn(node).map((word) => valueOf(word, variables));
  return running(root, version)
    .filter(({ type }) => type === 'command')
    .flatMap((command): readonly (readonly string[])[] => {
      const [first, second] = argumentsOf(command);
      if (nameOf(command) === 'Invoke-Make') {
        const [result] = valuesOf(first!);
        return [[...valuesOf(second!), `unfinished-${result}`]];
      }
      if (['Get-Answer', 'Get-Said'].includes(nameOf(command))) return [valuesOf(first!)];
      return [];
    });
}

/**
 * Versions of the program that sh runs a reel with. Older ones spell one switch otherwise, and only where
 * a file holds the list; of the reels of one kind, and of those that differ by their names alone, some
 * take turns.
 */
function versionsFor(entries: ReelScriptEntries): readonly number[] {
  const name = HARD_NAMES.indexOf(entries.recordingName);
  if (name >= 0) return isAsked(name, 3) ? [7] : [];
  if (entries.keep.by === 'ties') return [7];
  return isAsked(Object.values(REELS).indexOf(entries), 2) ? [7, 6] : [7];
}

describe.each(Object.entries(REELS))('the PowerShell text of a reel %s', (_, entries) => {
  const { powershell } = reelScripts(entries);

  test('is PowerShell to a grammar of others, and holds the names sign for sign', async () => {
    const root = await powershellTree(powershell);
    const [settings] = ofType(root, 'param_block');
    const defaults = ofType(settings!, 'script_parameter_default').map((node) =>
      valueOf(wordsIn(node)[0]!, {}),
    );
    expect(defaults).toEqual([
      'all',
      entries.recordingName,
      ...(entries.sound === undefined ? [] : [entries.sound.fileName]),
    ]);
  });

  test.each(versionsFor(entries))(
    'calls the programs as sh does, word for word, version %i',
    async (version) => {
      const root = await powershellTree(powershell);
      const body = running(root, version);
      runBySh(entries, version, ({ calls, said, keepFilter, isThere }) => {
        expect(calls.length).toBeGreaterThan(9);
        expect(callsIn(root, entries, version)).toEqual(calls);
        // What is said, and in which order.
        const commands = body.filter(({ type }) => type === 'command');
        const spoken = commands
          .filter((command) => ['Show-Line', 'Start-Step'].includes(nameOf(command)))
          .map((command) => wordsIn(argumentsOf(command)[0]!))
          .map(([first]) => valueOf(first!, {}))
          .filter((line) => !line.startsWith(' '));
        expect(spoken).toEqual(said);
        // The list of a measured reel, as the next step reads it.
        const [written] = body.filter(({ type }) => type === 'verbatim_here_string_characters');
        if (written !== undefined) expect(`${valueOf(written, {})}\n`).toBe(keepFilter);
        expect(written !== undefined).toBe(entries.keep.by === 'measured');
        // What is removed at the end.
        const removed = commands
          .filter((command) => nameOf(command) === 'Remove-Item')
          .flatMap((command) => argumentsOf(command).flatMap((node) => wordsIn(node)))
          .map((node) => valueOf(node, {}));
        expect(removed.length).toBeGreaterThan(0);
        expect(removed.filter((name) => isThere(name))).toEqual([]);
      });
    },
  );
});

test('random names reach PowerShell sign for sign', async () => {
  const signs = fc.constantFrom(...'\'‘’‚‛"“”„`$()@#;{}[]&|<>%!~ \\abüßñ映é-');
  const names = fc.sample(fc.string({ unit: signs, minLength: 1, maxLength: 24 }), {
    numRuns: 120,
    seed: 11,
  });
  for (const [at, name] of names.filter((one) => one.trim() !== '').entries()) {
    if (!isAsked(at, 3)) continue;
    const { powershell } = reelScripts({ ...reel, recordingName: name, reelName: name });
    const defaults = ofType(await settingsTree(powershell), 'script_parameter_default');
    expect(valueOf(wordsIn(defaults[1]!)[0]!, {})).toBe(name);
  }
});

test('a quote that is not doubled is refused by the grammar or by the reading of its texts', async () => {
  await expect(powershellTree("$a = 'Ada's reel'\n")).rejects.toThrow('not PowerShell');
  await expect(powershellTree('if ($a) { b\n')).rejects.toThrow('not PowerShell');
  const [curly] = ofType(await powershellTree("$a = 'Ada’s'\n"), 'verbatim_string_characters');
  expect(() => valueOf(curly!, {})).toThrow('ends early');
});

// Parameters by which each cmdlet is called here, all of them in Windows PowerShell 5.1.
// Those that take a literal path have to: in a plain one `[1]` would be a pattern.
const CMDLETS: Readonly<Record<string, readonly string[]>> = {
  'ForEach-Object': [],
  'Get-ChildItem': ['-LiteralPath', '-Recurse', '-File'],
  'Get-Command': ['-CommandType', '-ErrorAction'],
  'Get-Content': ['-LiteralPath', '-Encoding'],
  'Get-FileHash': ['-LiteralPath'],
  'Get-Item': ['-LiteralPath', '-Force'],
  'Get-Location': [],
  'Join-Path': [],
  'Remove-Item': ['-LiteralPath'],
  'Rename-Item': ['-LiteralPath', '-NewName'],
  'Test-Path': ['-LiteralPath', '-PathType'],
  'Where-Object': [],
  'Write-Host': [],
};

// about_Automatic_Variables: PowerShell sets these itself, so a script may not.
const AUTOMATIC =
  'args error event eventargs eventsubscriber executioncontext foreach home host input lastexitcode matches myinvocation nestedpromptlevel null pid profile psboundparameters pscmdlet pscommandpath psculture psdebugcontext pshome psitem psscriptroot pssenderinfo psuiculture psversiontable pwd sender shellid stacktrace switch this true false'.split(
    ' ',
  );

describe('what Windows PowerShell 5.1 does otherwise', () => {
  const texts: readonly (readonly [string, string])[] = [
    ...Object.entries(REELS).map(
      ([name, entries]) => [`the script ${name}`, reelScripts(entries).powershell] as const,
    ),
    ['the line that lists checksums', `${CHECKSUM_COMMANDS.windows}\n`],
    ['the line that checks them', `${VERIFY_COMMANDS.windows}\n`],
  ];

  test.each(texts)(
    '%s calls known commands, and none takes a name as a pattern',
    async (_, text) => {
      const root = await powershellTree(text);
      const defined = ofType(root, 'function_name').map((node) => node.text);
      for (const command of ofType(root, 'command')) {
        const called = nameOf(command);
        if (called === '$program' || defined.includes(called)) continue;
        expect(Object.keys(CMDLETS)).toContain(called);
        const given = ofType(command, 'command_parameter')
          .filter((node) => around(node, 'command') === command)
          .map((node) => node.text);
        const known = CMDLETS[called]!;
        expect(known).toEqual(expect.arrayContaining(given));
        if (known.includes('-LiteralPath')) expect([called, ...given]).toContain('-LiteralPath');
      }
    },
  );

  test.each(texts)('%s leaves files to calls that write UTF-8 without a mark', async (_, text) => {
    const root = await powershellTree(text);
    // `>` and Out-File of version 5.1 write UTF-16, Set-Content the code page of the country.
    expect(ofType(root, 'redirection').map((node) => node.text)).toEqual(
      text.includes('function Get-Said') ? ['2>&1'] : [],
    );
    expect(text).not.toMatch(/Out-File|Set-Content|Add-Content|Tee-Object|Export-/u);
  });

  test.each(texts)('%s sets no variable that PowerShell keeps for itself', async (_, text) => {
    const root = await powershellTree(text);
    const set = [
      ...ofType(root, 'left_assignment_expression'),
      ...ofType(root, 'script_parameter'),
      ...ofType(root, 'foreach_statement').map((node) => named(node)[0]!),
    ].flatMap((node) => ofType(node, 'variable').slice(0, 1));
    expect(set.length).toBeGreaterThan(0);
    const names = set.map((node) => node.text.replace(/^\$(?:script:)?/u, '').toLowerCase());
    expect(names.filter((name) => AUTOMATIC.includes(name))).toEqual([]);
  });

  test.each(Object.entries(REELS))('the words %s reach a program unchanged', async (_, entries) => {
    // Version 5.1 hands on words with a double quote inside, empty words and words that end in a
    // backslash otherwise than they are written. No file of Windows has such a name.
    const plain = { ...entries, recordingName: 'a b.mov', sound: entries.sound && { ...sound } };
    const root = await powershellTree(reelScripts(plain).powershell);
    for (const word of [7, 6].flatMap((version) => callsIn(root, plain, version)).flat())
      expect(word).toMatch(/^[^"]*[^"\\]$/u);
  });

  test('each call of a program is followed by a look at how it ended', async () => {
    const root = await powershellTree(reelScripts(reel).powershell);
    const calls = ofType(root, 'command').filter((command) => nameOf(command) === '$program');
    expect(calls).toHaveLength(3);
    for (const call of calls) {
      const block = around(call, 'function_statement')!.text;
      expect(block.slice(block.indexOf('& $program'))).toMatch(/\$LASTEXITCODE -(?:eq|ne) 0/u);
    }
  });

  test('only the two questions that need them take complaints for an answer', async () => {
    const root = await powershellTree(reelScripts(reel).powershell);
    const merged = running(root, 7).filter(
      (node) => node.type === 'command' && nameOf(node) === 'Get-Said',
    );
    expect(merged.map((node) => /idet|'film\.mkv'/u.exec(node.text)?.[0])).toEqual([
      'idet',
      "'film.mkv'",
    ]);
  });
});
