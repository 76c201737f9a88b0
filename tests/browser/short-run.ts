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

/** Whether a case that takes turns with others is asked: one of so many in the test command, else every one. */
export function isAsked(index: number, turns: number): boolean {
  return !isShortRun || isInTurn(index, turns);
}

/** Ends the title of a case that takes turns with others. */
export function turnTag(index: number, turns: number): string {
  return isAsked(index, turns) ? '' : ' @long';
}
