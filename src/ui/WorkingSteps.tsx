import type { ComponentChildren } from 'preact';
import { UnbrokenUnits } from './UnbrokenUnits.tsx';
import type { WorkingStep } from '../worksheets/machine/types.ts';

/** The steps of a working: words, and under them the sum with the reader's numbers. */
export function WorkingSteps(props: {
  readonly working: readonly WorkingStep[];
}): ComponentChildren {
  return (
    <ol>
      {props.working.map((step) => (
        <li key={step.words}>
          <UnbrokenUnits text={step.words} />
          {step.sum !== undefined && (
            <span class="working-sum">
              <UnbrokenUnits text={step.sum} />
            </span>
          )}
        </li>
      ))}
    </ol>
  );
}
