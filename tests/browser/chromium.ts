import { findProgram, isProgram } from '../tools/find-program.ts';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/** The browser inside an npm package: unpacks itself and the libraries it needs, no download. */
async function packagedBrowser(): Promise<string> {
  // Only with this set does the package unpack its own system libraries.
  process.env['AWS_EXECUTION_ENV'] ??= 'AWS_Lambda_nodejs22.x';
  const { default: chromium } = await import('@sparticuz/chromium');
  return chromium.executablePath();
}

/**
 * The browser for the tests: CHROMIUM_PATH, else a Chromium or Chrome of the system, else the one
 * inside an npm package. The answer is kept in CHROMIUM_PATH so that every worker uses the same.
 */
export async function findChromium(): Promise<string> {
  const chosen = process.env['CHROMIUM_PATH'];
  if (chosen !== undefined && chosen !== '') {
    if (!isProgram(chosen)) throw new Error(`CHROMIUM_PATH is ${chosen}, which is no program`);
    return chosen;
  }
  const found = findProgram(...NAMES) ?? (await packagedBrowser());
  process.env['CHROMIUM_PATH'] = found;
  return found;
}

/** Root may not use the browser's sandbox. */
export function launchArguments(): string[] {
  return process.getuid?.() === 0 ? ['--no-sandbox'] : [];
}
