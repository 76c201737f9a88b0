// Sentences and answer lines of the flash match.
import { nearestMultiple } from '../core/beat.ts';
import { matchingExposures } from '../core/exposure.ts';
import type { FrameRatio } from '../core/frame-ratio.ts';
import { formatExposure, formatNumber, formatQuantity } from '../core/quantity/format.ts';
import { speedToleranceRpm } from '../core/speed-tolerance.ts';
import { DARK_ROWS } from './dark-rows-words.ts';
import { exposureAnswer, quantityAnswer, wordsAnswer } from './answers.ts';
import type { Match, Settings } from './flash-match-findings.ts';
import type { Answer } from './types.ts';

const rateWords = (fps: number): string => `${formatNumber(fps, 4)} frames/s`;

function cureWords({ cure }: Match): string {
  return cure === undefined
    ? 'no exposure time that fits into a camera frame cures it'
    : `${formatExposure(cure.exposureSeconds)} cures it`;
}

export function flickerWords(found: Match, limitPercent: number): string {
  const { ripple, beat } = found;
  const percent = formatQuantity(ripple.percent, 'percent', 3);
  if (ripple.percent < 0.005) return 'No flicker: every camera frame gets the same light';
  if (ripple.percent <= limitPercent) return `The ripple of ${percent} stays within your limit`;
  const stops =
    ripple.stops === undefined
      ? 'some exposures get no light at all'
      : formatQuantity(ripple.stops, 'stop', 3);
  return beat === 0
    ? `The light is uneven by ${percent} (${stops}) and stands still only while both machines hold their rates exactly; ${cureWords(found)}`
    : `The picture pulses by ${percent} (${stops}), ${formatNumber(Math.abs(beat), 3)} times a second; ${cureWords(found)}`;
}

/** The second half of the verdict, joined to the words about flicker. */
export function wholeFrameWords(found: Match, cameraFps: number, isFlickerFree: boolean): string {
  if (found.hasDarkRows) return `; whole frames: ${DARK_ROWS}.`;
  if (found.areWholeFramesSure) return ', and every film frame is sure of a whole camera frame.';
  const better = found.betterRate;
  const remedy =
    better === undefined
      ? 'with this exposure and readout time no usual rate can'
      : `${formatNumber(better.valueOf(), 4)} can`;
  return `, ${isFlickerFree ? 'but' : 'and'} ${rateWords(cameraFps)} cannot promise whole frames; ${remedy}.`;
}

export function beatNote(beat: number, flashRate: number, cameraFps: number): string {
  const multiple = nearestMultiple(flashRate, cameraFps);
  if (beat === 0) return `Standing: the flash rate is exactly ${multiple} × the camera rate.`;
  const side = beat > 0 ? 'above' : 'below';
  return `The flash rate lies ${side} ${multiple} × ${formatNumber(cameraFps, 4)}; speeding the projector up makes the beat ${beat > 0 ? 'faster' : 'slower'}.`;
}

export function driftAnswer({ drift, bands, ripple }: Match): Answer {
  const label = 'Drift of the bands';
  if (drift === undefined) {
    return wordsAnswer(label, 'no bands', {
      note: 'A global shutter changes the whole picture at once.',
    });
  }
  if (bands < 1e-6) return wordsAnswer(label, 'no bands', { note: 'The readout is too short.' });
  const way =
    drift === 0 ? 'The bands stand still.' : `The bands move ${drift > 0 ? 'up' : 'down'}`;
  const seen = drift === 0 ? '' : ' in a picture whose top row is read first.';
  return quantityAnswer(label, Math.abs(drift), 'pictureHeightsPerSecond', 3, {
    note: `${way}${seen}${ripple.percent === 0 ? ' At this exposure time they are invisible.' : ''}`,
  });
}

