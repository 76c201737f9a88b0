import type { ComponentChildren } from 'preact';
import type { AnyWorksheet, WorkingStep } from '../worksheets/types.ts';
import { WorkingSteps } from './WorkingSteps.tsx';

/** The working with the reader's own numbers, and what the model assumes. */
export function WorkingList(props: {
  readonly worksheet: AnyWorksheet;
  readonly working: readonly WorkingStep[] | undefined;
}): ComponentChildren {
  return (
    <details class="sheet-working">
      <summary>Working, and what it assumes</summary>
      {props.working !== undefined && <WorkingSteps working={props.working} />}
      <p>
        <strong>Assumed.</strong> {props.worksheet.model}
      </p>
    </details>
  );
}
