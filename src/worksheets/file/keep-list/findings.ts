import {
  keepTrust,
  perfectListFails,
  provenWanderPercent,
  tiesNeeded,
  wanderBornePercent,
  type KeepBench,
} from '../../../core/file/keep-drift.ts';
import {
  cameraFrameInReel,
  keepRulesOf,
  makeKeepReel,
  stretchRatio,
  type KeepTie,
} from '../../../core/file/keep-ties.ts';
import { keepCommand } from '../../../core/file/picture-commands.ts';
import { readoutOrWorst } from '../../../core/gate/readout.ts';
import { longestDarkFraction, pulldownDarkFraction } from '../../../core/gate/shutter.ts';
import { canLeaveRowsDark } from '../../../core/gate/whole-frames.ts';
import { shutterOf } from '../../gate/shutter-inputs.ts';
import { codeRangeForCommand, PICTURE_TURNS } from '../recording-inputs.ts';
import type { KeepEntries, KeepRates } from './inputs.ts';
import { startOfList } from './start-of-list.ts';
import { sureAroundTies, sureStretches } from './sure-stretches.ts';
import { tiesOf } from './ties.ts';

/**
 * Wander that is taken until one is measured, %: several times what a motor strays that follows the
 * mains. A cautious guess for the others; common practice, no source.
 */
export const ASSUMED_WANDER_PERCENT = 1;

/** The wander to count with, and where it comes from. */
function wanderOf(declaredPercent: number | undefined, provenPercent: number) {
  const stated = declaredPercent ?? ASSUMED_WANDER_PERCENT;
  // What the ties disprove was not measured well, and what they prove is only the least there can be.
  if (provenPercent > stated) {
    const wanderPercent = Math.max(ASSUMED_WANDER_PERCENT, provenPercent);
    return { wanderPercent, wanderSource: 'disproved' } as const;
  }
  const wanderSource = declaredPercent === undefined ? 'assumed' : 'typed';
  return { wanderPercent: stated, wanderSource } as const;
}

/** First and last film frame with the film rate between them; undefined when the last is not tied. */
function endsOf(ties: readonly KeepTie[], { filmFrames, cameraFps }: KeepEntries) {
  const [first, last] = [ties[0], ties.at(-1)];
  if (first === undefined || last?.filmFrame !== filmFrames - 1 || filmFrames === 1)
    return undefined;
  const ratio = (last.cameraFrame - first.cameraFrame) / (filmFrames - 1);
  return { first, last, ratio, filmFps: cameraFps / ratio };
}

/** Makes the keep list and finds how far it can be trusted. */
export function findKeepList(entries: KeepEntries, exact: KeepRates) {
  const { cameraFps, filmFrames, exposureSeconds, rateErrorPercent } = entries;
  const shutter = shutterOf(entries);
  const ties = tiesOf(entries);
  const reel = makeKeepReel(ties, exact.filmFps, exact.cameraFps, filmFrames);
  const bench: KeepBench = {
    cameraFps,
    exposureSeconds,
    readoutSeconds: readoutOrWorst(entries.readoutSeconds, cameraFps),
    pulldownDarkFraction: pulldownDarkFraction(shutter),
    longestDarkFraction: longestDarkFraction(shutter),
  };
  const provenPercent = provenWanderPercent(reel);
  const { wanderPercent, wanderSource } = wanderOf(entries.wanderPercent, provenPercent);
  const trust = keepTrust(reel, bench, { rateErrorPercent, wanderPercent });
  const stretches = sureStretches(reel, trust);
  const [first] = reel.stretches;
  const firstStretchFps = first === undefined ? entries.filmFps : cameraFps / stretchRatio(first);
  const ends = endsOf(ties, entries);
  const rules = keepRulesOf(reel);
  return {
    reel,
    bench,
    trust,
    stretches,
    /** Film frames on either side of a tie that are sure without a gap; the least over all ties. */
    sureAroundTies: sureAroundTies(reel, stretches),
    ends,
    /** Camera frames per film frame over the whole list. */
    ratio: ends?.ratio ?? exact.cameraFps.div(exact.filmFps).valueOf(),
    /** Absent when the camera is slower than the film. */
    command:
      rules === undefined
        ? undefined
        : keepCommand(rules, exact.nativeFps, {
            turn: PICTURE_TURNS[entries.turn],
            codeRange: codeRangeForCommand(entries.codeRange),
          }),
    firstKept: cameraFrameInReel(reel, 0),
    lastKept: cameraFrameInReel(reel, filmFrames - 1),
    wanderPercent,
    wanderSource,
    /** Wander that the ties prove by themselves, %; 0 with fewer than three. */
    provenWanderPercent: provenPercent,
    /** Wander that the whole list bears, %; undefined when it is not sure even without any. */
    bornePercent: wanderBornePercent(reel, bench, rateErrorPercent),
    /** Undefined when no number of ties is enough. */
    tiesNeeded: tiesNeeded(reel, bench, wanderPercent),
    /** Even a list without any error meets blended frames. */
    perfectFails: perfectListFails(reel, bench),
    /** The exposure fits into a dark gap, so nothing is sure. */
    hasDarkRows: canLeaveRowsDark(
      exposureSeconds,
      // The slower the film, the longer the dark: the slowest stretch decides.
      bench.longestDarkFraction /
        Math.min(
          entries.filmFps,
          ...reel.stretches.map((stretch) => cameraFps / stretchRatio(stretch)),
        ),
    ),
    /** The first camera frames, if rate and start are exactly as typed. */
    start: startOfList(entries, bench, reel, trust, firstStretchFps),
  };
}

export type KeepFindings = ReturnType<typeof findKeepList>;
