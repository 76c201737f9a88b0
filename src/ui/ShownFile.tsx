import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { ResultFile } from '../worksheets/machine/types.ts';
import { FETCH_FAILED, textOf } from './file-text.ts';

/**
 * The text of an opened file. While the next one is on its way the old one is not shown: it is not for the
 * numbers that stand above it.
 */
function OpenedText({ file }: { readonly file: ResultFile }): ComponentChildren {
  const [shown, setShown] = useState<{ readonly of: ResultFile; readonly text: string }>();
  useEffect(() => {
    let isCurrent = true;
    void textOf(file)
      .catch(() => FETCH_FAILED)
      .then((text) => {
        if (isCurrent) setShown({ of: file, text });
      });
    return () => {
      isCurrent = false;
    };
  }, [file]);
  return (
    <pre tabIndex={0} aria-busy={shown?.of !== file}>
      {/* The mark at the head is for the program that reads the file. */}
      <code>{shown?.of === file ? shown.text.replace(/^\uFEFF/u, '') : ''}</code>
    </pre>
  );
}

/** A file to read before it is taken. Its text is made on opening, so that no page is sent with it. */
export function ShownFile({ file }: { readonly file: ResultFile }): ComponentChildren {
  const [isOpen, setIsOpen] = useState(false);
  return (
    <details
      class="sheet-script"
      onToggle={(event) => {
        setIsOpen(event.currentTarget.open);
      }}
    >
      <summary>Read {file.fileName}</summary>
      {isOpen && <OpenedText file={file} />}
    </details>
  );
}
