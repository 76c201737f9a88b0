// Inputs of the flash match.
import type { ExactOf, InputSpecs, ValuesOf } from '../../machine/types.ts';
import {
  cameraFpsInput,
  edgeWipeDegreesInput,
  exposureSecondsInput,
  filmFpsInput,
  flashesPerFrameInput,
  openPercentInput,
  pulldownBladeDegreesInput,
  readoutSecondsInput,
  rippleLimitPercentInput,
} from '../gate-inputs.ts';

export const inputs = {
  filmFps: filmFpsInput,
  flashesPerFrame: flashesPerFrameInput,
  openPercent: openPercentInput,
  cameraFps: cameraFpsInput,
  exposureSeconds: exposureSecondsInput,
  readoutSeconds: readoutSecondsInput,
  rippleLimitPercent: rippleLimitPercentInput,
  pulldownBladeDegrees: pulldownBladeDegreesInput,
  edgeWipeDegrees: edgeWipeDegreesInput,
} as const satisfies InputSpecs;

export type Settings = ValuesOf<typeof inputs>;

/** The exact rates behind the settings. */
export type ExactSettings = ExactOf<typeof inputs>;
