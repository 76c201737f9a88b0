import type { GateReading } from '../../core/gate/recording/gate-reading.ts';
import { CAUSE_WORDS, READING_WORDS } from '../../core/gate/recording/gate-words.ts';
import { formatNumber, formatQuantity } from '../../quantity/format.ts';
import { roundToUncertainty } from '../../quantity/round-to-uncertainty.ts';
import { rateWords } from '../../worksheets/gate/rate-words.ts';
import type { Answer, VerdictLevel } from '../../worksheets/machine/types.ts';
import type { GateSettings } from './gate-settings.ts';
import type { Verdict } from './recording-kind.ts';

/** A value with how far it may be off, both to the digits that mean something. */
export function withError(value: number, error: number, unit: 'fps' | 'ms'): string {
  const decimals = Math.max(0, -Math.floor(Math.log10(error / 2)));
  const shown = roundToUncertainty(value, error).toFixed(decimals);
  // The error is an end of a range: rounded up, it stays true.
  const around = roundToUncertainty(error, error, 'up').toFixed(decimals);
  return `${shown} ± ${around} ${unit === 'fps' ? 'frames/s' : 'ms'}`;
}

/** How strongly the light changes, with every cause. */
function largestPercent({ ripple, causes }: GateReading): number {
  return Math.max(ripple.percent, ...causes.map(({ ripplePercent }) => ripplePercent));
}

export function rippleLevel(reading: GateReading, { bench }: GateSettings): VerdictLevel {
  if (reading.isEven) return 'good';
  return largestPercent(reading) <= bench.rippleLimitPercent ? 'care' : 'stop';
}

function rippleText({ ripple }: GateReading): string {
  const stops = ripple.stops === undefined ? '' : ` (${formatQuantity(ripple.stops, 'stop', 2)})`;
  const atLeast = ripple.isAtLeast ? 'at least ' : '';
  return `${atLeast}${formatQuantity(ripple.percent, 'percent', 3)}${stops}`;
}

/** The answer in a sentence. */
export function gateVerdict(reading: GateReading, settings: GateSettings): Verdict {
  const level = rippleLevel(reading, settings);
  const film =
    reading.filmRate === undefined
      ? ''
      : ` The film runs at ${withError(reading.filmRate.filmFps, reading.filmRate.errorFps, 'fps')}.`;
  const quiet = formatQuantity(reading.quietPercent, 'percent', 2);
  if (reading.isEven) return { level, sentence: `No flicker above ±${quiet}.${film}` };
  const [main] = reading.causes;
  const cause = main === undefined ? '' : ` Main cause: ${CAUSE_WORDS[main.cause].name}.`;
  const isSlow = main?.cause === 'drift' || main?.cause === 'automatic-exposure';
  const change = isSlow
    ? `The light changes by ${formatQuantity(main.ripplePercent, 'percent', 3)}.`
    : `The light ripples by ${rippleText(reading)}.`;
  return { level, sentence: `${change}${cause}${film}` };
}

function beatText(beatHz: number, cameraFps: number): string {
  const size = formatQuantity(Math.abs(beatHz), 'Hz', 3);
  if (beatHz === 0) return size;
  const multiple = beatHz > 0 ? 'above' : 'below';
  return `${size}, the flash rate ${multiple} a multiple of ${rateWords(cameraFps)}`;
}

/** What was measured, line by line. */
export function gateAnswers(reading: GateReading, settings: GateSettings): readonly Answer[] {
  const { filmRate, flashRateHz, beatHz, readoutSeconds, readoutErrorSeconds } = reading;
  const { bandsDownPicture, bandDriftPerSecond, cameraFps, missingFrames } = reading;
  const drift = bandDriftPerSecond ?? 0;
  return [
    filmRate === undefined
      ? { label: 'Film rate', text: 'not told', note: READING_WORDS.noFilmRate }
      : {
          label: 'Film rate',
          text: withError(filmRate.filmFps, filmRate.errorFps, 'fps'),
          note: `Over one second, slowest ${formatNumber(filmRate.slowestFps, 5)}, fastest ${formatNumber(filmRate.fastestFps, 5)}. ${READING_WORDS.clock}`,
        },
    {
      label: 'Ripple',
      text: rippleText(reading),
      level: rippleLevel(reading, settings),
      note: reading.ripple.isAtLeast
        ? `${READING_WORDS.atLeast} ${READING_WORDS.toneCurve}`
        : READING_WORDS.toneCurve,
    },
    {
      label: 'Smallest flicker that would have been found',
      text: `±${formatQuantity(reading.quietPercent, 'percent', 2)}`,
    },
    ...(flashRateHz === undefined
      ? []
      : [{ label: 'Flash rate', text: formatQuantity(flashRateHz, 'Hz', 4) }]),
    ...(beatHz === undefined ? [] : [{ label: 'Beat', text: beatText(beatHz, cameraFps) }]),
    ...(readoutSeconds === undefined
      ? [{ label: 'Readout time', text: 'not told', note: READOUT_NOT_TOLD }]
      : [
          {
            label: 'Readout time',
            text: withError(
              readoutSeconds * 1000,
              Math.max(0.05, (readoutErrorSeconds ?? 0) * 1000),
              'ms',
            ),
          },
        ]),
    ...(bandsDownPicture === undefined || bandDriftPerSecond === undefined
      ? []
      : [
          {
            label: 'Bands down the picture',
            text: formatNumber(bandsDownPicture, 3),
            note:
              drift === 0
                ? READING_WORDS.standing
                : `They ${drift > 0 ? 'climb' : 'sink'} by ${formatNumber(Math.abs(drift), 3)} picture heights a second.`,
          },
        ]),
    {
      label: 'Camera rate',
      text: `${rateWords(Number(cameraFps.toPrecision(6)))} frames/s`,
      ...(missingFrames === 0
        ? {}
        : {
            level: 'care' as const,
            note: `The camera left out ${missingFrames} ${missingFrames === 1 ? 'frame' : 'frames'}.`,
          }),
    },
  ];
}

const READOUT_NOT_TOLD =
  'The light does not tell it. It does when the ripple is strong: record with a short exposure.';
