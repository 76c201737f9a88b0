import { fileURLToPath } from 'node:url';
import { defineConfig } from '@playwright/test';
import { findChromium, launchArguments } from './browser/chromium.ts';
import { LEFT_OUT, ON_PHONE } from './browser/short-run.ts';

const executablePath = await findChromium().catch((error: unknown) => {
  // One line tells what to install; a stack would hide it.
  process.stderr.write(`${String(error)}\n`);
  process.exit(1);
});
// Workers inherit the port of the process that starts the server.
const port = Number((process.env['SITE_PORT'] ??= String(20_000 + (process.pid % 20_000))));
const projectFolder = fileURLToPath(new URL('..', import.meta.url));

export default defineConfig({
  testDir: './browser',
  testMatch: '**/*.spec.ts',
  ...(LEFT_OUT === undefined ? {} : { grepInvert: LEFT_OUT }),
  outputDir: './.output/playwright',
  snapshotPathTemplate: '{testDir}/screenshots/{arg}{ext}',
  reporter: [['list'], ['json', { outputFile: './.output/playwright.json' }]],
  fullyParallel: true,
  workers: 2,
  timeout: 60_000,
  // A machine that is busy elsewhere may stall a browser once; the report names a test that needed this.
  retries: 1,
  forbidOnly: process.env['CI'] !== undefined,
  use: {
    baseURL: `http://127.0.0.1:${port}`,
    launchOptions: { executablePath, args: launchArguments() },
    // A trace of every visit costs more than the visit: switch it on by hand (--trace=on) where a test fails.
    trace: 'off',
    // Pages fetch straight from the server; the tests of the offline copy let it in again.
    serviceWorkers: 'block',
  },
  projects: [
    { name: 'desk', use: { viewport: { width: 1440, height: 900 } } },
    {
      // Tests that matter on a small screen carry the tag.
      name: 'phone',
      grep: ON_PHONE,
      use: { viewport: { width: 390, height: 844 }, hasTouch: true, colorScheme: 'dark' },
    },
  ],
  webServer: {
    // The flag is what Node 22 needs; Node 24 reads TypeScript by itself.
    command: `node --experimental-strip-types --no-warnings tests/tools/serve-dist.ts ${port} ${process.env['SITE_DIST'] ?? 'dist'}`,
    cwd: projectFolder,
    url: `http://127.0.0.1:${port}/`,
    reuseExistingServer: false,
  },
});
