import { OutOfRangeError } from '../../../quantity/errors.ts';
import { FILE_NAMES } from '../../../core/file/file-names.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { offsetCommands } from '../../../core/file/sound-commands.ts';
import {
  findSoundSystem,
  framesMillimetres,
  framesSeconds,
  SOUND_SYSTEMS,
  soundLateFrames,
  type SoundSystem,
} from '../../../core/file/sound-separation.ts';
import { quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import { STATUS_WORDS } from '../../machine/provenance-words.ts';
import { soundStripPicture } from '../sound-strip-picture.ts';
import { defineWorksheet, type Outcome, type ResultTable } from '../../machine/types.ts';

const RATES = [
  ['16 2/3', 50 / 3],
  ['18', 18],
  ['24', 24],
  ['25', 25],
] as const;

/** Longest offset in film frames that the picture of the strip shows. */
const LONGEST_DRAWN_FRAMES = 200;

const SYSTEM_NAMES: Readonly<Record<string, string>> = {
  ...Object.fromEntries(SOUND_SYSTEMS.map(({ name, label }) => [name, label])),
  other: 'another: enter the separation',
};

/** The system chosen, and the separation typed or known. */
function separationOf(
  system: string,
  typed: number | undefined,
): { readonly frames: number; readonly known: SoundSystem | undefined } {
  const known = system === 'other' ? undefined : findSoundSystem(system);
  const frames = typed ?? known?.framesAhead;
  if (frames === undefined) {
    throw new OutOfRangeError(
      'separationFrames',
      'nothing',
      'the separation in frames, such as 26',
    );
  }
  return { frames, known };
}

/** How the sound stands against the picture, in words instead of signs. */
function offsetWords(lateSeconds: number) {
  return lateSeconds < 0
    ? ({ comes: 'early', move: 'later' } as const)
    : ({ comes: 'late', move: 'earlier' } as const);
}

function verdictFor(
  lateSeconds: number,
  timelineFrames: number,
  wasFound: boolean,
): Outcome['verdict'] {
  if (lateSeconds === 0) {
    return wasFound
      ? { level: 'good', sentence: 'Sound and picture are in step.' }
      : {
          level: 'note',
          sentence:
            'Threaded so, sound and picture should be in step: check it on a start mark or on lips.',
        };
  }
  const seconds = formatQuantity(Math.abs(lateSeconds), 's');
  const frames = formatQuantity(Math.abs(timelineFrames), 'frames');
  const { comes, move } = offsetWords(lateSeconds);
  return {
    level: Math.abs(timelineFrames) < 0.5 ? 'note' : 'care',
    sentence: `The sound comes ${seconds} ${comes}: move it ${frames} ${move}.`,
  };
}

/** Film frames by which the sound is late, from threading or as it was found. */
function lateFramesOf(entries: {
  readonly taken: 'own-head' | 'beside-frame' | 'found';
  readonly separation: number;
  readonly loopErrorFrames: number;
  readonly foundFrames: number;
  readonly foundWay: 'late' | 'early';
  readonly filmFps: number;
  readonly deliveryFps: number;
}): number {
  if (entries.taken === 'found') {
    const late = entries.foundWay === 'early' ? -entries.foundFrames : entries.foundFrames;
    return (late / entries.deliveryFps) * entries.filmFps;
  }
  const isReadInGate = entries.taken === 'beside-frame';
  return soundLateFrames(entries.separation, entries.loopErrorFrames, isReadInGate);
}

function systemsTable(): ResultTable {
  return {
    caption: 'How far sound precedes its picture, in seconds at the usual film rates',
    columns: ['System', 'Frames', ...RATES.map(([name]) => name), 'How it is known'],
    rows: SOUND_SYSTEMS.map(({ label, framesAhead, status }) => ({
      cells: [
        label,
        String(framesAhead),
        ...RATES.map(([, rate]) => formatNumber(framesSeconds(framesAhead, rate), 4)),
        STATUS_WORDS[status],
      ],
    })),
  };
}

export const worksheet = defineWorksheet({
  id: 'sound-offset',
  title: 'Sound offset',
  question: 'How far apart are sound and picture, and which way do I move the sound?',
  chapter: 'file/sound',
  inputs: {
    system: {
      kind: 'choice',
      label: 'Sound system',
      options: SYSTEM_NAMES,
      default: 'super-8-magnetic',
      help: 'Gauge and kind of track. 9.5 mm sound is missing because no sure figure was found.',
      bench: 'reel.gauge',
    },
    separationFrames: {
      kind: 'optional-quantity',
      label: 'Separation',
      unit: 'frames',
      minimum: 0,
      maximum: 200,
      default: '',
      accepted: '26 or 18',
      help: 'Frames by which the sound precedes its picture. Empty: the usual one of the system.',
    },
    taken: {
      kind: 'choice',
      label: 'How the sound was taken',
      options: {
        'own-head': 'at the projector’s own sound head, while the picture was filmed',
        'beside-frame': 'from the film beside the frame in the gate',
        found: 'anyhow: the offset was found by a mark, a clap or lips',
      },
      default: 'own-head',
      help: 'At its own head the threading makes up for the separation. A track read together with the picture in the gate is early by all of it. What was found by eye and ear comes before both.',
    },
    foundFrames: {
      kind: 'quantity',
      label: 'Found: the sound is off by',
      unit: 'frames',
      minimum: 0,
      maximum: 50_000,
      default: '0',
      accepted: '0, 3 or 2.5',
      help: 'Frames of the timeline between what is seen and what is heard. Only counts when the offset was found.',
    },
    foundWay: {
      kind: 'choice',
      label: 'Found: the sound comes',
      options: { late: 'late, after its picture', early: 'early, before its picture' },
      default: 'late',
      help: 'Late: the splash is seen first and heard afterwards.',
    },
    soundFile: {
      kind: 'choice',
      label: 'Sound to move',
      options: {
        corrected: FILE_NAMES.corrected,
        fitted: FILE_NAMES.fitted,
        taken: FILE_NAMES.taken,
      },
      default: 'corrected',
      help: 'The last file that the sheet on sound retiming made; taken.wav when the speed was right.',
    },
    loopErrorFrames: {
      kind: 'quantity',
      label: 'Lower loop too long by',
      unit: 'frames',
      minimum: -50,
      maximum: 50,
      default: '0',
      accepted: '0, 2 or -1',
      help: 'Against the threading mark, in frames; with a minus sign too short. Only counts at the projector’s own head.',
    },
    filmFps: {
      kind: 'quantity',
      label: 'Film rate in the file',
      unit: 'fps',
      minimum: 1,
      maximum: 120,
      default: '18',
      accepted: '18, 16 2/3 or 24',
      help: 'Rate at which the film plays where you move the sound: the native rate in a finished film file, the rate it ran at in the raw recording.',
      bench: 'reel.nativeFps',
    },
    deliveryFps: {
      kind: 'quantity',
      label: 'Frame rate of the timeline',
      unit: 'fps',
      minimum: 1,
      maximum: 240,
      default: '25',
      accepted: '25, 50 or 30000/1001',
      help: 'Frames per second of the timeline on which you move the sound.',
      bench: 'region.deliveryFps',
    },
  },
  model:
    'On every system the sound lies ahead of its picture, because the sound head comes after the gate. A path from gate to head that is too long by some frames makes the sound late by as many. Exact; shrunken film keeps its frames and so its timing.',
  compute(entries) {
    const { system, separationFrames, taken, soundFile, filmFps, deliveryFps } = entries;
    const { frames, known } = separationOf(system, separationFrames);
    const lateFrames = lateFramesOf({ ...entries, separation: frames });
    const lateSeconds = lateFrames / filmFps;
    const { comes, move } = offsetWords(lateSeconds);
    const deliveryFrames = lateSeconds * deliveryFps;
    const origin =
      known !== undefined && separationFrames === undefined
        ? STATUS_WORDS[known.status]
        : 'as you entered it';
    return {
      verdict: verdictFor(lateSeconds, deliveryFrames, taken === 'found'),
      answers: {
        separation: quantityAnswer('Separation', frames, 'frames', 4, { note: origin }),
        separationLength: wordsAnswer(
          'On the film',
          known === undefined
            ? 'not known for this system'
            : formatQuantity(framesMillimetres(frames, known.stepMillimetres), 'mm', 4),
        ),
        separationSeconds: quantityAnswer('In time', framesSeconds(frames, filmFps), 's', 4),
        frameSeconds: quantityAnswer('One film frame lasts', framesSeconds(1, filmFps), 's'),
        offBySeconds: quantityAnswer(
          lateSeconds === 0 ? 'Sound and picture are apart by' : `Sound comes ${comes} by`,
          Math.abs(lateSeconds),
          's',
        ),
        moveFrames: quantityAnswer(
          lateSeconds === 0
            ? 'Frames of the timeline to move it'
            : `Move the sound ${move} by, on the timeline`,
          Math.abs(deliveryFrames),
          'frames',
        ),
      },
      commands:
        lateSeconds === 0
          ? []
          : Object.entries(offsetCommands(soundFile, lateSeconds)).map(([tool, text]) => ({
              label: `Move the sound ${move}, with ${tool}`,
              text: String(text),
            })),
      tables: [systemsTable()],
      // An offset of many seconds, as of a separate recorder, has no place on the strip.
      pictures:
        Math.abs(lateFrames) > LONGEST_DRAWN_FRAMES
          ? []
          : [soundStripPicture(frames, lateFrames, filmFps, taken === 'beside-frame')],
    };
  },
  working(entries, { answers }) {
    const text = (key: string): string => answers[key]?.text ?? '';
    const { system, separationFrames, taken, filmFps, deliveryFps, foundFrames } = entries;
    const { frames } = separationOf(system, separationFrames);
    const rate = formatQuantity(filmFps, 'fps', 5);
    const timeline = formatQuantity(deliveryFps, 'fps', 5);
    if (taken === 'found') {
      return [
        {
          words: 'Frames of the timeline divided by its rate: the time to move the sound by.',
          sum: `${formatQuantity(foundFrames, 'frames')} ÷ ${timeline} = ${text('offBySeconds')}`,
        },
      ];
    }
    const late = lateFramesOf({ ...entries, separation: frames });
    return [
      {
        words: 'Separation in frames divided by the film rate is the separation in time.',
        sum: `${text('separation')} ÷ ${rate} = ${text('separationSeconds')}`,
      },
      {
        words:
          taken === 'beside-frame'
            ? 'The track beside the frame belongs to a picture that comes later: the sound is early by the whole separation.'
            : 'The threading makes up for the separation. Each frame that the lower loop is too long makes the sound a frame late, each that it is too short a frame early.',
        sum: `${formatQuantity(Math.abs(late), 'frames')} ÷ ${rate} = ${text('offBySeconds')}`,
      },
      {
        words: 'Times the rate of the timeline: the frames to move it.',
        sum: `${text('offBySeconds')} × ${timeline} = ${text('moveFrames')}`,
      },
    ];
  },
  cautions: [
    'Trust a start mark, a clap in the film or lips before any table: loops and separations differ in practice.',
    'No clap in front of the gate: it is hot, bright and full of moving parts. Mark the start on the leader.',
    'Thread and set loops with the machine stopped. Claw, sprockets and rollers trap fingers.',
  ],
  sources: [
    'smpte-41',
    'film-cutting-book',
    'hobby-sound-article',
    'dilettantes-dictionary',
    'from-memory',
    'common-practice',
    'ffmpeg-documentation',
    'sox-manual',
  ],
});
