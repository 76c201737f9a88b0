// Sentences and answer lines of the flash match.
import { nearestMultiple } from '../../../core/gate/beat.ts';
import { shutterRipplePercent } from '../../../core/gate/complete-setting.ts';
import { fitsCameraFrame } from '../../../core/gate/exposure.ts';
import type { FrameRatio } from '../../../core/gate/frame-ratio.ts';
import { formatExposure, formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { speedToleranceRpm } from '../../../core/gate/speed-tolerance.ts';
import { smallestCameraFps } from '../../../core/gate/whole-frames.ts';
import { exposureAnswer, quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import { DARK_ROWS } from '../dark-rows-words.ts';
import type { Match, Settings, Tolerance } from './findings.ts';
import type { Answer, ResultTable } from '../../machine/types.ts';

const rateWords = (fps: number): string => `${formatNumber(fps, 4)} frames/s`;

function flickerWords({ ripple, pulse }: Match, limitPercent: number): string {
  const percent = formatQuantity(ripple.percent, 'percent', 3);
  if (ripple.percent < 0.005) return 'No flicker: every camera frame gets the same light';
  if (ripple.percent <= limitPercent) return `The ripple of ${percent} stays within your limit`;
  const stops =
    ripple.stops === undefined
      ? 'some exposures get no light at all'
      : formatQuantity(ripple.stops, 'stop', 3);
  return pulse === 0
    ? `The light is uneven by ${percent} (${stops}) and stands still only while both machines hold their rates exactly`
    : `The picture pulses by ${percent} (${stops}), ${formatNumber(Math.abs(pulse), 3)} times a second`;
}

/** The sentence of the verdict that says what the present settings do. */
export function stateSentence(found: Match, settings: Settings): string {
  const { cameraFps, rippleLimitPercent } = settings;
  const flicker = flickerWords(found, rippleLimitPercent);
  if (found.hasDarkRows) return `${flicker}; whole frames: ${DARK_ROWS}.`;
  if (found.areWholeFramesSure) {
    return found.ripple.percent <= rippleLimitPercent
      ? `${flicker}, and every film frame is sure of a whole camera frame.`
      : `${flicker}.`;
  }
  const join = found.ripple.percent <= rippleLimitPercent ? 'but' : 'and';
  return `${flicker}, ${join} ${rateWords(cameraFps)} cannot promise whole frames.`;
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
    drift === 0
      ? 'The bands stand still.'
      : `The bands move ${drift > 0 ? 'up' : 'down'} in a picture whose top row is read first; ${drift > 0 ? 'down' : 'up'} if the camera stands on its head or the file was flipped.`;
  return quantityAnswer(label, Math.abs(drift), 'pictureHeightsPerSecond', 3, {
    note: `${way}${ripple.percent === 0 ? ' At this exposure time they are invisible.' : ''}`,
  });
}

export function bandsAnswer({ bands }: Match, isReadoutMeasured: boolean): Answer {
  return quantityAnswer('Bands down the picture', bands, 'one', 3, {
    ...(isReadoutMeasured ? {} : { note: 'At most; as many if the readout fills a camera frame.' }),
  });
}

export function toleranceAnswer(tolerance: Tolerance | undefined, limit: number): Answer {
  const label = 'Speed may wander from the match by';
  if (tolerance === undefined) {
    return wordsAnswer(label, 'no match to hold', {
      note: 'No exposure of whole flashes fits into this camera frame and meets the limit.',
    });
  }
  const { exposureSeconds, filmFps, slowest, fastest } = tolerance;
  const limitWords = formatQuantity(limit, 'percent', 3);
  if (filmFps === undefined || slowest === undefined || fastest === undefined) {
    return wordsAnswer(label, 'any amount', {
      note: `Near this match the ripple never reaches ${limitWords}.`,
    });
  }
  const printed = quantityAnswer(label, filmFps, 'fps', 3);
  const range = `${formatNumber(slowest, 4)} to ${formatNumber(fastest, 4)} frames/s`;
  const rpm = formatQuantity(speedToleranceRpm(filmFps, 1), 'rpm', 3);
  return {
    ...printed,
    text: `±${printed.text}`,
    note: `From ${range} at ${formatExposure(exposureSeconds)} the ripple stays within ${limitWords}; ±${rpm} on a shaft that turns once for each film frame.`,
  };
}

/** One flash, whatever the camera: the exposure time that goes with the projector. */
export function matchAnswer({ flashRate, shutter }: Match, settings: Settings): Answer {
  const { filmFps, cameraFps } = settings;
  const label = 'Matching exposure time';
  const seconds = 1 / flashRate;
  if (!fitsCameraFrame(seconds, cameraFps)) {
    return exposureAnswer(label, seconds, {
      level: 'stop',
      note: `One flash. It does not fit into a camera frame at ${rateWords(cameraFps)}; it takes a camera rate of ${rateWords(flashRate)} or less.`,
    });
  }
  const ripple = shutterRipplePercent(shutter, filmFps, seconds);
  return exposureAnswer(label, seconds, {
    note:
      ripple < 0.005
        ? 'One flash; ripple 0 % while the speed holds.'
        : `One flash; these blades leave a ripple of ${formatQuantity(ripple, 'percent', 3)}.`,
  });
}

/** Matches of one flash and more, each with the camera rates between which it works as a whole. */
export function matchTable(found: Match, settings: Settings): ResultTable {
  const { filmFps, flashesPerFrame, readoutSeconds, rippleLimitPercent } = settings;
  const { shutter, flashRate, closed, longestDark } = found;
  const count = Math.min(4, Math.max(2, flashesPerFrame));
  return {
    caption: 'Exposures of whole flashes at this film rate, and the camera rates they ask for',
    columns: ['Flashes', 'Exposure time', 'Ripple', 'Whole frames from', 'Fits up to'],
    rows: Array.from({ length: count }, (_, index) => {
      const seconds = (index + 1) / flashRate;
      const ripple = shutterRipplePercent(shutter, filmFps, seconds);
      const least = smallestCameraFps(filmFps, closed, seconds, readoutSeconds, longestDark);
      const isPossible = least !== undefined && least * seconds <= 1 + 1e-9;
      const works = isPossible && ripple <= rippleLimitPercent;
      return {
        cells: [
          String(index + 1),
          formatExposure(seconds),
          formatQuantity(ripple, 'percent', 3),
          least === undefined ? 'no camera rate' : rateWords(least),
          rateWords(1 / seconds),
        ],
        level: works ? 'note' : 'stop',
      };
    }),
  };
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
            note: hasDarkRows
              ? 'The exposure fits into a dark gap of the shutter; lengthen it first.'
              : `This exposure time asks for the rate below.${ratioNote(ratio)}`,
          },
        ),
    smallestCameraFps:
      smallest === undefined
        ? wordsAnswer(rateLabel, 'none', { note: noRate })
        : quantityAnswer(rateLabel, smallest, 'fps', 4, {
            note: 'For this exposure time, and a projector and a camera that run free of each other.',
          }),
  };
}
