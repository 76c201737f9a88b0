import { matchingExposures } from './exposure.ts';
import { promisesWholeFrames, wholeFrameWindowSeconds } from './whole-frames.ts';

/** Projector and camera as far as the choice of an exposure time depends on them. */
export interface CureQuestion {
  readonly filmFps: number;
  readonly flashesPerFrame: number;
  readonly closedSeconds: number;
  readonly cameraFps: number;
  readonly exposureSeconds: number;
  readonly readoutSeconds: number;
}

/** The exposure time to set instead. */
export interface Cure {
  readonly exposureSeconds: number;
  /** Flashes in it. */
  readonly flashes: number;
  /** Whether every film frame is sure of a whole camera frame with it. */
  readonly promisesWholeFrames: boolean;
}

/**
 * The matching exposure time to set: of those that fit into a camera frame and keep whole frames sure
 * the one nearest to what is set now, so that the light changes least; where none keeps them sure, the
 * nearest of all.
 *
 * Model: nearest by the ratio of the two times, because light is judged in stops.
 *
 * @returns the cure; undefined when not even one flash fits into a camera frame
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source common practice, no source
 */
export function nearestCure(question: CureQuestion): Cure | undefined {
  const { filmFps, closedSeconds, cameraFps, readoutSeconds } = question;
  const cures = matchingExposures(filmFps, question.flashesPerFrame, cameraFps).map(
    (exposureSeconds, index): Cure => {
      const window = wholeFrameWindowSeconds(
        filmFps,
        closedSeconds,
        exposureSeconds,
        readoutSeconds,
      );
      return {
        exposureSeconds,
        flashes: index + 1,
        promisesWholeFrames: promisesWholeFrames(window, cameraFps),
      };
    },
  );
  const sure = cures.filter((cure) => cure.promisesWholeFrames);
  const distance = (cure: Cure): number =>
    Math.abs(Math.log(cure.exposureSeconds / question.exposureSeconds));
  const candidates = sure.length > 0 ? sure : cures;
  return candidates.reduce<Cure | undefined>(
    (best, cure) => (best === undefined || distance(cure) < distance(best) ? cure : best),
    undefined,
  );
}
