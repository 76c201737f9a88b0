// Tables and picture of the keep-list worksheet.
import {
  drawnCameraFrame,
  filmFrameNumber,
  kindWords,
  shareWords,
} from '../../gate/camera-frame-kinds.ts';
import type { WholeFramesData } from '../../machine/picture-data.ts';
import type { ResultTable } from '../../machine/types.ts';
import type { ListedCameraFrame } from './start-of-list.ts';
import type { SureStretch } from './sure-stretches.ts';

/** Rows of the table of stretches at most. */
const MOST_ROWS = 60;

/** The list, stretch by stretch: what is sure and what is not, film frames counted from 1. */
export function sureTable(all: readonly SureStretch[]): ResultTable {
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

/** What the first camera frames hold, and which of them are kept. */
export function startTable(start: readonly ListedCameraFrame[]): ResultTable {
  return {
    caption: `The first ${start.length} camera frames, if rate and start are exactly as typed`,
    columns: ['Camera frame', 'Main film frame', 'Its share of the light', 'Kind', 'Kept'],
    rows: start.map(({ cameraFrame, purity, kept }) => ({
      cells: [
        String(cameraFrame),
        String(filmFrameNumber(purity.filmFrame)),
        shareWords(purity.pictureShare),
        kindWords(purity),
        kept ?? '–',
      ],
      ...(kept === undefined ? {} : { level: kept === 'sure' ? 'good' : 'care' }),
    })),
  };
}

/** The same camera frames to draw. */
export function startPicture(start: readonly ListedCameraFrame[]): WholeFramesData {
  const whole = start.filter(({ purity }) => purity.kind === 'whole').length;
  return {
    name: 'whole-frames',
    alternative: `${start.length} camera frames in a row from the first kept one; ${whole} of them hold light of one film frame in every row.`,
    cameraFrames: start.map(({ purity }) => drawnCameraFrame(purity)),
  };
}
