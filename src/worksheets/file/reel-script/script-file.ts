import { FILE_NAMES } from '../../../core/file/file-names.ts';
import type { ReelScripts } from '../../../core/file/reel-script/reel-scripts.ts';
import type { ReelScriptEntries } from '../../../core/file/reel-script/script-entries.ts';
import type { ResultFile } from '../../machine/types.ts';

/** A script to read and to take away. What writes it is fetched when it is asked for. */
function scriptFile(
  fileName: string,
  shell: keyof ReelScripts,
  entries: ReelScriptEntries,
): ResultFile {
  return {
    fileName,
    mediaType: 'text/plain',
    isShown: true,
    async text() {
      const { reelScripts } = await import('../../../core/file/reel-script/reel-scripts.ts');
      return reelScripts(entries)[shell];
    },
  };
}

/** The script of a reel for both shells. */
export function scriptFiles(entries: ReelScriptEntries): readonly ResultFile[] {
  return [
    scriptFile(FILE_NAMES.posixScript, 'posix', entries),
    scriptFile(FILE_NAMES.powershellScript, 'powershell', entries),
  ];
}
