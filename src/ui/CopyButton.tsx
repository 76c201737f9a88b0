import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';

/** Copies a text and says so in its own label, for eye and screen reader. */
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
      // Clipboards are blocked in some browsers and frames.
      setState('refused');
    }
  };
  return (
    <button
      type="button"
      disabled={props.isDisabled === true}
      onClick={() => {
        void copy();
      }}
      onBlur={() => {
        setState('ready');
      }}
    >
      <span aria-live="polite">
        {state === 'ready' && props.label}
        {state === 'copied' && 'Copied'}
        {state === 'refused' && 'Copying is blocked here'}
      </span>
    </button>
  );
}
