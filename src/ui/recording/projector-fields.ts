// Fields that both readings of a recording ask for. They open with the bench; the numbers of the book are
// those of the demo recordings.
import {
  edgeWipeDegreesInput,
  exposureSecondsInput,
  filmFpsInput,
  flashesPerFrameInput,
  openPercentInput,
  pulldownBladeDegreesInput,
  readoutSecondsInput,
} from '../../worksheets/gate/gate-inputs.ts';
import type { InputSpecs } from '../../worksheets/machine/types.ts';

// The camera rate is read from the file, so no angle of a shutter is turned into a time here.
const { kind, label, unit, minimum, maximum, bench, default: usual } = exposureSecondsInput;

export const projectorFields = {
  flashesPerFrame: flashesPerFrameInput,
  openPercent: openPercentInput,
  exposureSeconds: {
    ...{ kind, label, unit, minimum, maximum, bench },
    default: usual,
    accepted: '1/50 or 20 ms',
    help: 'The time that this recording was made with.',
  },
} as const satisfies InputSpecs;

export const rarerProjectorFields = {
  pulldownBladeDegrees: pulldownBladeDegreesInput,
  edgeWipeDegrees: edgeWipeDegreesInput,
} as const satisfies InputSpecs;

export { filmFpsInput, readoutSecondsInput };
