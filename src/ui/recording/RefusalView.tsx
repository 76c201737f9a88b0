import type { ComponentChildren } from 'preact';
import { CopyButton } from '../CopyButton.tsx';
import type { Refusal } from './recording-kind.ts';

/** Where it shows and what to do about it, below the reason in the verdict. */
export function RefusalView({ refusal }: { readonly refusal: Refusal }): ComponentChildren {
  return (
    <div class="recording-part">
      {refusal.place !== undefined && <p>Where: {refusal.place}</p>}
      <p>What to do: {refusal.toDo}</p>
      {refusal.command !== undefined && (
        <>
          <pre tabIndex={0}>
            <code>{refusal.command}</code>
          </pre>
          <CopyButton text={refusal.command} label="Copy command" />
        </>
      )}
    </div>
  );
}
