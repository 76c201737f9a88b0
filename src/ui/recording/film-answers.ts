import type { UntoldStretch } from '../../core/file/film-track.ts';
import { UNTOLD_WORDS } from '../../core/file/recording-words.ts';
import { formatDuration, formatNumber, formatQuantity } from '../../quantity/format.ts';
import { rateWords } from '../../worksheets/gate/rate-words.ts';
import type { Answer, ResultTable } from '../../worksheets/machine/types.ts';
import type { FilmReading } from './film-found.ts';
import type { FilmSettings } from './film-settings.ts';
import type { Verdict } from './recording-kind.ts';
import { withError } from './with-error.ts';

const counted = (count: number, one: string, many: string): string =>
  `${count === 1 ? '1' : formatNumber(count, 12)} ${count === 1 ? one : many}`;
const filmFrames = (count: number): string => counted(count, 'film frame', 'film frames');

/** Stretches inside the film whose count is not sure. */
const openStretches = ({ list }: FilmReading): readonly UntoldStretch[] =>
  list.stretches.filter(({ place, isCountSure }) => place === 'between' && !isCountSure);

/** A per cent that is never rounded up to all. */
function sharePercent(part: number, all: number): string {
  if (part === all) return '100 %';
  return `${(Math.floor((part / all) * 1000) / 10).toFixed(1)} %`;
}

/** The answer in a sentence. */
export function filmVerdict(reading: FilmReading): Verdict {
  const { frames, wholeShare, lostFilmFrames } = reading.list;
  const whole = Math.round(wholeShare * frames.length);
  const open = openStretches(reading).length;
  const all = whole === frames.length ? 'all of them whole' : `${filmFrames(whole)} whole`;
  const lost =
    lostFilmFrames.length === 0
      ? ''
      : ` For ${filmFrames(lostFilmFrames.length)} the camera has no frame.`;
  const untold =
    open === 0
      ? ''
      : ` In ${counted(open, 'stretch', 'stretches')} the pictures do not tell the count: tie by hand what follows.`;
  const stands = frames.filter(({ isSamePicture }) => isSamePicture).length;
  const same =
    stands === 0 ? '' : ` At ${filmFrames(stands)} the film may have stood or slipped: look.`;
  return {
    level:
      open + lostFilmFrames.length > 0
        ? 'stop'
        : whole < frames.length || stands > 0
          ? 'care'
          : 'good',
    sentence: `${filmFrames(frames.length)}, each with its camera frame, ${all}.${lost}${untold}${same}`,
  };
}

/** Stands that are listed by their times; the table marks the film frames of all. */
const MOST_STANDS = 8;

/** Where the film stood, or how long a stand would have been told. */
function standAnswer({ list, firstSeconds }: FilmReading): Answer {
  const { stands, shortestStandSeconds: shortest } = list;
  const label = 'Film that stands';
  if (shortest === undefined) {
    return {
      label,
      text: 'not told',
      note: 'With this exposure, or with hardly more camera frames than film frames, running film can look as if it stood. Play the kept frames and look.',
    };
  }
  const least = formatQuantity(shortest, 's', 2);
  if (stands.length === 0) {
    return { label, text: `none of ${least} or longer`, note: 'A shorter one may go unseen.' };
  }
  const time = (seconds: number): string => formatNumber(Math.max(0, seconds - firstSeconds), 4);
  const places = stands
    .slice(0, MOST_STANDS)
    .map(({ fromSeconds, toSeconds }) => `${time(fromSeconds)} to ${time(toSeconds)} s`);
  const more = stands.length - places.length;
  return {
    label,
    level: 'care',
    text: `${places.join(', ')}${more > 0 ? `, and ${more} more` : ''}`,
    note: `Nothing changes there, not even the grain. Look at the pictures. If the film stood, inspect that place for torn perforations or a lost loop before it runs again. A stand shorter than ${least} may go unseen.`,
  };
}

/** What was measured, line by line. */
export function filmAnswers(reading: FilmReading, settings: FilmSettings): readonly Answer[] {
  const { list, cameraFps, cameraFrames, missingFrames, filmFps } = reading;
  const { frames } = list;
  const first = frames[0];
  const last = frames.at(-1);
  const span = (last?.seconds ?? 0) - (first?.seconds ?? 0);
  const of = (status: (typeof frames)[number]['status']): number =>
    frames.filter((frame) => frame.status === status).length;
  const [unsure, blended, bridged] = [of('unsure'), of('blended'), of('bridged')];
  const whole = of('whole');
  const seconds = frames.length / settings.nativeFps.valueOf();
  return [
    {
      label: 'Film rate, mean',
      // A tenth of a film frame at both ends is the most that a told position may be off.
      text: span > 0 ? withError(filmFps, 0.2 / span, 'fps') : formatQuantity(filmFps, 'fps', 4),
    },
    {
      label: 'Film frames',
      text: formatNumber(frames.length, 12),
      note: `Numbered from 0, the first of the recording. At the native rate they last ${formatDuration(seconds)}.`,
    },
    {
      label: 'Surely whole',
      text: sharePercent(whole, frames.length),
      level: whole === frames.length ? 'good' : 'care',
      note: !settings.isReadoutMeasured
        ? 'The readout time is not measured, so none is called sure. A recording of the empty gate tells it.'
        : whole === frames.length
          ? 'Every row of every kept frame shows one film frame alone.'
          : `Not sure: ${formatNumber(unsure, 12)}. Blended: ${formatNumber(blended, 12)}. Bridged: ${formatNumber(bridged, 12)}.`,
    },
    {
      label: 'Camera',
      text: `${formatNumber(cameraFrames, 12)} frames at ${rateWords(Number(cameraFps.toPrecision(6)))} frames/s`,
      ...(missingFrames > 0 && {
        level: 'care' as const,
        note: `It left out ${counted(missingFrames, 'frame', 'frames')}; ${filmFrames(list.lostFilmFrames.length)} lost by that.`,
      }),
    },
    standAnswer(reading),
  ];
}

const PLACES = {
  before: 'at the beginning',
  between: 'within the film',
  after: 'at the end',
} as const;

/** Stretches that do not tell the film position, from when to when, why, and what to do. */
export function stretchTable({ list, firstSeconds }: FilmReading): ResultTable {
  const time = (seconds: number): string =>
    `${formatNumber(Math.max(0, seconds - firstSeconds), 4)} s`;
  return {
    caption: 'Where the pictures do not tell the film position',
    columns: ['From', 'To', 'Place', 'Count', 'Why', 'What to do'],
    rows: list.stretches.map(
      ({ fromSeconds, toSeconds, place, isCountSure, reason, ...count }) => ({
        level:
          place !== 'between'
            ? ('note' as const)
            : isCountSure
              ? ('care' as const)
              : ('stop' as const),
        cells: [
          time(fromSeconds),
          time(toSeconds),
          PLACES[place],
          `${filmFrames(count.filmFrames)}${isCountSure ? ', sure' : ` ± ${count.plusMinusFrames}`}`,
          UNTOLD_WORDS[reason].says,
          isCountSure ? 'Nothing: it is bridged.' : UNTOLD_WORDS[reason].toDo,
        ],
      }),
    ),
  };
}
