import type { PurityCycle } from '../../../core/gate/purity.ts';
import { drawnCameraFrame, kindWords, shareWords } from '../../gate/camera-frame-kinds.ts';
import type { WholeFramesData } from '../../machine/picture-data.ts';
import type { ResultTable } from '../../machine/types.ts';

/** Rows of the table at most; the cycle repeats, and a longer list is not read. */
const MOST_ROWS = 60;

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
        shareWords(frame.pictureShare),
        shareWords(frame.firstRowShare),
        shareWords(frame.lastRowShare),
        kindWords(frame),
      ],
      level: frame.kind === 'whole' ? 'good' : 'care',
    })),
  };
}

/** The same camera frames to draw. */
export function purityPicture(cycle: PurityCycle): WholeFramesData {
  const frames = cycle.frames.slice(0, MOST_ROWS);
  const whole = frames.filter(({ kind }) => kind === 'whole').length;
  return {
    name: 'whole-frames',
    alternative: `${frames.length} camera frames in a row; ${whole} of them hold light of one film frame in every row.`,
    cameraFrames: frames.map(drawnCameraFrame),
  };
}
