import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { BROWSER_MISSING, findChromium } from '../browser/chromium.ts';
import { projectFolder } from './source-files.ts';

// What the README promises about other machines than the one that the tests run on.

const README = readFileSync(join(projectFolder, 'README.md'), 'utf8');
const FFMPEG = join(projectFolder, 'tests/tools/ffmpeg.ts');
const ownPlatform = process.platform;

function standOn(platform: string): void {
  Object.defineProperty(process, 'platform', { value: platform });
}

afterEach(() => {
  standOn(ownPlatform);
  vi.unstubAllEnvs();
});

/** What Node prints that runs a script with nothing on its PATH. */
function saidWithoutPath(script: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'without-path-'));
  const file = join(folder, 'script.ts');
  writeFileSync(file, script);
  const { stdout, stderr } = spawnSync(
    process.execPath,
    ['--experimental-strip-types', '--no-warnings', file],
    { encoding: 'utf8', env: { PATH: folder } },
  );
  rmSync(folder, { recursive: true });
  return `${stdout}${stderr}`.trim();
}

describe('where no browser is found', () => {
  it.each(['darwin', 'win32', 'freebsd'].filter((platform) => platform !== ownPlatform))(
    'the tests say in one line what to install: %s',
    async (platform) => {
      standOn(platform);
      vi.stubEnv('PATH', '');
      vi.stubEnv('CHROMIUM_PATH', '');
      await expect(findChromium()).rejects.toThrow(BROWSER_MISSING);
    },
  );

  it('that line names a way for each system, and is one line', () => {
    expect(BROWSER_MISSING).toMatch(
      /Debian: apt-get.+macOS: brew.+Windows: winget.+CHROMIUM_PATH/u,
    );
    expect(BROWSER_MISSING).not.toContain('\n');
  });

  it('a CHROMIUM_PATH that leads nowhere is said, and nothing else is taken for it', async () => {
    vi.stubEnv('CHROMIUM_PATH', '/nowhere/chromium');
    await expect(findChromium()).rejects.toThrow('CHROMIUM_PATH is /nowhere/chromium');
  });
});

describe('where ffmpeg and sox are missing', () => {
  const said = saidWithoutPath(
    `import { missingTools } from ${JSON.stringify(FFMPEG)}; console.log(missingTools());`,
  );

  it('one loud line says what is skipped', () => {
    expect(said).toMatch(/^!!! [A-Z ]+NOT TESTED.+skipped: no ffmpeg, no sox\./u);
    expect(said).not.toContain('\n');
  });

  it.each([
    /apt-get install ffmpeg sox/u,
    /brew install ffmpeg sox/u,
    /winget install [\w. ]+SoX/u,
  ])('it says how to get them as the README does: %s', (command) => {
    expect(said).toMatch(command);
    expect(README.match(command)?.[0]).toBe(said.match(command)?.[0]);
  });
});

describe('the versions of Node', () => {
  it('that the README asks for are those of the guard and of package.json', () => {
    const guard = readFileSync(join(projectFolder, 'tests/guard-node.mjs'), 'utf8');
    expect(guard).toContain('This needs Node 22.12 or newer');
    expect(README).toContain('on macOS, Node 22.12 or newer');
    expect(README).toContain('has only Node 20, 22 or 24');
    expect(readFileSync(join(projectFolder, 'package.json'), 'utf8')).toContain(
      '"node": ">=20.12"',
    );
  });
});
