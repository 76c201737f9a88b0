import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { setTimeout as wait } from 'node:timers/promises';
import { Builder, type WebDriver } from 'selenium-webdriver';
import { findProgram } from '../tools/find-program.ts';
import type { Engine, EngineChoice } from './engine.ts';
import { freePort } from './free-port.ts';

const driverProgram = findProgram('WebKitWebDriver');
const screenProgram = findProgram('Xvfb');

/** A screen that exists in memory alone; gives its number. */
async function openScreen(): Promise<{ readonly screen: ChildProcess; readonly number: string }> {
  const screen = spawn(
    screenProgram ?? '',
    ['-displayfd', '1', '-screen', '0', '1400x1000x24', '-nolisten', 'tcp'],
    { stdio: ['ignore', 'pipe', 'ignore'] },
  );
  const lines = createInterface({ input: screen.stdout });
  const [number] = (await once(lines, 'line')) as [string];
  return { screen, number };
}

async function isReady(url: string): Promise<boolean> {
  try {
    return (await fetch(`${url}/status`)).ok;
  } catch {
    return false;
  }
}

async function start(): Promise<Engine> {
  const { screen, number } = await openScreen();
  const port = await freePort();
  const service = spawn(driverProgram ?? '', [`--port=${port}`], {
    stdio: 'ignore',
    env: {
      ...process.env,
      DISPLAY: `:${number}`,
      LIBGL_ALWAYS_SOFTWARE: '1',
      // There is no graphics card to put layers together, and a processor takes twice as long over a page so.
      WEBKIT_DISABLE_COMPOSITING_MODE: '1',
      // Root may not use the browser's sandbox; it opens nothing but the book.
      ...(process.getuid?.() === 0 ? { WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1' } : {}),
    },
  });
  const url = `http://127.0.0.1:${port}`;
  while (!(await isReady(url))) await wait(50);
  const driver: WebDriver = await new Builder()
    .usingServer(url)
    .withCapabilities({ browserName: 'MiniBrowser' })
    .build();
  await driver.manage().setTimeouts({ script: 30_000, pageLoad: 30_000 });
  await driver.manage().window().setRect({ width: 1300, height: 950 });
  return {
    async run(work, ...values) {
      // The driver waits in vain for the answer of a page that is left meanwhile, so it is not asked to
      // wait where nothing has to be waited for.
      if (work.constructor.name !== 'AsyncFunction') {
        const script = `return (${work.toString()})(...arguments);`;
        return (await driver.executeScript(script, ...values)) as never;
      }
      const { value, fault } = await driver.executeAsyncScript<{
        readonly value: never;
        // A driver gives null for what is not there.
        readonly fault?: string | null;
      }>(
        `const values = [...arguments];
         const done = values.pop();
         Promise.resolve().then(() => (${work.toString()})(...values)).then(
           (value) => done({ value }),
           (error) => done({ fault: String(error) }),
         );`,
        ...values,
      );
      if (fault !== undefined && fault !== null) throw new Error(fault);
      return value;
    },
    async press(keys) {
      await driver
        .actions()
        .sendKeys(...keys)
        .perform();
    },
    async close() {
      await driver.quit().catch(() => undefined);
      service.kill();
      screen.kill();
    },
  };
}

/** WebKitGTK of the system in its small browser: the engine that Safari is built on, not Safari. */
export const webkit: EngineChoice = {
  name: 'WebKit',
  missing: [
    ...(driverProgram === undefined ? ['WebKitWebDriver (package webkit2gtk-driver)'] : []),
    ...(screenProgram === undefined ? ['Xvfb (package xvfb)'] : []),
  ],
  install: 'apt-get install webkit2gtk-driver xvfb (Debian); other systems do not have it',
  start,
};
