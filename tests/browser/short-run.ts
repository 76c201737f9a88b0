import { isInTurn } from '../tools/turn.ts';

// The test command leaves some tests of the browser to `npm run test:browser`, which runs all of them. They
// ask what others ask as well, of one more coding, order or window:
// - `@long` in a title: not in the test command;
// - `@phone-long`: at a desk in the test command, on a phone too in the whole run.

/** True in the test command. */
export const isShortRun = process.env['SHORT_RUN'] === '1';

/** Titles that are left out. */
export const LEFT_OUT = isShortRun ? /@long/u : undefined;

/** Titles of what runs on a phone too. */
export const ON_PHONE = isShortRun ? /@phone(?!-long)/u : /@phone/u;

/**
 * Ends the title of a case that takes turns with others: the test command asks one of so many, another one
 * for another commit.
 */
export function turnTag(index: number, turns: number): string {
  return isInTurn(index, turns) ? '' : ' @long';
}

/** Of so many pages the test command shows one to axe in light, and another one in dark for its colours. */
export const AXE_STEP = isShortRun ? 4 : 1;

/** Of so many pages the test command prints one to sheets of paper. */
export const PAPER_STEP = isShortRun ? 3 : 1;
