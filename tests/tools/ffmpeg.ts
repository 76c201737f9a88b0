import { spawnSync } from 'node:child_process';
import { mkdtempSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, dirname, isAbsolute, join } from 'node:path';

/** The ffmpeg that the tests run. */
export interface Ffmpeg {
  readonly path: string;
  /** First line of what it says about itself. */
  readonly version: string;
}

function versionOf(path: string): string | undefined {
  const { status, stdout } = spawnSync(path, ['-hide_banner', '-version'], { encoding: 'utf8' });
  return status === 0 ? stdout.split('\n')[0] : undefined;
}

function findFfmpeg(): Ffmpeg | undefined {
  for (const path of [process.env['FFMPEG_PATH'], 'ffmpeg']) {
    const version = path === undefined ? undefined : versionOf(path);
    if (path !== undefined && version !== undefined) return { path, version };
  }
  return undefined;
}

/** `FFMPEG_PATH`, else a system ffmpeg; undefined when none runs. */
export const ffmpeg: Ffmpeg | undefined = findFfmpeg();

/** Why tests that need ffmpeg are skipped; goes into their titles. */
export const FFMPEG_MISSING =
  'SKIPPED: no ffmpeg runs here (looked at FFMPEG_PATH and the system path)';

/** Title of a group of tests that needs ffmpeg, with the reason when it is skipped. */
export function ffmpegTitle(title: string): string {
  return ffmpeg === undefined ? `${title} (${FFMPEG_MISSING})` : title;
}

/**
 * Runs ffmpeg and gives back what it writes to standard output.
 *
 * @throws {Error} with ffmpeg's own words when it fails
 */
export function runFfmpeg(args: readonly string[], folder?: string): Buffer {
  if (ffmpeg === undefined) throw new Error(FFMPEG_MISSING);
  const { status, stdout, stderr } = spawnSync(
    ffmpeg.path,
    ['-hide_banner', '-nostdin', '-loglevel', 'error', '-y', ...args],
    { cwd: folder, maxBuffer: 1024 ** 3 },
  );
  if (status !== 0) throw new Error(`ffmpeg ${args.join(' ')}: ${String(stderr)}`);
  return stdout;
}

function findFfprobe(): string | undefined {
  const beside = ffmpeg === undefined || !isAbsolute(ffmpeg.path) ? [] : [dirname(ffmpeg.path)];
  const paths = [...beside.map((folder) => join(folder, 'ffprobe')), 'ffprobe'];
  return paths.find((path) => versionOf(path) !== undefined);
}

/** The ffprobe that comes with ffmpeg. */
export const ffprobe: string | undefined = findFfprobe();

const majorVersion = Number(/version n?(\d+)\./u.exec(ffmpeg?.version ?? '')?.[1] ?? 0);

/** Options that neither double nor drop a picture; the name of the switch changed with version 5.1. */
export const AS_STORED: readonly string[] = [
  majorVersion > 5 ? '-fps_mode' : '-vsync',
  'passthrough',
];

/**
 * Whether everything that the chain of files needs is here: a prober, and a version that carries
 * colour tags from the recording to the copy (5 and later do).
 */
export const runsWholeChain = ffprobe !== undefined && majorVersion >= 5;

/** Title of a group of tests that needs the whole chain, with the reason when it is skipped. */
export function chainTitle(title: string): string {
  return runsWholeChain ? title : `${title} (SKIPPED: needs ffmpeg 5 or later, with ffprobe)`;
}

const hasSox = spawnSync('sox', ['--version']).status === 0;

/**
 * What of the media tools is missing here, what therefore is not tested and how to install it, in one
 * line; undefined where all is here.
 */
export function missingTools(): string | undefined {
  const missing = [
    ...(ffmpeg === undefined
      ? ['ffmpeg']
      : runsWholeChain
        ? []
        : ['ffmpeg 5 or later, with ffprobe']),
    ...(hasSox ? [] : ['sox']),
  ];
  if (missing.length === 0) return undefined;
  return (
    `!!! PRINTED COMMANDS ARE NOT TESTED on real files, their tests are skipped: no ${missing.join(', no ')}. ` +
    'To install: apt-get install ffmpeg sox (Debian), brew install ffmpeg sox (macOS), ' +
    'winget install Gyan.FFmpeg ChrisBagwell.SoX (Windows).'
  );
}

let folderOfTools: string | undefined;

/** A folder with the tests' own ffmpeg and ffprobe under the names that a reader types. */
function toolsFolder(): string {
  if (folderOfTools === undefined) {
    folderOfTools = mkdtempSync(join(tmpdir(), 'film-tools-'));
    for (const [name, path] of [
      ['ffmpeg', ffmpeg?.path],
      ['ffprobe', ffprobe],
    ] as const) {
      if (path !== undefined && isAbsolute(path)) symlinkSync(path, join(folderOfTools, name));
    }
  }
  return folderOfTools;
}

/** What a command printed. */
export interface Printed {
  readonly stdout: string;
  readonly stderr: string;
  readonly status: number | null;
}

/** Runs a command line as a reader would paste it into a terminal in the folder. */
export function runAsPasted(folder: string, command: string): Printed {
  const { status, stdout, stderr } = spawnSync(command, {
    shell: true,
    cwd: folder,
    input: '',
    encoding: 'utf8',
    env: { ...process.env, PATH: `${toolsFolder()}${delimiter}${process.env['PATH'] ?? ''}` },
  });
  return { status, stdout, stderr };
}

/**
 * The same for a command that has to succeed.
 *
 * @throws {Error} with the words of the program when it fails
 */
export function runPasted(folder: string, command: string): Printed {
  const printed = runAsPasted(folder, command);
  if (printed.status !== 0) throw new Error(`${command}: ${printed.stderr}`);
  return printed;
}
