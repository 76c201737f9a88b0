// What one camera frame holds, in the words and the picture that sheets share.
import type { CameraFramePurity } from '../../core/gate/purity.ts';
import { formatQuantity } from '../../quantity/format.ts';
import type { WholeFramesData } from '../machine/picture-data.ts';

/** Number of a film frame as a reader counts it, from 1. */
export const filmFrameNumber = (filmFrame: number): number => Math.max(0, filmFrame + 1);

/** Share of the light, rounded down so that nothing blended reads 100 %; dark where there is none. */
export function shareWords(share: number | undefined): string {
  return share === undefined ? 'dark' : formatQuantity(Math.floor(share * 1000) / 10, 'percent', 4);
}

/** `whole`, `blended with 7`, `dark rows` or `dark`. */
export function kindWords({ kind, otherFilmFrame, darkRowsShare }: CameraFramePurity): string {
  if (kind === 'whole') return 'whole';
  if (otherFilmFrame !== undefined) return `blended with ${filmFrameNumber(otherFilmFrame)}`;
  return darkRowsShare >= 1 ? 'dark' : 'dark rows';
}

/** The camera frame to draw. */
export function drawnCameraFrame(
  frame: CameraFramePurity,
): WholeFramesData['cameraFrames'][number] {
  const { kind, filmFrame, otherFilmFrame, pictureShare, darkRowsShare } = frame;
  return {
    filmFrame: filmFrameNumber(filmFrame),
    purity: pictureShare ?? 0,
    // A single dark row is drawn too, however narrow.
    ...(kind === 'dark-rows' || darkRowsShare > 0
      ? { darkRows: Math.max(0.01, darkRowsShare) }
      : {}),
    ...(otherFilmFrame === undefined ? {} : { otherFilmFrame: filmFrameNumber(otherFilmFrame) }),
  };
}
