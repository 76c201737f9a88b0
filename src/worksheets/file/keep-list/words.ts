// Sentences and tables of the keep-list worksheet.
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { DARK_ROWS } from '../../gate/dark-rows-words.ts';
import type { KeepEntries, KeepFindings } from './findings.ts';
import type { Outcome, ResultTable } from '../../machine/types.ts';

/** Rows of the table of stretches at most. */
const MOST_ROWS = 60;

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
  if (found.rules === undefined) {
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
      sentence: `Every one of the ${formatNumber(filmFrames)} film frames is sure of a whole camera frame of its own, counted with ${wander}.`,
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

interface Stretch {
  readonly firstFilmFrame: number;
  readonly filmFrames: number;
  readonly sureFilmFrames: number;
  readonly hasTie: boolean;
}

/** Runs that are sure around a tie, and what lies between them taken together. */
function stretchesOf({ reel, trust }: KeepFindings): readonly Stretch[] {
  const stretches: Stretch[] = [];
  const ties = reel.ties.map(({ filmFrame }) => filmFrame);
  let tie = 0;
  for (const { firstFilmFrame, filmFrames, isSure } of trust.runs) {
    const end = firstFilmFrame + filmFrames;
    let hasTie = false;
    while ((ties[tie] ?? Infinity) < end) {
      hasTie = isSure;
      tie += 1;
    }
    const sureFilmFrames = isSure ? filmFrames : 0;
    const before = stretches.at(-1);
    if (hasTie || before === undefined || before.hasTie) {
      stretches.push({ firstFilmFrame, filmFrames, sureFilmFrames, hasTie });
    } else {
      stretches[stretches.length - 1] = {
        ...before,
        filmFrames: before.filmFrames + filmFrames,
        sureFilmFrames: before.sureFilmFrames + sureFilmFrames,
      };
    }
  }
  return stretches;
}

/** Film frames on either side of a tie that are sure without a gap; the least over all ties. */
export function sureAroundTies(found: KeepFindings): number {
  const { reel } = found;
  const runs = stretchesOf(found).filter(({ hasTie }) => hasTie);
  const around = reel.ties.flatMap(({ filmFrame }): readonly number[] => {
    const run = runs.find(
      ({ firstFilmFrame, filmFrames }) =>
        filmFrame >= firstFilmFrame && filmFrame < firstFilmFrame + filmFrames,
    );
    if (run === undefined) return [0];
    // Nothing lies before the first film frame and after the last.
    return [
      ...(filmFrame === 0 ? [] : [filmFrame - run.firstFilmFrame]),
      ...(filmFrame === reel.filmFrames - 1
        ? []
        : [run.firstFilmFrame + run.filmFrames - 1 - filmFrame]),
    ];
  });
  return around.length === 0 ? 0 : Math.min(...around);
}

/** The list, stretch by stretch: what is sure and what is not, film frames counted from 1. */
export function sureTable(found: KeepFindings): ResultTable {
  const all = stretchesOf(found);
  const shown = all.slice(0, MOST_ROWS);
  const part = shown.length < all.length ? `, the first ${shown.length} of ${all.length}` : '';
  return {
    caption: `The list, stretch by stretch${part}`,
    columns: ['From film frame', 'To', 'Whole', 'Sure film frames'],
    rows: shown.map(({ firstFilmFrame, filmFrames, sureFilmFrames }) => {
      const isSure = sureFilmFrames === filmFrames;
      return {
        cells: [
          String(firstFilmFrame + 1),
          String(firstFilmFrame + filmFrames),
          isSure ? 'sure' : 'unsure',
          `${sureFilmFrames} of ${filmFrames}`,
        ],
        level: isSure ? 'good' : 'care',
      };
    }),
  };
}
