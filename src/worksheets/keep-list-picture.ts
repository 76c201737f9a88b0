import { makeGateLight } from '../core/gate-light.ts';
import { isKept } from '../core/keep-list.ts';
import { cameraFramePurity, type CameraFramePurity } from '../core/purity.ts';
import { formatQuantity } from '../core/quantity/format.ts';
import { readoutOrWorst } from '../core/readout.ts';
import { makeEqualShutter } from '../core/shutter.ts';
import type { KeepEntries, KeepFindings } from './keep-list-findings.ts';
import type { WholeFramesData } from './picture-data.ts';
import type { ResultTable } from './types.ts';

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
  const readoutSeconds = readoutOrWorst(entries.readoutSeconds, cameraFps);
  const shutter = makeEqualShutter(entries.flashesPerFrame, entries.openPercent / 100);
  const light = makeGateLight(found.listFps, shutter);
  const middle = 0.5 / found.listFps - (exposureSeconds + readoutSeconds) / 2;
  const frames = Array.from({ length: SHOWN }, (_, index) => {
    const cameraFrame = found.firstKept + index;
    const start = middle + (cameraFrame - firstCameraFrame) / cameraFps;
    const purity = cameraFramePurity(light, start, exposureSeconds, readoutSeconds);
    const kept = found.rule !== undefined && isKept(found.rule, cameraFrame);
    return { cameraFrame, purity, kept };
  });
  const whole = frames.filter(({ purity }) => purity.isWhole).length;
  const filmFrame = (frame: number): string => String(Math.max(0, frame + 1));
  const kind = (purity: CameraFramePurity): string => {
    if (purity.isWhole) return 'whole';
    const { otherFilmFrame } = purity;
    return otherFilmFrame === undefined ? 'dark' : `blended with ${filmFrame(otherFilmFrame)}`;
  };
  return {
    table: {
      caption: `The first ${SHOWN} camera frames, if rate and start are exactly as typed`,
      columns: ['Camera frame', 'Main film frame', 'Its share of the light', 'Kind', 'Kept'],
      rows: frames.map(({ cameraFrame, purity, kept }) => ({
        cells: [
          String(cameraFrame),
          filmFrame(purity.filmFrame),
          formatQuantity(Math.floor(purity.pictureShare * 1000) / 10, 'percent', 4),
          kind(purity),
          kept ? 'kept' : '–',
        ],
        ...(kept ? { level: purity.isWhole ? ('good' as const) : ('care' as const) } : {}),
      })),
    },
    picture: {
      name: 'whole-frames',
      alternative: `${SHOWN} camera frames in a row from the first kept one; ${whole} of them hold light of one film frame only.`,
      cameraFrames: frames.map(({ purity }) => ({
        filmFrame: Math.max(0, purity.filmFrame + 1),
        purity: purity.pictureShare,
        ...(purity.otherFilmFrame === undefined
          ? {}
          : { otherFilmFrame: Math.max(0, purity.otherFilmFrame + 1) }),
      })),
    },
  };
}
