import { setTimeout as wait } from 'node:timers/promises';

/** A browser window, as far as the smoke suite needs one: the same for every engine. */
export interface Engine {
  /** Runs a function inside the page; its arguments and its result are plain data. */
  run<Values extends readonly unknown[], Result>(
    work: (...values: Values) => Result | Promise<Result>,
    ...values: Values
  ): Promise<Result>;
  /** Presses the keys of a text, one after another, wherever the focus is. */
  press(keys: string): Promise<void>;
  /** The page printed on A4 as PDF; left out where the engine's driver cannot print. */
  print?(): Promise<Uint8Array>;
  close(): Promise<void>;
}

/** Starts one engine, or says what is missing on this system. */
export interface EngineChoice {
  readonly name: string;
  /** Programs that the system lacks; empty when it can start. */
  readonly missing: readonly string[];
  /** How to get them. */
  readonly install: string;
  start(): Promise<Engine>;
}

const LONGEST_WAIT_MILLISECONDS = 20_000;

/** Asks inside the page until the answer is true; a page that is just changing may not answer. */
export async function waitUntil<Values extends readonly unknown[]>(
  engine: Engine,
  what: string,
  isSo: (...values: Values) => boolean,
  ...values: Values
): Promise<void> {
  const end = performance.now() + LONGEST_WAIT_MILLISECONDS;
  let trouble = '';
  while (performance.now() < end) {
    try {
      if (await engine.run(isSo, ...values)) return;
    } catch (error) {
      trouble = ` (${String(error)})`;
    }
    await wait(50);
  }
  throw new Error(`${what}: not within ${LONGEST_WAIT_MILLISECONDS / 1000} s${trouble}`);
}
