import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { WorkingStep, Worksheet } from '../worksheets/machine/types.ts';
import { WorkingSteps } from './WorkingSteps.tsx';

/**
 * The working with the reader's own numbers, and what the model assumes. In a live form the steps are
 * worked out while they are to be seen: when the reader opens them, and on paper.
 */
export function WorkingList(props: {
  readonly worksheet: Worksheet;
  readonly working: (() => readonly WorkingStep[]) | undefined;
  readonly isLive: boolean;
}): ComponentChildren {
  const [isOpen, setIsOpen] = useState(false);
  const [isPrinting, setIsPrinting] = useState(false);
  useEffect(() => {
    const begin = (): void => {
      setIsPrinting(true);
    };
    const end = (): void => {
      setIsPrinting(false);
    };
    addEventListener('beforeprint', begin);
    addEventListener('afterprint', end);
    return () => {
      removeEventListener('beforeprint', begin);
      removeEventListener('afterprint', end);
    };
  }, []);
  const isSeen = !props.isLive || isOpen || isPrinting;
  return (
    <details
      class="sheet-working"
      onToggle={(event) => {
        setIsOpen(event.currentTarget.open);
      }}
    >
      <summary>Working, and what it assumes</summary>
      {isSeen && props.working !== undefined && <WorkingSteps working={props.working()} />}
      <p>
        <strong>Assumed.</strong> {props.worksheet.model}
      </p>
    </details>
  );
}
