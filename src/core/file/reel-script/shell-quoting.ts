// Texts as the two shells take them literally, whatever they hold.
import { OutOfRangeError } from '../../../quantity/errors.ts';

/**
 * A text as one word of a POSIX shell.
 *
 * Model: between single quotes every sign stands for itself; a single quote is closed, escaped and
 * opened again.
 *
 * @param text  any text without a NUL
 * @returns the word
 * @source posix-shell
 * @example posixQuoted("Ada's reel") // "'Ada'\\''s reel'"
 */
export function posixQuoted(text: string): string {
  return `'${text.replaceAll("'", String.raw`'\''`)}'`;
}

/** Signs that end a single-quoted text of PowerShell: the straight quote and four curly ones. */
const POWERSHELL_QUOTES = /['\u2018\u2019\u201A\u201B]/gu;

/**
 * A text as one word of PowerShell.
 *
 * Model: between single quotes every sign stands for itself, except the single quotes, which are
 * doubled; the four curly ones count as single quotes there.
 *
 * @param text  any text without a NUL
 * @returns the word
 * @source powershell-language
 * @example powershellQuoted("Ada's reel") // "'Ada''s reel'"
 */
export function powershellQuoted(text: string): string {
  return `'${text.replaceAll(POWERSHELL_QUOTES, '$&$&')}'`;
}

/**
 * A text on one line, for a comment: a line break in it would end the comment.
 *
 * @param text  any text
 * @returns the text with single spaces, and without signs that are not seen
 * @example commentText('Regatta\n  1962 ') // 'Regatta 1962'
 */
export function commentText(text: string): string {
  return text
    .replaceAll(/[\p{Cc}\p{Zl}\p{Zp}\s]+/gu, ' ')
    .replaceAll(/\p{Cf}/gu, '')
    .trim();
}

/**
 * Gives a file name back when a script can carry it: some text, without line breaks or other control
 * signs.
 *
 * @throws {OutOfRangeError} names the argument
 * @example requireFileName('recordingName', 'reel 7.mov') // 'reel 7.mov'
 */
export function requireFileName(argument: string, name: string): string {
  if (name.trim() === '' || /[\p{Cc}\p{Zl}\p{Zp}]/u.test(name)) {
    throw new OutOfRangeError(argument, commentText(name), 'a file name on one line');
  }
  return name;
}
