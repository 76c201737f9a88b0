import type { TriageVerdict } from '../reel/triage-rules.ts';

/** The stations of a reel from the counter to the handover, in order. */
export const REEL_STATIONS = [
  'announced',
  'arrived',
  'named',
  'judged',
  'agreed',
  'mended',
  'cleaned',
  'ready',
  'recorded',
  'proven',
  'mastered',
  'copied',
  'checked',
  'stored',
  'returned',
  'closed',
] as const;

/** Where a reel stands that does not go on for now. */
export const REEL_ASIDES = ['quarantine', 'waiting', 'referred', 'refused'] as const;

export type ReelStation = (typeof REEL_STATIONS)[number];
export type ReelAside = (typeof REEL_ASIDES)[number];
export type ReelState = ReelStation | ReelAside;

/** What may be done with a reel, as its owner said. */
export type ReelAct =
  | 'open'
  | 'cleanDry'
  | 'cleanWet'
  | 'mend'
  | 'join'
  | 'run'
  | 'runAtRisk'
  | 'sendAway';
export type Consent = 'yes' | 'no' | 'ask' | 'not-said';

/** What is known of a reel when it is to be moved on. Whatever is not known counts against it. */
export interface ReelFacts {
  readonly hasNumber: boolean;
  /** No other reel of the job has the same one. */
  readonly isNumberItsOwn: boolean;
  readonly hasBoxWords: boolean;
  /** A small gauge of the book is named: not 35 mm, not unknown. */
  readonly hasSmallGauge: boolean;
  readonly mayBeNitrate: boolean;
  readonly verdict: TriageVerdict;
  /** Points of the look that nobody has looked at. */
  readonly notLookedAtCount: number;
  /** Acid level 2 or more, damp mould, sticking or powder. */
  readonly isForOthers: boolean;
  readonly isShrinkageMeasured: boolean;
  /** Brittle, strongly warped, or splices coming apart. */
  readonly isUnfitToRun: boolean;
  readonly isStriped: boolean;
  readonly consent: Readonly<Record<ReelAct, Consent>>;
  /** It may be threaded on the projector of the bench; undefined: one of the two gauges is not said. */
  readonly fitsProjector: boolean | undefined;
  /** The take-up holds it, the leader is long enough, the head is out. */
  readonly isThreadReady: boolean;
  /** The camera was proven with a test recording: progressive, exact rate, splits known. */
  readonly isCameraProven: boolean;
  readonly framesExpected: number | undefined;
  readonly framesFound: number | undefined;
  /** Frames cut out or torn, as noted. */
  readonly framesLost: number;
  /** Unsure, dropped or doubled frames are explained. */
  readonly areDoubtsExplained: boolean;
  /** Sets of the files in different places. */
  readonly fileSets: number;
  readonly areHashesRead: boolean;
  readonly isListBalanced: boolean;
  readonly isSigned: boolean;
}

interface StateRule {
  /** First station that the rule keeps the reel from. */
  readonly from: ReelStation;
  readonly words: string;
  readonly stops: (facts: ReelFacts) => boolean;
  /** Also for a reel that was never run: it goes back to its owner all the same. */
  readonly isAboutGivingBack?: true;
  /** About the work of this station alone, which a reel may pass by: not each is mended or cleaned. */
  readonly isPassedBy?: true;
  /** About the machine of this moment: a reel that was recorded is not stopped by the next gauge. */
  readonly isOfTheMoment?: true;
}

const said =
  (act: ReelAct) =>
  ({ consent }: ReelFacts): boolean =>
    consent[act] !== 'yes';

