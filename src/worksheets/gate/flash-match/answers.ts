// Sentences and answer lines of the flash match.
import { speedToleranceRpm } from '../../../core/gate/speed-tolerance.ts';
import { formatExposure, formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { exposure, quantity, words } from '../../machine/answers.ts';
import type { AnswerBody } from '../../machine/define-worksheet.ts';
import type { ResultTable } from '../../machine/types.ts';
import { DARK_ROWS } from '../dark-rows-words.ts';
import type { Match } from './findings.ts';

const rateWords = (fps: number): string => `${formatNumber(fps, 4)} frames/s`;

function flickerWords({ ripple, isEven, pulse }: Match): string {
  const percent = formatQuantity(ripple.percent, 'percent', 3);
  if (ripple.percent < 0.005) return 'No flicker: every camera frame gets the same light';
  if (isEven) return `The ripple of ${percent} stays within your limit`;
  const stops =
    ripple.stops === undefined
      ? 'some exposures get no light at all'
      : formatQuantity(ripple.stops, 'stop', 3);
  return pulse === 0
    ? `The light is uneven by ${percent} (${stops}) and stands still only while both machines hold their rates exactly`
    : `The picture pulses by ${percent} (${stops}), ${formatNumber(Math.abs(pulse), 3)} times a second`;
}

/** The sentence of the verdict that says what the present settings do. */
export function stateSentence(found: Match, cameraFps: number): string {
  const { isEven } = found;
  const flicker = flickerWords(found);
  if (found.hasDarkRows) return `${flicker}; ${DARK_ROWS} of whole frames.`;
  if (found.areWholeFramesSure) {
    return isEven
      ? `${flicker}, and every film frame is sure of a whole camera frame.`
      : `${flicker}.`;
  }
  return `${flicker}, ${isEven ? 'but' : 'and'} ${rateWords(cameraFps)} cannot promise whole frames.`;
}

export function beatAnswer({ beat, multiple }: Match, cameraFps: number): AnswerBody {
  const [side, way] = beat > 0 ? ['above', 'faster'] : ['below', 'slower'];
  return quantity(Math.abs(beat), 'Hz', 3, {
    note:
      beat === 0
        ? `Standing: the flash rate is exactly ${multiple} × the camera rate.`
        : `The flash rate lies ${side} ${multiple} × ${formatNumber(cameraFps, 4)}; speeding the projector up makes the beat ${way}.`,
  });
}

export function driftAnswer({ drift, bands, ripple }: Match): AnswerBody {
  if (drift === undefined) {
    return words('no bands', { note: 'A global shutter changes the whole picture at once.' });
  }
  if (bands < 1e-6) return words('no bands', { note: 'The readout is too short.' });
  const [way, opposite] = drift > 0 ? ['up', 'down'] : ['down', 'up'];
  const motion =
    drift === 0
      ? 'The bands stand still.'
      : `The bands move ${way} in a picture whose top row is read first; ${opposite} if the camera stands on its head or the file was flipped.`;
  return quantity(Math.abs(drift), 'pictureHeightsPerSecond', 3, {
    note: `${motion}${ripple.percent === 0 ? ' At this exposure time they are invisible.' : ''}`,
  });
}

export function toleranceAnswer({ tolerance }: Match, limit: number): AnswerBody {
  if (tolerance === undefined) {
    return words('no match to hold', {
      note: 'No exposure of whole flashes fits into this camera frame and meets the limit.',
    });
  }
  const { exposureSeconds, range } = tolerance;
  const limitWords = formatQuantity(limit, 'percent', 3);
  if (range === undefined) {
    return words('any amount', {
      note: `Near this match the ripple never reaches ${limitWords}.`,
    });
  }
  const { eitherWay, slowest, fastest } = range;
  const printed = quantity(eitherWay, 'fps');
  const rpm = formatQuantity(speedToleranceRpm(eitherWay, 1), 'rpm', 3);
  return {
    ...printed,
    text: `±${printed.text}`,
    note: `From ${formatNumber(slowest, 4)} to ${rateWords(fastest)} at ${formatExposure(exposureSeconds)} the ripple stays within ${limitWords}; ±${rpm} on a shaft that turns once for each film frame.`,
  };
}

/** One flash, whatever the camera: the exposure time that goes with the projector. */
export function matchAnswer({ flashRate, oneFlash }: Match, cameraFps: number): AnswerBody {
  const { seconds, ripplePercent, doesFit } = oneFlash;
  if (!doesFit) {
    return exposure(seconds, {
      level: 'stop',
      note: `One flash. It does not fit into a camera frame at ${rateWords(cameraFps)}; it takes a camera rate of ${rateWords(flashRate)} or less.`,
    });
  }
  return exposure(seconds, {
    note:
      ripplePercent < 0.005
        ? 'One flash; ripple 0 % while the speed holds.'
        : `One flash; these blades leave a ripple of ${formatQuantity(ripplePercent, 'percent', 3)}.`,
  });
}

/** Matches of one flash and more, each with the camera rates between which it works as a whole. */
export function matchTable({ matches }: Match): ResultTable {
  return {
    caption: 'Exposures of whole flashes at this film rate, and the camera rates they ask for',
    columns: ['Flashes', 'Exposure time', 'Ripple', 'Whole frames from', 'Fits up to'],
    rows: matches.map(({ count, seconds, ripplePercent, leastCameraFps, works }) => ({
      cells: [
        String(count),
        formatExposure(seconds),
        formatQuantity(ripplePercent, 'percent', 3),
        leastCameraFps === undefined ? 'no camera rate' : rateWords(leastCameraFps),
        rateWords(1 / seconds),
      ],
      level: works ? 'note' : 'stop',
    })),
  };
}

/** Words for a ratio so simple that two machines on the mains may hold it for a while. */
function ratioNote({ filmFrames, cameraFrames }: Match['frameRatio']): string {
  return filmFrames <= 4n && cameraFrames <= 8n
    ? ` At an exact ratio of ${filmFrames} : ${cameraFrames} the phase decides instead; see Whole frames.`
    : '';
}

export function wholeFramesAnswer(found: Match, cameraFps: number): AnswerBody {
  if (found.areWholeFramesSure) {
    return words('sure for every film frame', {
      level: 'good',
      note: 'Some camera frames may still blend two film frames; leave those out.',
    });
  }
  return found.hasDarkRows
    ? words(DARK_ROWS, {
        level: 'care',
        note: 'The exposure fits into a dark gap of the shutter; lengthen it first.',
      })
    : words(`not sure at ${rateWords(cameraFps)}`, {
        level: 'care',
        note: `This exposure time asks for the rate below.${ratioNote(found.frameRatio)}`,
      });
}

export function smallestRateAnswer({ smallest, hasDarkRows }: Match): AnswerBody {
  if (smallest !== undefined) {
    return quantity(smallest, 'fps', 4, {
      note: 'For this exposure time, and a projector and a camera that run free of each other.',
    });
  }
  return words('none', {
    note: hasDarkRows
      ? 'At this exposure time some rows can stay dark at any rate.'
      : 'Exposure and readout together outlast a film frame and the dark after it.',
  });
}
