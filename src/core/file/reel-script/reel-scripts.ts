import { POSIX_WRITER } from './posix-writer.ts';
import { POWERSHELL_WRITER } from './powershell-writer.ts';
import { requireScriptEntries, type ReelScriptEntries } from './script-entries.ts';
import { scriptText } from './script-outline.ts';

/** By this mark PowerShell 5.1 knows that a script is UTF-8, and reads its umlauts right. */
const BYTE_ORDER_MARK = '\uFEFF';

/** The chain of one reel as a script, for two shells. */
export interface ReelScripts {
  /** For `sh` on Linux and macOS; UTF-8, line feeds. */
  readonly posix: string;
  /** For PowerShell 5.1 and later; begins with a byte order mark, by which 5.1 knows UTF-8. */
  readonly powershell: string;
}

/**
 * The whole chain of one reel as one script: it asks the recording what it is, picks and turns the
 * film frames, writes and reads back the master, brings the sound to speed and in step, makes the copy
 * to watch, and lists checksums.
 *
 * @param entries  numbers and names of the reel
 * @returns the same chain for a POSIX shell and for PowerShell
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ffmpeg-documentation
 * @source posix-shell
 * @source powershell-language
 */
export function reelScripts(entries: ReelScriptEntries): ReelScripts {
  requireScriptEntries(entries);
  return {
    posix: scriptText(entries, POSIX_WRITER),
    powershell: `${BYTE_ORDER_MARK}${scriptText(entries, POWERSHELL_WRITER)}`,
  };
}
