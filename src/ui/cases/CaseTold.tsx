import type { ComponentChildren } from 'preact';
import { UnbrokenUnits } from '../UnbrokenUnits.tsx';

/** What is told in a case or a sum, line by line. */
export function CaseTold(props: {
  readonly told: readonly { readonly label: string; readonly text: string }[];
}): ComponentChildren {
  return (
    <dl class="practice-told">
      {props.told.map(({ label, text }) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>
            <UnbrokenUnits text={text} />
          </dd>
        </div>
      ))}
    </dl>
  );
}
