import type { ComponentChildren } from 'preact';
import { UnbrokenUnits } from '../UnbrokenUnits.tsx';
import { Blank } from './Blank.tsx';
import type { PlanRecord } from './plan.ts';

/** Lines to write on: typed before printing, or by hand on the paper. */
export function RecordBlock({ record }: { readonly record: PlanRecord }): ComponentChildren {
  return (
    <section class="gathered-record">
      <h2>{record.heading}</h2>
      <div class="gathered-lines">
        {record.lines.map(({ label, parts }) =>
          parts === undefined ? (
            <label key={label} class="gathered-line">
              <span>
                <UnbrokenUnits text={label} />
              </span>
              <Blank name={`${record.heading}/${label}`} />
            </label>
          ) : (
            <div key={label} class="gathered-line" role="group" aria-label={label}>
              <span>
                <UnbrokenUnits text={label} />
              </span>
              {parts.map((part) => (
                <label key={part} class="gathered-part">
                  {part}
                  <Blank name={`${record.heading}/${label}/${part}`} />
                </label>
              ))}
            </div>
          ),
        )}
      </div>
    </section>
  );
}
