import type { ComponentChildren } from 'preact';
import { KeptStatus, type Said } from '../kept/KeptStatus.tsx';
import type { BenchState } from './bench-state.ts';
import type { BenchSnapshot } from './bench-store.ts';

const WORDS = {
  kept: 'Kept on this device as you type.',
  blocked:
    'This browser lets the page keep nothing: your bench lasts until you leave the page. Save it as a file or copy its link.',
  full: 'The browser has no room left: the last changes are not kept and last until you leave the page. Save them as a file.',
} as const;

/** One line on top of the form: whether the bench is kept, and what was done last. */
export function BenchStatus(props: {
  readonly snapshot: BenchSnapshot;
  readonly hasAside: boolean;
  readonly said: Said<BenchState> | undefined;
  readonly onUndo: (before: BenchState) => void;
}): ComponentChildren {
  const { snapshot, ...rest } = props;
  return <KeptStatus words={WORDS} trouble={snapshot.trouble} {...rest} />;
}
