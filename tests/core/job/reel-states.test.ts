import { describe, expect, it } from 'vitest';
import {
  isMoveBack,
  REEL_STATIONS,
  slowestState,
  whatStops,
  type ReelFacts,
} from '../../../src/core/job/reel-states.ts';

const yes = 'yes';
/** A reel with which everything is in order. */
const sound: ReelFacts = {
  hasNumber: true,
  isNumberItsOwn: true,
  hasBoxWords: true,
  hasSmallGauge: true,
  mayBeNitrate: false,
  verdict: 'run',
  notLookedAtCount: 0,
  isForOthers: false,
  isShrinkageMeasured: true,
  isUnfitToRun: false,
  isStriped: false,
  consent: {
    open: yes,
    cleanDry: yes,
    cleanWet: 'no',
    mend: yes,
    join: 'no',
    run: yes,
    runAtRisk: 'no',
    sendAway: 'no',
  },
  fitsProjector: true,
  isThreadReady: true,
  isCameraProven: true,
  framesExpected: 14_323,
  framesFound: 14_321,
  framesLost: 2,
  areDoubtsExplained: true,
  fileSets: 3,
  areHashesRead: true,
  isListBalanced: true,
  isSigned: true,
};

/** The first station that a reel cannot reach, of all of them in order. */
function stuckBefore(changes: Partial<ReelFacts>): string | undefined {
  const facts = { ...sound, ...changes };
  return REEL_STATIONS.find((station) => whatStops('arrived', station, facts).length > 0);
}

describe('the way of a reel', () => {
  it('is open from the counter to the handover when everything is in order', () => {
    expect(stuckBefore({})).toBeUndefined();
  });

  // Where each finding stops a reel: common practice of the trade, no source.
  const cases: readonly (readonly [Partial<ReelFacts>, string])[] = [
    [{ hasNumber: false }, 'named'],
    [{ isNumberItsOwn: false }, 'named'],
    [{ hasBoxWords: false }, 'named'],
    [{ mayBeNitrate: true }, 'judged'],
    [{ hasSmallGauge: false }, 'judged'],
    [{ notLookedAtCount: 1 }, 'judged'],
    [{ isForOthers: true }, 'mended'],
    // A can is opened to judge what is in it.
    [{ consent: { ...sound.consent, open: 'not-said' } }, 'judged'],
    [{ consent: { ...sound.consent, mend: 'no' } }, 'mended'],
    [{ consent: { ...sound.consent, cleanDry: 'ask' } }, 'cleaned'],
    // Liquid would take the stripe off.
    [{ isStriped: true, consent: { ...sound.consent, cleanDry: 'no', cleanWet: yes } }, 'cleaned'],
    [{ isShrinkageMeasured: false }, 'ready'],
    [{ isUnfitToRun: true }, 'ready'],
    [{ verdict: 'not-here' }, 'ready'],
    [{ verdict: 'run-slowly' }, 'ready'],
    [{ consent: { ...sound.consent, run: 'no' } }, 'ready'],
    [{ fitsProjector: false }, 'recorded'],
    [{ fitsProjector: undefined }, 'recorded'],
    [{ isThreadReady: false }, 'recorded'],
    [{ isCameraProven: false }, 'recorded'],
    [{ framesFound: 14_320 }, 'mastered'],
    [{ framesExpected: undefined }, 'mastered'],
    [{ framesExpected: undefined, framesFound: undefined, framesLost: 0 }, 'mastered'],
    [{ areDoubtsExplained: false }, 'mastered'],
    [{ fileSets: 2 }, 'stored'],
    [{ areHashesRead: false }, 'stored'],
    [{ isListBalanced: false }, 'closed'],
    [{ isSigned: false }, 'closed'],
  ];
  it.each(cases)('stops with %o before it is %s', (changes, station) => {
    expect(stuckBefore(changes)).toBe(station);
  });

  it('runs a reel that its owner wants neither mended nor cleaned, if it is fit', () => {
    const consent = { ...sound.consent, mend: 'no', cleanDry: 'no', cleanWet: 'no' } as const;
    expect(whatStops('agreed', 'ready', { ...sound, consent })).toEqual([]);
    expect(whatStops('agreed', 'ready', { ...sound, consent, isUnfitToRun: true })).toHaveLength(1);
    expect(whatStops('agreed', 'cleaned', { ...sound, consent })).toHaveLength(1);
  });

  it('asks for the gauge of the machine until it is recorded, and not when another is threaded', () => {
    const another: ReelFacts = { ...sound, fitsProjector: false };
    expect(whatStops('ready', 'recorded', another)).toHaveLength(1);
    expect(whatStops('waiting', 'mastered', another)).toHaveLength(1);
    expect(whatStops('recorded', 'returned', another)).toEqual([]);
    expect(whatStops('returned', 'closed', another)).toEqual([]);
  });

  it('lets any reel stand aside, and gives back one that was never run', () => {
    const nitrate: ReelFacts = {
      ...sound,
      mayBeNitrate: true,
      verdict: 'do-not-open',
      fileSets: 0,
    };
    expect(whatStops('arrived', 'quarantine', nitrate)).toEqual([]);
    expect(whatStops('quarantine', 'returned', nitrate)).toEqual([]);
    expect(whatStops('quarantine', 'ready', nitrate)).not.toEqual([]);
    expect(whatStops('quarantine', 'closed', { ...nitrate, isSigned: false })).toHaveLength(1);
  });

  it('goes back freely, which needs a reason', () => {
    expect(whatStops('mastered', 'ready', { ...sound, verdict: 'not-yet' })).toEqual([]);
    expect(isMoveBack('mastered', 'ready')).toBe(true);
    expect(isMoveBack('ready', 'waiting')).toBe(false);
    expect(isMoveBack('waiting', 'ready')).toBe(false);
  });

  it('names the slowest reel as the state of the job', () => {
    expect(slowestState(['stored', 'agreed', 'refused', 'ready'])).toBe('agreed');
    expect(slowestState(['refused', 'quarantine'])).toBe('refused');
    expect(slowestState([])).toBeUndefined();
  });
});
