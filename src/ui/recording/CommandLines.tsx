import type { ComponentChildren } from 'preact';
import { CopyButton } from '../CopyButton.tsx';

/** A command to copy. */
export function CommandLines(props: {
  readonly label: string;
  readonly text: string;
}): ComponentChildren {
  return (
    <div class="recording-command">
      <p class="sheet-legend">{props.label}</p>
      {/* Focusable so that a keyboard can scroll a long command. */}
      <pre tabIndex={0}>
        <code>{props.text}</code>
      </pre>
      <CopyButton text={props.text} label="Copy command" />
    </div>
  );
}
