import type { GateReading } from '../../core/gate/recording/gate-reading.ts';
import { roundToUncertainty } from '../../quantity/round-to-uncertainty.ts';
import { numberEntry } from '../../quantity/parse-number.ts';

/** A measured value as it goes into a field of the bench. */
export interface BenchText {
  readonly field: 'projector.filmFps' | 'camera.readoutSeconds';
  readonly name: string;
  readonly text: string;
}

/** What a reading has for the bench: nothing that it did not measure. */
export function benchTexts(reading: GateReading): readonly BenchText[] {
  const { filmRate, readoutSeconds, readoutErrorSeconds = 0 } = reading;
  return [
    ...(filmRate === undefined
      ? []
      : [
          {
            field: 'projector.filmFps' as const,
            name: 'film rate',
            text: `${numberEntry(Number(roundToUncertainty(filmRate.filmFps, filmRate.errorFps).toPrecision(8)))} frames/s`,
          },
        ]),
    ...(readoutSeconds === undefined
      ? []
      : [
          {
            field: 'camera.readoutSeconds' as const,
            name: 'readout time',
            text: `${numberEntry(Number(roundToUncertainty(readoutSeconds * 1000, Math.max(0.05, readoutErrorSeconds * 1000)).toPrecision(6)))} ms`,
          },
        ]),
  ];
}
