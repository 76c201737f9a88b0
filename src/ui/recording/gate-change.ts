import type { GateReading } from '../../core/gate/recording/gate-reading.ts';
import { CAUSE_WORDS, WHOLE_FILM_FRAME_WORDS } from '../../core/gate/recording/gate-words.ts';
import { formatExposure, formatQuantity } from '../../quantity/format.ts';
import { changeWords, rateWords } from '../../worksheets/gate/rate-words.ts';
import { adviceSentence } from '../../worksheets/gate/setting-advice-words.ts';
import type { ResultTable } from '../../worksheets/machine/types.ts';
import type { GateSettings } from './gate-settings.ts';

/** The causes, the largest first. */
export function causeTable({ causes }: GateReading): ResultTable {
  return {
    caption: 'Causes, each with the change of light that it makes by itself',
    columns: ['Cause', 'Alone', 'Share', 'What to do'],
    rows: causes.map(({ cause, ripplePercent, share }) => ({
      cells: [
        CAUSE_WORDS[cause].name,
        formatQuantity(ripplePercent, 'percent', 3),
        formatQuantity(share * 100, 'percent', 2),
        CAUSE_WORDS[cause].remedy,
      ],
    })),
  };
}

/** What to change in exposure and speed, and by how much; empty where neither has a part in it. */
export function changeSentences(
  { advice, filmRate, cameraFps, readoutSeconds }: GateReading,
  { bench }: GateSettings,
): readonly string[] {
  if (filmRate === undefined) return [];
  const { setting, exposureStops, matchingFilmFps, wholeFilmFrameSeconds } = advice;
  const { filmFps } = filmRate;
  const now = { filmFps, cameraFps, exposureSeconds: bench.exposureSeconds };
  const isReadoutMeasured = (readoutSeconds ?? bench.readoutSeconds) !== undefined;
  const order = setting === undefined ? '' : adviceSentence(setting, now, isReadoutMeasured).trim();
  const isChanged = exposureStops !== undefined && Math.abs(exposureStops) > 0.005;
  return [
    ...(order === '' ? [] : [order]),
    ...(isChanged
      ? [
          `That exposure time takes in ${formatQuantity(Math.abs(exposureStops), 'stop', 2)} ${exposureStops > 0 ? 'more' : 'less'} light; make up for it with the aperture, a filter or the sensitivity.`,
        ]
      : []),
    ...(matchingFilmFps === undefined
      ? []
      : [
          `For even light alone, leave the exposure time and bring the film rate to ${rateWords(matchingFilmFps)} frames/s (${changeWords(matchingFilmFps, filmFps)}).`,
        ]),
    ...(wholeFilmFrameSeconds === undefined
      ? []
      : [`${WHOLE_FILM_FRAME_WORDS} Here that is ${formatExposure(wholeFilmFrameSeconds)}.`]),
  ];
}
