import type { ComponentChildren } from 'preact';
import type { Box } from '../../worksheets/box/job.ts';
import type { KeptSnapshot } from '../bench/kept-store.ts';
import { KeptStatus, type Said } from '../kept/KeptStatus.tsx';

/** The last thing that happened, what can be done about it, and the box to go back to. */
export type BoxSaid = Said<Box>;

const WORDS = {
  kept: 'Kept on this device as you type. None of it is sent anywhere.',
  blocked:
    'This browser lets the page keep nothing: the box lasts until you leave the page. Save it as a file.',
  full: 'The browser has no room left: the last changes are not kept and last until you leave the page. Save the box as a file.',
} as const;

/** One line on top of the page: whether the box is kept, and what was done last. */
export function BoxStatus(props: {
  readonly snapshot: KeptSnapshot<Box>;
  readonly hasAside: boolean;
  readonly said: BoxSaid | undefined;
  readonly onUndo: (before: Box) => void;
}): ComponentChildren {
  const { snapshot, ...rest } = props;
  return <KeptStatus words={WORDS} trouble={snapshot.trouble} {...rest} />;
}
