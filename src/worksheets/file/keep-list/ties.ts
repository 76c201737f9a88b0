import { OutOfRangeError, requireInterval } from '../../../quantity/errors.ts';
import type { KeepTie } from '../../../core/file/keep-ties.ts';
import type { KeepEntries } from './inputs.ts';

const SLOWEST_FILM_FPS = 1;
const FASTEST_FILM_FPS = 120;

function requireRate(key: string, from: KeepTie, to: KeepTie, cameraFps: number): void {
  // Ends that mean an impossible film rate are a slip of the count, to be told at their field.
  const steps = to.filmFrame - from.filmFrame;
  if (steps <= 0) return;
  requireInterval(key, to.cameraFrame, {
    minimum: Math.ceil(from.cameraFrame + (steps * cameraFps) / FASTEST_FILM_FPS),
    maximum: Math.floor(from.cameraFrame + (steps * cameraFps) / SLOWEST_FILM_FPS),
  });
}

/**
 * All ties in order: the first film frame, those in between, and the last if it is known.
 *
 * @throws {OutOfRangeError} naming the field, for ties that cannot be
 */
export function tiesOf(entries: KeepEntries): readonly KeepTie[] {
  const { filmFrames, firstCameraFrame, lastCameraFrame, tieFilmFrames, tieCameraFrames } = entries;
  if (tieFilmFrames.length !== tieCameraFrames.length) {
    throw new OutOfRangeError(
      'tieCameraFrames',
      `${tieCameraFrames.length} camera frames`,
      `as many camera frames as film frames in between, here ${tieFilmFrames.length}`,
    );
  }
  const ties: KeepTie[] = [{ filmFrame: 0, cameraFrame: firstCameraFrame }];
  for (const [index, number] of tieFilmFrames.entries()) {
    const before = ties.at(-1) ?? { filmFrame: 0, cameraFrame: 0 };
    requireInterval('tieFilmFrames', number, {
      minimum: before.filmFrame + 2,
      maximum: lastCameraFrame === undefined ? filmFrames : filmFrames - 1,
      whole: true,
    });
    const tie = { filmFrame: number - 1, cameraFrame: tieCameraFrames[index] ?? 0 };
    requireRate('tieCameraFrames', before, tie, entries.cameraFps);
    ties.push(tie);
  }
  if (lastCameraFrame !== undefined && filmFrames > 1) {
    const last = { filmFrame: filmFrames - 1, cameraFrame: lastCameraFrame };
    requireRate('lastCameraFrame', ties.at(-1) ?? last, last, entries.cameraFps);
    ties.push(last);
  }
  return ties;
}
