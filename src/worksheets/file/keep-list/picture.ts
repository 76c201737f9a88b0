import { makeGateLight } from '../../../core/gate/gate-light.ts';
import { isSureFilmFrame } from '../../../core/file/keep-drift.ts';
import { cameraFrameInReel } from '../../../core/file/keep-ties.ts';
import { cameraFramePurity } from '../../../core/gate/purity.ts';
import {
  drawnCameraFrame,
  filmFrameNumber,
  kindWords,
  shareWords,
} from '../../gate/camera-frame-kinds.ts';
import type { KeepEntries, KeepFindings } from './findings.ts';
import type { WholeFramesData } from '../../machine/picture-data.ts';
import { shutterOf } from '../../gate/shutter-inputs.ts';
import type { ResultTable } from '../../machine/types.ts';

/** Camera frames listed and drawn, from the first kept one on. */
const SHOWN = 18;

/** The first camera frames as they are when film rate and start are exactly as typed. */
export interface StartOfList {
  readonly table: ResultTable;
  readonly picture: WholeFramesData;
}

/** What the first camera frames of a keep list hold, and which of them are kept. */
export function startOfList(entries: KeepEntries, found: KeepFindings): StartOfList {
  const { exposureSeconds, cameraFps, firstCameraFrame } = entries;
  const { reel, trust } = found;
  const { readoutSeconds } = found.bench;
  const light = makeGateLight(found.listFps, shutterOf(entries));
  const middle = 0.5 / found.listFps - (exposureSeconds + readoutSeconds) / 2;
  const kept = new Map<number, number>();
  for (let filmFrame = 0; filmFrame < Math.min(SHOWN, reel.filmFrames); filmFrame += 1) {
    kept.set(cameraFrameInReel(reel, filmFrame), filmFrame);
  }
  const frames = Array.from({ length: SHOWN }, (_, index) => {
    const cameraFrame = found.firstKept + index;
    const start = middle + (cameraFrame - firstCameraFrame) / cameraFps;
    const purity = cameraFramePurity(light, start, exposureSeconds, readoutSeconds);
    const filmFrame = kept.get(cameraFrame);
    const isSure = filmFrame !== undefined && isSureFilmFrame(trust, filmFrame);
    return { cameraFrame, purity, filmFrame, isSure };
  });
  const whole = frames.filter(({ purity }) => purity.kind === 'whole').length;
  return {
    table: {
      caption: `The first ${SHOWN} camera frames, if rate and start are exactly as typed`,
      columns: ['Camera frame', 'Main film frame', 'Its share of the light', 'Kind', 'Kept'],
      rows: frames.map(({ cameraFrame, purity, filmFrame, isSure }) => ({
        cells: [
          String(cameraFrame),
          String(filmFrameNumber(purity.filmFrame)),
          shareWords(purity.pictureShare),
          kindWords(purity),
          filmFrame === undefined ? '–' : isSure ? 'sure' : 'unsure',
        ],
        ...(filmFrame === undefined
          ? {}
          : { level: isSure ? ('good' as const) : ('care' as const) }),
      })),
    },
    picture: {
      name: 'whole-frames',
      alternative: `${SHOWN} camera frames in a row from the first kept one; ${whole} of them hold light of one film frame in every row.`,
      cameraFrames: frames.map(({ purity }) => drawnCameraFrame(purity)),
    },
  };
}
