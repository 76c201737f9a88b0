import { FILE_NAMES } from '../../../core/file/file-names.ts';
import { reelScripts, type ReelScripts } from '../../../core/file/reel-script/reel-script.ts';
import type { ReelScriptEntries } from '../../../core/file/reel-script/script-entries.ts';
import type { ResultFile } from '../../machine/types.ts';

/** A script to read and to take away. Its text is only made when it is asked for. */
class ScriptFile implements ResultFile {
  readonly fileName: string;
  readonly mediaType = 'text/plain';
  readonly isShown = true;
  readonly #shell: keyof ReelScripts;
  readonly #entries: ReelScriptEntries;

  constructor(fileName: string, shell: keyof ReelScripts, entries: ReelScriptEntries) {
    this.fileName = fileName;
    this.#shell = shell;
    this.#entries = entries;
  }

  get text(): string {
    return reelScripts(this.#entries)[this.#shell];
  }
}

/** The script of a reel for both shells. */
export function scriptFiles(entries: ReelScriptEntries): readonly ResultFile[] {
  return [
    new ScriptFile(FILE_NAMES.posixScript, 'posix', entries),
    new ScriptFile(FILE_NAMES.powershellScript, 'powershell', entries),
  ];
}
