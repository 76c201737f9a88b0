import { OutOfRangeError } from '../core/errors.ts';
import { formatNumber, formatQuantity } from '../core/quantity/format.ts';
import {
  findSoundSystem,
  framesMillimetres,
  framesSeconds,
  SOUND_SYSTEMS,
  soundLateFrames,
  type SoundSystem,
} from '../core/sound-separation.ts';
import { quantityAnswer, wordsAnswer } from './answers.ts';
import { STATUS_WORDS } from './provenance-words.ts';
import { soundStripPicture } from './sound-strip-picture.ts';
import { defineWorksheet, type Outcome, type ResultTable } from './types.ts';

const RATES = [
  ['16 2/3', 50 / 3],
  ['18', 18],
  ['24', 24],
  ['25', 25],
] as const;

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

function verdictFor(lateSeconds: number, deliveryFrames: number): Outcome['verdict'] {
  if (lateSeconds === 0) return { level: 'good', sentence: 'Sound and picture are in step.' };
  const seconds = formatQuantity(Math.abs(lateSeconds), 's');
  const frames = formatNumber(Math.abs(deliveryFrames));
  const [comes, move] = lateSeconds > 0 ? ['after', 'earlier'] : ['before', 'later'];
  return {
    level: Math.abs(deliveryFrames) < 0.5 ? 'note' : 'care',
    sentence: `The sound comes ${seconds} ${comes} its picture: move it ${frames} delivery frames ${move}.`,
  };
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
      },
      default: 'own-head',
      help: 'At its own head the threading makes up for the separation. A track read together with the picture in the gate is early by all of it.',
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
  compute({ system, separationFrames, taken, loopErrorFrames, filmFps, deliveryFps }) {
    const { frames, known } = separationOf(system, separationFrames);
    const lateFrames = soundLateFrames(frames, loopErrorFrames, taken === 'beside-frame');
    const lateSeconds = framesSeconds(lateFrames, filmFps);
    const deliveryFrames = lateSeconds * deliveryFps;
    const origin =
      known !== undefined && separationFrames === undefined
        ? STATUS_WORDS[known.status]
        : 'as you entered it';
    return {
      verdict: verdictFor(lateSeconds, deliveryFrames),
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
        lateSeconds: quantityAnswer('Sound comes late by', lateSeconds, 's', 3, {
          note: 'With a minus sign it comes early.',
        }),
        deliveryFrames: quantityAnswer(
          'Move the sound earlier by, on the timeline',
          deliveryFrames,
          'frames',
          3,
          { note: 'With a minus sign: later.' },
        ),
      },
      tables: [systemsTable()],
      pictures: [soundStripPicture(frames, lateFrames, filmFps, taken === 'beside-frame')],
    };
  },
  working({ system, separationFrames, taken, loopErrorFrames, filmFps, deliveryFps }, { answers }) {
    const text = (key: string): string => answers[key]?.text ?? '';
    const { frames } = separationOf(system, separationFrames);
    const rate = formatQuantity(filmFps, 'fps', 5);
    const late = soundLateFrames(frames, loopErrorFrames, taken === 'beside-frame');
    return [
      {
        words: 'Separation in frames divided by the film rate is the separation in time.',
        sum: `${text('separation')} ÷ ${rate} = ${text('separationSeconds')}`,
      },
      {
        words:
          taken === 'beside-frame'
            ? 'The track beside the frame belongs to a picture that comes later: the sound is early by the whole separation.'
            : 'The threading makes up for the separation; what the lower loop is too long makes the sound late.',
        sum: `${formatQuantity(late, 'frames')} ÷ ${rate} = ${text('lateSeconds')}`,
      },
      {
        words: 'Times the rate of the timeline: the frames to move it.',
        sum: `${text('lateSeconds')} × ${formatQuantity(deliveryFps, 'fps', 5)} = ${text('deliveryFrames')}`,
      },
    ];
  },
  cautions: [
    'Trust a clap, a footstep or lips before any table: loops and separations differ in practice.',
    'Thread and set loops with the machine stopped. Claw, sprockets and rollers trap fingers.',
  ],
  sources: [
    'smpte-41',
    'film-cutting-book',
    'hobby-sound-article',
    'dilettantes-dictionary',
    'from-memory',
    'common-practice',
  ],
});
