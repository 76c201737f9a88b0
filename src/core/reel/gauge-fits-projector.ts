import { frameStepMillimetres, GAUGES } from './gauges.ts';
import type { GaugeId } from './gauges/gauge.ts';

/** Whether a reel of one gauge may be threaded on a projector for another, and why. */
export interface GaugeFit {
  /** `good`: made for each other. `care`: runs with a condition. `stop`: never thread it. */
  readonly level: 'good' | 'care' | 'stop';
  /** Step of the projector's claw less the step of the film, mm for each frame. */
  readonly stepDifferenceMillimetres: number;
  /** One plain sentence for the sheet and the job sheet. */
  readonly sentence: string;
}

/** Widths closer than this lie in the same channel, mm. */
const SAME_WIDTH = 0.1;

const stop = (stepDifferenceMillimetres: number, sentence: string): GaugeFit => ({
  level: 'stop',
  stepDifferenceMillimetres,
  sentence,
});

/**
 * Whether a reel may go on a projector. Standard 8 and Super 8 are equally wide, so the wrong one
 * slips into the gate without resistance, and the claw then tears every picture.
 *
 * Model: film of the projector's own gauge fits. Film of the same width but another step meets the
 * claw beside its holes, and the miss grows by the difference of the steps with every frame. Film of
 * another width does not lie in the channel. 35 mm and Super 16 have no place on this bench: the
 * first may be nitrate, and gate and rollers of a 16 mm machine touch the picture of the second.
 *
 * @param reel       gauge of the reel
 * @param projector  gauge that the projector runs, or is set to
 * @returns level, difference of the frame steps in mm, and a sentence
 * @source smpte-149-2004, smpte-239-2004, asa-z22-5-1947, de-encyclopaedia-filmschritt
 */
export function gaugeFitsProjector(reel: GaugeId, projector: GaugeId): GaugeFit {
  const film = GAUGES[reel];
  const machine = GAUGES[projector];
  const step = frameStepMillimetres(reel, 'long');
  const clawStep = frameStepMillimetres(projector, 'long');
  const difference = clawStep - step;
  if (reel === '35mm') {
    return stop(difference, 'A 35 mm reel does not belong on this bench, and it may be nitrate.');
  }
  if (reel === 'super-16') {
    return stop(
      difference,
      projector === 'super-16' || projector === '16mm'
        ? 'A Super 16 reel does not belong on this bench: gate and rollers of a 16 mm machine touch its picture.'
        : `A Super 16 reel does not go on a ${machine.name} projector, and does not belong on this bench.`,
    );
  }
  if (reel === projector) {
    return {
      level: 'good',
      stepDifferenceMillimetres: 0,
      sentence:
        reel === '16mm'
          ? 'A 16 mm reel fits a 16 mm projector; with one row of holes the machine must have teeth and claw on that side only.'
          : `A ${film.name} reel fits a ${machine.name} projector.`,
    };
  }
  if (Math.abs(film.filmWidth.millimetres - machine.filmWidth.millimetres) > SAME_WIDTH) {
    return stop(
      difference,
      `A ${film.name} reel does not go on a ${machine.name} projector: the film is ${film.filmWidth.millimetres < machine.filmWidth.millimetres ? 'too narrow' : 'too wide'} for its gate.`,
    );
  }
  if (Math.abs(difference) > 1e-9) {
    return stop(
      difference,
      `Do not thread a ${film.name} reel on a ${machine.name} projector: the film is as wide, but the claw moves ${clawStep.toFixed(3)} mm where the film has ${step.toFixed(3)} mm from hole to hole. It misses by ${Math.abs(difference).toFixed(3)} mm more with each frame and tears the pictures.`,
    );
  }
  return {
    level: 'care',
    stepDifferenceMillimetres: 0,
    sentence: `A ${film.name} reel runs on a ${machine.name} projector, whose wider gate also shows the sound track or the holes.`,
  };
}