const RULES: readonly StateRule[] = [
  {
    from: 'named',
    words: 'its number is missing',
    stops: ({ hasNumber }) => !hasNumber,
    isAboutGivingBack: true,
  },
  {
    from: 'named',
    words: 'another reel of this job has the same number, and its files would have the same names',
    stops: ({ isNumberItsOwn }) => !isNumberItsOwn,
    isAboutGivingBack: true,
  },
  {
    from: 'named',
    words: 'the words on the box are not copied; write “none” where there are none',
    stops: ({ hasBoxWords }) => !hasBoxWords,
    isAboutGivingBack: true,
  },
  {
    from: 'judged',
    words: 'it may be nitrate: close the can, no lamp, no flame; quarantine, and ask an archive',
    stops: ({ mayBeNitrate }) => mayBeNitrate,
  },
  {
    from: 'judged',
    words: 'its gauge is not known, or not one of this bench: quarantine',
    stops: ({ hasSmallGauge }) => !hasSmallGauge,
  },
  {
    from: 'judged',
    words: 'points of the triage were not looked at: not looked at counts against the reel',
    stops: ({ notLookedAtCount }) => notLookedAtCount > 0,
  },
  { from: 'judged', words: 'nobody has agreed that its can is opened', stops: said('open') },
  {
    from: 'mended',
    words: 'acid level 2 or more, damp mould, sticking or powder: refer it',
    stops: ({ isForOthers }) => isForOthers,
  },
  {
    from: 'mended',
    words: 'nobody has agreed that it is mended',
    stops: said('mend'),
    isPassedBy: true,
  },
  {
    from: 'cleaned',
    words: 'nobody has agreed that it is cleaned',
    stops: ({ consent, isStriped }) =>
      consent.cleanDry !== 'yes' && (isStriped || consent.cleanWet !== 'yes'),
    isPassedBy: true,
  },
  {
    from: 'ready',
    words: 'shrinkage at head, middle and end is not measured',
    stops: ({ isShrinkageMeasured }) => !isShrinkageMeasured,
  },
  {
    from: 'ready',
    words: 'it cracks when bent, is strongly warped, or splices or many holes are open',
    stops: ({ isUnfitToRun }) => isUnfitToRun,
  },
  {
    from: 'ready',
    words: 'the triage does not let it run',
    stops: ({ verdict }) => verdict !== 'run' && verdict !== 'run-slowly',
  },
  { from: 'ready', words: 'nobody has agreed that it is run', stops: said('run') },
  {
    from: 'ready',
    words: 'it may run only slowly, and nobody has agreed to that risk',
    stops: ({ verdict, consent }) => verdict === 'run-slowly' && consent.runAtRisk !== 'yes',
  },
  {
    from: 'recorded',
    words: 'its gauge is not the gauge that the projector runs, or one of the two is not said',
    stops: ({ fitsProjector }) => fitsProjector !== true,
    isOfTheMoment: true,
  },
  {
    from: 'recorded',
    words: 'take-up size, leader and head out are not ticked',
    stops: ({ isThreadReady }) => !isThreadReady,
  },
  {
    from: 'recorded',
    words: 'the camera is not proven: progressive, exact rate, splits',
    stops: ({ isCameraProven }) => !isCameraProven,
  },
  {
    from: 'mastered',
    words: 'unsure, dropped or doubled frames are not explained',
    stops: ({ areDoubtsExplained }) => !areDoubtsExplained,
  },
  {
    from: 'mastered',
    words: 'frames expected are not frames found and frames lost together',
    stops: ({ framesExpected, framesFound, framesLost }) =>
      framesExpected === undefined || framesExpected !== (framesFound ?? Number.NaN) + framesLost,
  },
  {
    from: 'stored',
    words: 'there are fewer than three sets of the files',
    stops: ({ fileSets }) => fileSets < 3,
  },
  {
    from: 'stored',
    words: 'the checksums were not read back',
    stops: ({ areHashesRead }) => !areHashesRead,
  },
  {
    from: 'closed',
    words: 'the list of reels is not balanced: counts in are not counts out and elsewhere',
    stops: ({ isListBalanced }) => !isListBalanced,
    isAboutGivingBack: true,
  },
  {
    from: 'closed',
    words: 'the return note is not signed',
    stops: ({ isSigned }) => !isSigned,
    isAboutGivingBack: true,
  },
];

const place = (state: ReelState): number => (REEL_STATIONS as readonly string[]).indexOf(state);

/** Whether a state stands aside from the way of a reel. */
export function isAside(state: ReelState): state is ReelAside {
  return place(state) < 0;
}

/** Whether a move leads back on the way; it must carry a reason. */
export function isMoveBack(from: ReelState, to: ReelState): boolean {
  return !isAside(from) && !isAside(to) && place(to) < place(from);
}

/**
 * What keeps a reel from a state, in words. Setting a reel aside and moving it back is always possible.
 * A reel that stood aside goes back to its owner without having been run.
 *
 * Model: every rule that belongs to the station or to one before it must hold; whether it may be mended
 * or cleaned is asked at these two stations alone, which a reel may pass by.
 *
 * @param from   where the reel stands
 * @param to     where it is to go
 * @param facts  what is known of it
 * @returns reasons, in the order of the way; none when it may go on
 * @source common practice, no source
 */
export function whatStops(from: ReelState, to: ReelState, facts: ReelFacts): readonly string[] {
  if (isAside(to) || isMoveBack(from, to)) return [];
  const isGivenBack = isAside(from) && place(to) >= place('returned');
  return RULES.filter(
    (rule) =>
      (rule.isOfTheMoment !== true || place(from) < place(rule.from)) &&
      (rule.isPassedBy === true ? rule.from === to : place(rule.from) <= place(to)) &&
      (!isGivenBack || rule.isAboutGivingBack === true) &&
      rule.stops(facts),
  ).map(({ words }) => words);
}

/**
 * State of a job: that of its slowest reel. Reels that stand aside do not hold it up, unless all do.
 *
 * @param states  states of its reels
 * @returns undefined for a job without reels
 * @source common practice, no source
 */
export function slowestState(states: readonly ReelState[]): ReelState | undefined {
  const going = states.filter((state) => !isAside(state));
  return going.toSorted((one, other) => place(one) - place(other))[0] ?? states[0];
}
