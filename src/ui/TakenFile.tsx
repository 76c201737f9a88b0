import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { ResultFile } from '../worksheets/machine/types.ts';
import { FETCH_FAILED, textOf } from './file-text.ts';
import { offerDownload } from './offer-download.ts';
import { ShownFile } from './ShownFile.tsx';

/** A button by which a file is taken; it says where the code that writes it does not come. */
export function TakeButton(props: {
  readonly file: ResultFile;
  readonly label: string;
}): ComponentChildren {
  const { file, label } = props;
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
      <button type="button" onClick={() => void take()}>
        {label}
      </button>
      <span role="status">{hasFailed ? ` ${FETCH_FAILED}` : ''}</span>
    </>
  );
}

/** A file to take away, and to read before where a reader should. */
export function TakenFile({ file }: { readonly file: ResultFile }): ComponentChildren {
  return (
    <>
      <p class="sheet-file">
        <TakeButton file={file} label={`Download ${file.fileName}`} />
      </p>
      {file.isShown === true && <ShownFile file={file} />}
    </>
  );
}
