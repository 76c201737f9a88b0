// The answers of the keep-list worksheet.
import { formatNumber } from '../../../quantity/format.ts';
import { duration, quantity, words } from '../../machine/answers.ts';
import type { AnswerBody, OutcomeOf } from '../../machine/define-worksheet.ts';
import type { KeepFindings } from './findings.ts';
import type { KeepEntries } from './inputs.ts';
import { spacingWords, wanderWords } from './words.ts';

/** Labels, in printed order. */
export const labels = {
  sureFilmFrames: 'Film frames that are sure',
  wanderPercent: 'Wander counted with',
  sureAroundTies: 'Sure on either side of a tie',
  wanderBornePercent: 'Wander that the whole list bears',
  tiesNeeded: 'Ties that make the whole list sure',
  provenWanderPercent: 'Wander that the ties prove',
  tieErrorFrames: 'A tie may be off by',
  roomCameraFrames: 'Room in the window',
  driftFilmFrames: 'The list may be out by',
  cameraFramesPerFilmFrame: 'Camera frames per film frame',
  spacing: 'Kept frames are',
  lastKept: 'Camera frame kept for the last film frame',
  droppedFrames: 'Camera frames dropped between first and last',
  nativeSeconds: 'Running time at the native rate',
  listFps: 'Film rate between the ends',
} as const;

export type AnswerKey = keyof typeof labels;

function borneAnswer({ bornePercent }: KeepFindings): AnswerBody {
  return bornePercent === undefined
    ? words('none', { note: 'Not even a film that holds its speed is sure all through.' })
    : quantity(bornePercent, 'percent', 2, {
        note: 'Up to it every film frame of this list is sure.',
      });
}

function tiesNeededAnswer({ tiesNeeded, hasDarkRows }: KeepFindings): AnswerBody {
  return tiesNeeded === undefined || hasDarkRows
    ? words('no number is enough')
    : quantity(tiesNeeded, 'one', 9, {
        note: 'Spread evenly, the first and the last film frame included.',
      });
}

function provenWanderAnswer({ reel, provenWanderPercent }: KeepFindings): AnswerBody {
  return reel.ties.length < 3
    ? words('not known', { note: 'It takes a third tie, best in the middle.' })
    : quantity(provenWanderPercent, 'percent', 2, { note: 'The true wander is at least this.' });
}

export function answersOf(
  found: KeepFindings,
  { filmFrames, nativeFps }: KeepEntries,
): OutcomeOf<AnswerKey>['answers'] {
  const { trust, ratio, firstKept, lastKept, ends } = found;
  return {
    sureFilmFrames: quantity(trust.sureFilmFrames, 'one', 9, {
      level: trust.sureFilmFrames === filmFrames ? 'good' : 'care',
      note: `Of ${formatNumber(filmFrames)}${trust.sureFilmFrames === filmFrames ? '' : '; the others may be blended, doubled or missing'}.`,
    }),
    wanderPercent: quantity(found.wanderPercent, 'percent', 2, { note: `${wanderWords(found)}.` }),
    sureAroundTies: quantity(found.sureAroundTies, 'one', 9, {
      note: 'Film frames; the tie with the fewest.',
    }),
    wanderBornePercent: borneAnswer(found),
    tiesNeeded: tiesNeededAnswer(found),
    provenWanderPercent: provenWanderAnswer(found),
    tieErrorFrames: quantity(Math.max(...trust.tieErrorFrames), 'frames', 2, {
      note: 'Camera frames either way; follows from the count of clean ones.',
    }),
    roomCameraFrames: quantity(Math.max(0, trust.halfWindowFrames), 'frames', 2, {
      note: 'Camera frames that the kept one may lie from the middle of its film frame, rounding and all errors together.',
    }),
    driftFilmFrames: quantity(trust.worstErrorFrames / ratio, 'one', 3, {
      note: 'Film frames either way, where it is worst.',
    }),
    cameraFramesPerFilmFrame: quantity(ratio, 'one', 6),
    spacing: words(spacingWords(found)),
    lastKept: quantity(lastKept, 'one', 9),
    droppedFrames: quantity(Math.max(0, lastKept - firstKept + 1 - filmFrames), 'one', 9),
    nativeSeconds: duration(filmFrames / nativeFps),
    ...(ends === undefined ? {} : { listFps: quantity(ends.filmFps, 'fps', 6) }),
  };
}
