import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';

/** The ffmpeg that the tests run. */
export interface Ffmpeg {
  readonly path: string;
  /** First line of what it says about itself. */
  readonly version: string;
}

function packagedPath(): string | undefined {
  try {
    const installer = createRequire(import.meta.url)('@ffmpeg-installer/ffmpeg') as {
      readonly path?: string;
    };
    return installer.path;
  } catch {
    // The package has no binary for this platform.
    return undefined;
  }
}

function versionOf(path: string): string | undefined {
  const { status, stdout } = spawnSync(path, ['-hide_banner', '-version'], { encoding: 'utf8' });
  return status === 0 ? stdout.split('\n')[0] : undefined;
}

function findFfmpeg(): Ffmpeg | undefined {
  for (const path of [process.env['FFMPEG_PATH'], 'ffmpeg', packagedPath()]) {
    const version = path === undefined ? undefined : versionOf(path);
    if (path !== undefined && version !== undefined) return { path, version };
  }
  return undefined;
}

/** `FFMPEG_PATH`, else a system ffmpeg, else the one inside the npm package; undefined when none runs. */
export const ffmpeg: Ffmpeg | undefined = findFfmpeg();

/** Why tests that need ffmpeg are skipped; goes into their titles. */
export const FFMPEG_MISSING =
  'SKIPPED: no ffmpeg runs here (looked at FFMPEG_PATH, the system path and the npm package)';

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
