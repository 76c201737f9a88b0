import type { ComponentChildren } from 'preact';
import type { AnyWorksheet, WorkingStep } from '../worksheets/types.ts';

/** The working with the reader's own numbers, and what the model assumes. */
export function WorkingList(props: {
  readonly worksheet: AnyWorksheet;
  readonly working: readonly WorkingStep[] | undefined;
}): ComponentChildren {
  return (
    <details class="sheet-working">
      <summary>Working, and what it assumes</summary>
      {props.working !== undefined && (
        <ol>
          {props.working.map((step) => (
            <li key={step.words}>
              {step.words}
              {step.sum !== undefined && <span class="working-sum">{step.sum}</span>}
            </li>
          ))}
        </ol>
      )}
      <p>
        <strong>Assumed.</strong> {props.worksheet.model}
      </p>
    </details>
  );
}
