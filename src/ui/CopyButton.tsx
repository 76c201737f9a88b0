import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/**
 * Copies a text and says so in its own label, for eye and screen reader. Where the clipboard is blocked,
 * as on a page without https, the text stands selected in a field, ready for the reader's own keys.
 */
export function CopyButton(props: {
  readonly text: string;
  readonly label: string;
  /** There is nothing to copy yet. */
  readonly isDisabled?: boolean;
}): ComponentChildren {
  const [state, setState] = useState<'ready' | 'copied' | 'refused'>('ready');
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(props.text);
      setState('copied');
    } catch {
      setState('refused');
    }
  };
  return (
    <>
      <button
        type="button"
        disabled={props.isDisabled === true}
        onClick={() => {
          void copy();
        }}
        onBlur={() => {
          if (state === 'copied') setState('ready');
        }}
      >
        <span aria-live="polite">{state === 'copied' ? 'Copied' : props.label}</span>
      </button>
      {state === 'refused' && <SelectedText text={props.text} />}
    </>
  );
}

function SelectedText({ text }: { readonly text: string }): ComponentChildren {
  const field = useRef<HTMLTextAreaElement>(null);
  useLayoutEffect(() => {
    field.current?.focus();
    field.current?.select();
  }, []);
  return (
    <label class="copy-by-hand">
      The browser does not let this page copy. Here is the text, selected:
      <textarea ref={field} readOnly rows={Math.min(6, text.split('\n').length)} value={text} />
    </label>
  );
}
