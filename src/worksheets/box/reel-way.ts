import {
  isMoveBack,
  REEL_ASIDES,
  REEL_STATIONS,
  slowestState,
  whatStops,
  type ReelState,
} from '../../core/job/reel-states.ts';
import type { Job, Reel } from './job.ts';
import { reelFacts } from './reel-reading.ts';

/** Every state of a reel: its way in order, then those aside. */
export const REEL_STATES: readonly ReelState[] = [...REEL_STATIONS, ...REEL_ASIDES];

/** Names of the states as people read them. */
export const STATE_WORDS: Readonly<Record<ReelState, string>> = {
  announced: 'announced',
  arrived: 'arrived',
  named: 'named',
  judged: 'judged',
  agreed: 'agreed',
  mended: 'mended',
  cleaned: 'cleaned',
  ready: 'ready to run',
  recorded: 'recorded',
  proven: 'proven: every frame once',
  mastered: 'mastered',
  copied: 'copied to watch',
  checked: 'checked by a second person',
  stored: 'stored: three sets, read back',
  returned: 'returned',
  closed: 'closed',
  quarantine: 'aside: quarantine',
  waiting: 'aside: waiting',
  referred: 'aside: referred elsewhere',
  refused: 'aside: refused',
};

/** Whether a move leads back, which is written down only with its reason. */
export function needsReason(from: ReelState, to: ReelState): boolean {
  return isMoveBack(from, to);
}

/** What keeps a reel from a state, in words; none when it may go there. */
export function reelStops(
  job: Job,
  reel: Reel,
  to: ReelState,
  projectorGauge: string,
): readonly string[] {
  return whatStops(reel.state, to, reelFacts(job, reel, projectorGauge));
}

/** State of a job: that of its slowest reel; undefined without reels. */
export function jobState({ reels }: Job): ReelState | undefined {
  return slowestState(reels.map(({ state }) => state));
}
