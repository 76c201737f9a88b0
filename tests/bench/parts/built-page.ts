import { spawn } from 'node:child_process';
import { setTimeout } from 'node:timers/promises';
import { chromium, type Page } from '@playwright/test';
import { findChromium, launchArguments } from '../../browser/chromium.ts';

const PORT = 20_000 + (process.pid % 20_000);

/** Serves the built site and opens a wide page of it in Chromium; both end with what is measured. */
export async function onBuiltPage(
  measure: (page: Page, addressOf: (path: string) => string) => Promise<void>,
): Promise<void> {
  const site = spawn(process.execPath, [
    ...['--experimental-strip-types', '--no-warnings'],
    ...['tests/tools/serve-dist.ts', String(PORT), 'dist'],
  ]);
  const browser = await chromium.launch({
    executablePath: await findChromium(),
    args: launchArguments(),
  });
  try {
    await setTimeout(1500);
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await measure(page, (path) => `http://127.0.0.1:${PORT}${path}`);
  } finally {
    await browser.close();
    site.kill();
  }
}
