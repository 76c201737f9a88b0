import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { ResultFile } from '../worksheets/machine/types.ts';
import { FETCH_FAILED, textOf } from './file-text.ts';
import { offerDownload } from './offer-download.ts';
import { ShownFile } from './ShownFile.tsx';

/** A file to take away, and to read before where a reader should. */
export function TakenFile({ file }: { readonly file: ResultFile }): ComponentChildren {
  const [hasFailed, setHasFailed] = useState(false);
  const take = async (): Promise<void> => {
    try {
      offerDownload({ ...file, text: await textOf(file) });
      setHasFailed(false);
    } catch {
      setHasFailed(true);
    }
  };
  return (
    <>
      <p class="sheet-file">
        <button type="button" onClick={() => void take()}>
          Download {file.fileName}
        </button>
        <span role="status">{hasFailed ? ` ${FETCH_FAILED}` : ''}</span>
      </p>
      {file.isShown === true && <ShownFile file={file} />}
    </>
  );
}
