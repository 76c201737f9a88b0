import type { CameraFramePurity, PurityCycle } from '../core/purity.ts';
import { formatQuantity } from '../core/quantity/format.ts';
import type { WholeFramesData } from './picture-data.ts';
import type { ResultTable } from './types.ts';

/** Rows of the table at most; the cycle repeats, and a longer list is not read. */
const MOST_ROWS = 60;

function kindOf(frame: CameraFramePurity): string {
  if (frame.isWhole) return 'whole';
  return frame.otherFilmFrame === undefined ? 'dark' : `blended with ${frame.otherFilmFrame + 1}`;
}

const percent = (share: number): string =>
  formatQuantity(Math.floor(share * 1000) / 10, 'percent', 4);

/** Purity of the camera frames of one cycle, film frames counted from 1. */
export function purityTable(cycle: PurityCycle): ResultTable {
  const shown = cycle.frames.slice(0, MOST_ROWS);
  const part =
    shown.length < cycle.cameraFramesInCycle
      ? `, the first ${shown.length} of ${cycle.cameraFramesInCycle}`
      : '';
  return {
    caption: `Camera frames over one common cycle${part}`,
    columns: [
      'Camera frame',
      'Main film frame',
      'Its share of the light',
      'in the first row',
      'in the last row',
      'Kind',
    ],
    rows: shown.map((frame, index) => ({
      cells: [
        String(index + 1),
        String(frame.filmFrame + 1),
        percent(frame.pictureShare),
        percent(frame.firstRowShare),
        percent(frame.lastRowShare),
        kindOf(frame),
      ],
      level: frame.isWhole ? 'good' : 'care',
    })),
  };
}

/** The same camera frames to draw. */
export function purityPicture(cycle: PurityCycle): WholeFramesData {
  const frames = cycle.frames.slice(0, MOST_ROWS);
  const whole = frames.filter(({ isWhole }) => isWhole).length;
  return {
    name: 'whole-frames',
    alternative: `${frames.length} camera frames in a row; ${whole} of them hold light of one film frame only.`,
    cameraFrames: frames.map(({ filmFrame, pictureShare, otherFilmFrame }) => ({
      filmFrame: filmFrame + 1,
      purity: pictureShare,
      ...(otherFilmFrame === undefined ? {} : { otherFilmFrame: otherFilmFrame + 1 }),
    })),
  };
}
