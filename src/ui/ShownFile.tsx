import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { ResultFile } from '../worksheets/machine/types.ts';

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
      {isOpen && (
        <pre tabIndex={0}>
          {/* The mark at the head is for the program that reads the file. */}
          <code>{file.text.replace(/^\uFEFF/u, '')}</code>
        </pre>
      )}
    </details>
  );
}
