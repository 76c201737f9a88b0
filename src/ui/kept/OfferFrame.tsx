import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

const MOST_FAULTS = 20;

interface Props {
  readonly title: string;
  /** What could not be read and would be passed over. */
  readonly faults: readonly string[];
  /** The buttons that take what is offered; the one that leaves it is there already. */
  readonly answers: ComponentChildren;
  readonly onLeave: () => void;
  /** What is offered. */
  readonly children: ComponentChildren;
}

/**
 * The dialog that asks before a link or a file changes what is kept on this device. It is open as long
 * as it is rendered.
 */
export function OfferFrame({
  title,
  faults,
  answers,
  onLeave,
  children,
}: Props): ComponentChildren {
  const dialog = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    const shown = dialog.current;
    shown?.showModal();
    // Closed before it is taken away, so that the focus goes back to where it was.
    return () => shown?.close();
  }, []);
  return (
    <dialog ref={dialog} class="offer" aria-labelledby="offer-title" onClose={onLeave}>
      <h2 id="offer-title">{title}</h2>
      {children}
      {faults.length > 0 && (
        <div class="offer-faults">
          <p>Passed over, because it cannot be read:</p>
          <ul>
            {faults.slice(0, MOST_FAULTS).map((fault) => (
              <li key={fault}>{fault}</li>
            ))}
          </ul>
        </div>
      )}
      <div class="offer-buttons">
        {answers}
        <button type="button" onClick={onLeave}>
          Leave it
        </button>
      </div>
    </dialog>
  );
}
