// Sentences of the keep-list worksheet.
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { DARK_ROWS } from '../../gate/dark-rows-words.ts';
import type { Outcome } from '../../machine/types.ts';
import { RANGE_NOT_ASKED } from '../recording-inputs.ts';
import type { KeepFindings } from './findings.ts';
import type { KeepEntries } from './inputs.ts';

const percent = (value: number): string => formatQuantity(value, 'percent', 2);

/** The wander that is counted with, and where it comes from. */
export function wanderWords({ wanderPercent, wanderSource }: KeepFindings): string {
  const amount = `±${percent(wanderPercent)}`;
  return {
    typed: `${amount}, as you declare`,
    assumed: `${amount}, assumed because it is not measured`,
    disproved: `${amount}, assumed because the ties disprove what you declare`,
  }[wanderSource];
}

const BY_EVIDENCE =
  'choose the frames by evidence: measured pictures, a shutter pulse on a spare sound channel, or a real lock';

/** What to do about film frames that are not sure. */
function remedy({ tiesNeeded, reel, bornePercent }: KeepFindings): string {
  if (tiesNeeded === undefined) return `No number of ties is enough at this bench; ${BY_EVIDENCE}.`;
  const takes = `For all of them to be sure it takes ${formatNumber(tiesNeeded)} ties, spread evenly`;
  // Nearer together than this, ties are more work than looking at every picture.
  if (tiesNeeded > 2 && reel.filmFrames / tiesNeeded < 100)
    return `${takes}; rather ${BY_EVIDENCE}.`;
  return bornePercent === undefined || bornePercent === 0
    ? `${takes}.`
    : `${takes}, or, with the ties you have, a wander of at most ±${percent(bornePercent)}.`;
}

/** The verdict. */
export function keepVerdict(found: KeepFindings, { filmFrames }: KeepEntries): Outcome['verdict'] {
  const { trust } = found;
  if (found.hasDarkRows) {
    return {
      level: 'stop',
      sentence: `The exposure fits into a dark gap of the shutter, so ${DARK_ROWS}. Lengthen the exposure before you record.`,
    };
  }
  if (found.command === undefined) {
    return {
      level: 'stop',
      sentence:
        'The camera is slower than the film, so some film frames have no camera frame of their own: raise the camera rate or slow the film.',
    };
  }
  if (found.perfectFails) {
    return {
      level: 'stop',
      sentence:
        'At these settings even a perfect list meets blended frames: raise the camera rate or shorten exposure or readout.',
    };
  }
  const wander = `a wander of ${wanderWords(found)}`;
  if (trust.sureFilmFrames === filmFrames) {
    return {
      level: 'good',
      sentence: `Every film frame is sure of a whole camera frame of its own, counted with ${wander}.`,
    };
  }
  const count =
    trust.sureFilmFrames === 0
      ? `None of the ${formatNumber(filmFrames)} film frames is sure`
      : `Only ${formatNumber(trust.sureFilmFrames)} of ${formatNumber(filmFrames)} film frames are sure`;
  return {
    level: 'care',
    sentence: `${count}, counted with ${wander}; the others may be blended, doubled or missing. ${remedy(found)}`,
  };
}

/** How the kept frames are spaced. */
export function spacingWords({ ratio }: KeepFindings): string {
  const fewest = Math.floor(ratio + 1e-9);
  const most = Math.ceil(ratio - 1e-9);
  if (fewest === most) return fewest === 1 ? 'each one' : `one of every ${fewest}`;
  return `${fewest} or ${most} apart`;
}

/** Cautions that apply to these numbers only. */
export function keepCautions(
  found: KeepFindings,
  { filmFps, codeRange }: KeepEntries,
): readonly string[] {
  const { ends, wanderSource, command } = found;
  const isFarOff = ends !== undefined && Math.abs(ends.filmFps / filmFps - 1) > 0.05;
  return [
    ...(isFarOff
      ? [
          'The film rate from the two ends and the one you typed differ by more than 5 %: check the frame numbers and the count.',
        ]
      : []),
    ...(wanderSource === 'disproved'
      ? [
          'The ties contradict the wander that you declare: the film ran at different speeds between them. Check the frame numbers; if they are right, the machine wanders by more than you declare, and nobody knows by how much.',
        ]
      : []),
    ...(command !== undefined && codeRange === 'not-asked' ? [RANGE_NOT_ASKED] : []),
  ];
}
