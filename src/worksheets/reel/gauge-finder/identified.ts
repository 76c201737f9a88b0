import type { GaugeFit } from '../../../core/reel/gauge-fits-projector.ts';
import { identifyGauge, type Candidate } from '../../../core/reel/gauge-identification.ts';
import { projectorFit } from '../projector-gauge-input.ts';
import type { Values } from './inputs.ts';

/** Fields left empty and looks not taken are left out: they speak for and against nothing. */
function identify({
  perforationPosition,
  pitchLengthMillimetres,
  perforationHeightMillimetres,
  pictureWidthMillimetres,
  filmWidthMillimetres,
  pitchCount,
  readingErrorMillimetres,
}: Values): ReturnType<typeof identifyGauge> {
  return identifyGauge({
    filmWidthMillimetres,
    pitchCount,
    readingErrorMillimetres,
    ...(perforationPosition === 'unknown' ? {} : { perforationPosition }),
    ...(pitchLengthMillimetres === undefined ? {} : { pitchLengthMillimetres }),
    ...(perforationHeightMillimetres === undefined ? {} : { perforationHeightMillimetres }),
    ...(pictureWidthMillimetres === undefined ? {} : { pictureWidthMillimetres }),
  });
}

/** A gauge that the film may be, and what the projector says to it. */
export interface FittingGauge {
  readonly candidate: Candidate;
  /** Absent where the projector is not said, and for film that no projector is for. */
  readonly fit?: GaugeFit | undefined;
}

/** Every gauge, best first, and those that nothing speaks against. */
export function identifiedFilm(values: Values) {
  const { candidates, result } = identify(values);
  const fitting = candidates
    .filter(({ mismatches }) => mismatches.length === 0)
    .map((candidate): FittingGauge => {
      const { id } = candidate;
      return id === 'double-8-unslit'
        ? { candidate }
        : { candidate, fit: projectorFit(id, values.projectorGauge) };
    });
  const { pitchLengthMillimetres, pitchCount } = values;
  return {
    candidates,
    result,
    best: candidates[0],
    fitting,
    pitchMillimetres:
      pitchLengthMillimetres === undefined ? undefined : pitchLengthMillimetres / pitchCount,
  };
}

export type IdentifiedFilm = ReturnType<typeof identifiedFilm>;
