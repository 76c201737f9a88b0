import { join } from 'node:path';
import { findProgram, isProgram } from '../tools/find-program.ts';

/** The one without windows comes first: it takes little more than half the time for the same page. */
const NAMES = [
  'chromium-headless-shell',
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
];

/** Where browsers of the family stand that are on no PATH. */
function usualPlaces(): readonly string[] {
  if (process.platform === 'darwin') {
    return ['Chromium', 'Google Chrome', 'Microsoft Edge'].map(
      (name) => `/Applications/${name}.app/Contents/MacOS/${name}`,
    );
  }
  if (process.platform !== 'win32') return [];
  const roots = ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap(
    (name) => process.env[name] ?? [],
  );
  return ['Chromium', 'Google/Chrome', 'Microsoft/Edge'].flatMap((name) =>
    roots.map((root) => {
      const program = name.endsWith('Edge') ? 'msedge.exe' : 'chrome.exe';
      return join(root, name, 'Application', program);
    }),
  );
}

/** The browser inside an npm package: unpacks itself and its libraries; Linux only. */
async function packagedBrowser(): Promise<string | undefined> {
  if (process.platform !== 'linux' || process.arch !== 'x64') return undefined;
  // Only with this set does the package unpack its own system libraries.
  process.env['AWS_EXECUTION_ENV'] ??= 'AWS_Lambda_nodejs22.x';
  try {
    const { default: chromium } = await import('@sparticuz/chromium');
    return await chromium.executablePath();
  } catch {
    return undefined;
  }
}

/** What to do where no browser is found, in one line. */
export const BROWSER_MISSING =
  'No Chromium, Chrome or Edge is found for the browser tests. Install one (Debian: apt-get install ' +
  'chromium; macOS: brew install --cask chromium; Windows: winget install Google.Chrome), or set ' +
  'CHROMIUM_PATH to one.';

/**
 * The browser for the tests: CHROMIUM_PATH, else one of the system, else, on Linux, the one inside an npm
 * package. The answer is kept in CHROMIUM_PATH so that every worker uses the same.
 *
 * @throws {Error} with what to install where there is none
 */
export async function findChromium(): Promise<string> {
  const chosen = process.env['CHROMIUM_PATH'];
  if (chosen !== undefined && chosen !== '') {
    if (!isProgram(chosen)) throw new Error(`CHROMIUM_PATH is ${chosen}, which is no program`);
    return chosen;
  }
  const found = findProgram(...NAMES) ?? usualPlaces().find(isProgram) ?? (await packagedBrowser());
  if (found === undefined) throw new Error(BROWSER_MISSING);
  process.env['CHROMIUM_PATH'] = found;
  return found;
}

/** Root may not use the browser's sandbox. */
export function launchArguments(): string[] {
  return process.getuid?.() === 0 ? ['--no-sandbox'] : [];
}
