import { launch, type Browser } from 'puppeteer-core';
import { findProgram } from '../tools/find-program.ts';
import type { Engine, EngineChoice } from './engine.ts';

const program = findProgram('firefox-esr', 'firefox');

async function start(): Promise<Engine> {
  const browser: Browser = await launch({
    browser: 'firefox',
    executablePath: program ?? '',
    headless: true,
    // The site itself tells what failed; to report every request costs the browser seconds.
    networkEnabled: false,
    defaultViewport: { width: 1300, height: 900 },
  });
  const [page = await browser.newPage()] = await browser.pages();
  return {
    // The types of both sides say the same, but not so that the compiler sees it.
    run: async (work, ...values) => (await page.evaluate(work as never, ...values)) as never,
    async press(keys) {
      await page.keyboard.type(keys);
    },
    print: () => page.pdf({ format: 'A4', preferCSSPageSize: true }),
    close: () => browser.close(),
  };
}

/** Firefox of the system, driven over WebDriver BiDi. */
export const firefox: EngineChoice = {
  name: 'Firefox',
  missing: program === undefined ? ['firefox-esr or firefox'] : [],
  install: 'apt-get install firefox-esr (Debian), or Firefox itself on the PATH',
  start,
};
