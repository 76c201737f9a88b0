import type Fraction from 'fraction.js';
import {
  respeedCommands,
  retempoCommands,
  type SoundCommands,
} from '../../../core/file/sound-commands.ts';
import {
  correctedSampleRateHz,
  lagPerMinuteSeconds,
  pitchSemitones,
  sampleRatePair,
  speedRatio,
} from '../../../core/file/sound-retiming.ts';
import type { RetimingEntries, RetimingRates } from './inputs.ts';

const semitonesOf = (ratio: Fraction): number => pitchSemitones(ratio.valueOf());

/** The corrections that are needed, in the order in which they are made. */
function correctionsOf(
  sampleRateHz: number,
  ratio: Fraction,
  tempo: Fraction | undefined,
): { readonly respeed?: SoundCommands; readonly retempo?: SoundCommands } {
  const isRight = ratio.equals(1);
  return {
    ...(!isRight && { respeed: respeedCommands(sampleRateHz, ratio) }),
    ...(tempo !== undefined && {
      retempo: retempoCommands(tempo, isRight ? 'taken' : 'corrected'),
    }),
  };
}

/** Speed change, pitch and lag of a recording, and the commands that correct it. */
export function findRetiming({ pitch, sampleRate }: RetimingEntries, rates: RetimingRates) {
  const { takenFps, nativeFps, shownFps } = rates;
  const keepsPitch = pitch === 'kept';
  const sampleRateHz = Number(sampleRate);
  const wantedFps = keepsPitch ? nativeFps : shownFps;
  const ratio = speedRatio(takenFps, wantedFps);
  // Where the pitch is kept, what the picture runs faster than it was shot is made up by the tempo.
  const tempo =
    keepsPitch && !shownFps.equals(nativeFps) ? speedRatio(nativeFps, shownFps) : undefined;
  return {
    rates,
    /** Film rate to which the speed of the recording is brought. */
    wantedFps,
    ratio,
    ratioSemitones: semitonesOf(ratio),
    isFitted: tempo !== undefined,
    takenSemitones: semitonesOf(takenFps.div(nativeFps)),
    shownSemitones: keepsPitch ? 0 : semitonesOf(shownFps.div(nativeFps)),
    correctedSampleRateHz: correctedSampleRateHz(sampleRateHz, ratio).valueOf(),
    isExact: sampleRatePair(sampleRateHz, ratio).isExact,
    /** Negative: the sound runs ahead. */
    lagPerMinuteSeconds: lagPerMinuteSeconds(shownFps.valueOf(), takenFps.valueOf()),
    ...correctionsOf(sampleRateHz, ratio, tempo),
  };
}

export type RetimingFindings = ReturnType<typeof findRetiming>;