export function toleranceAnswer({ tolerance, speedRange, cure }: Match, limit: number): Answer {
  const label = 'Speed may wander from the match by';
  const limitWords = formatQuantity(limit, 'percent', 3);
  if (tolerance === undefined || speedRange === undefined) {
    return wordsAnswer(label, 'any amount', {
      note: `Near this match the ripple never reaches ${limitWords}.`,
    });
  }
  const printed = quantityAnswer(label, tolerance, 'fps', 3);
  const range = `${formatNumber(speedRange.slowest, 4)} to ${formatNumber(speedRange.fastest, 4)} frames/s`;
  const rpm = formatQuantity(speedToleranceRpm(tolerance, 1), 'rpm', 3);
  const matched = cure === undefined ? '' : ` at ${formatExposure(cure.exposureSeconds)}`;
  return {
    ...printed,
    text: `±${printed.text}`,
    note: `From ${range}${matched} the ripple stays within ${limitWords}; ±${rpm} on a shaft that turns once for each film frame.`,
  };
}

export function matchAnswer({ cure }: Match, settings: Settings): Answer {
  const { filmFps, flashesPerFrame, cameraFps, rippleLimitPercent } = settings;
  const label = 'Matching exposure time';
  if (cure === undefined) {
    return wordsAnswer(label, 'none fits', {
      level: 'stop',
      note: `One flash lasts ${formatExposure(1 / (filmFps * flashesPerFrame))}, longer than a camera frame at ${rateWords(cameraFps)}. Lower the camera rate.`,
    });
  }
  const all = matchingExposures(filmFps, flashesPerFrame, cameraFps);
  const others = all.filter((seconds) => seconds !== cure.exposureSeconds).slice(0, 4);
  const list = others.map((seconds) => formatExposure(seconds)).join(', ');
  const also =
    others.length === 0 ? 'The only one that fits into the camera frame.' : `Also ${list}.`;
  const count = cure.flashes === 1 ? 'One flash' : `${cure.flashes} flashes`;
  return exposureAnswer(label, cure.exposureSeconds, {
    note: `${count}; ripple 0 %, and below ${formatQuantity(rippleLimitPercent, 'percent', 3)} while the speed holds. ${also}`,
  });
}

function betterRateNote({ hasDarkRows, betterRate }: Match): string {
  if (hasDarkRows) return 'The exposure fits into a dark gap of the shutter; lengthen it first.';
  return betterRate === undefined
    ? 'No usual camera rate promises them with this exposure and readout time.'
    : `The smallest usual rate that does: ${rateWords(betterRate.valueOf())}.`;
}

/** Words for a ratio so simple that two machines on the mains may hold it for a while. */
function ratioNote({ filmFrames, cameraFrames }: FrameRatio): string {
  return filmFrames <= 4n && cameraFrames <= 8n
    ? ` At an exact ratio of ${filmFrames} : ${cameraFrames} the phase decides instead; see the whole frames.`
    : '';
}

export function wholeFrameAnswers(
  found: Match,
  cameraFps: number,
  ratio: FrameRatio,
): Record<string, Answer> {
  const { smallest, hasDarkRows, areWholeFramesSure } = found;
  const rateLabel = 'Smallest sure camera rate';
  const noRate = hasDarkRows
    ? 'At this exposure time some rows can stay dark at any rate.'
    : 'Exposure and readout together outlast a film frame and the dark after it.';
  return {
    wholeFrames: areWholeFramesSure
      ? wordsAnswer('Whole frames', 'sure for every film frame', {
          level: 'good',
          note: 'Some camera frames may still blend two film frames; leave those out.',
        })
      : wordsAnswer(
          'Whole frames',
          hasDarkRows ? DARK_ROWS : `not sure at ${rateWords(cameraFps)}`,
          {
            level: 'care',
            note: `${betterRateNote(found)}${hasDarkRows ? '' : ratioNote(ratio)}`,
          },
        ),
    smallestCameraFps:
      smallest === undefined
        ? wordsAnswer(rateLabel, 'none', { note: noRate })
        : quantityAnswer(rateLabel, smallest, 'fps', 4, {
            note: 'For a projector and a camera that run free of each other.',
          }),
  };
}
