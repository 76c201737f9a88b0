import type { ComponentChildren } from 'preact';
import type { ShownFault } from '../../practice/fault-case.ts';
import { sitePath } from '../islands/site-path.ts';

/** The still of a recording with a fault. Its words say what is seen, never what it is called. */
export function FaultStill({ fault }: { readonly fault: ShownFault }): ComponentChildren {
  return (
    <img
      class="fault-still"
      src={sitePath(`/scenes/${fault.still}-320.webp`)}
      width="320"
      height="240"
      alt={`A recording of the home movie. ${fault.seen}`}
    />
  );
}
