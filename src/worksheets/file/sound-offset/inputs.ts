import { FILE_NAMES } from '../../../core/file/file-names.ts';
import { SOUND_SYSTEMS } from '../../../core/file/sound-separation.ts';
import { FILM_RATE, VIDEO_RATE } from '../../machine/rate-ranges.ts';
import type { InputSpecs, ValuesOf } from '../../machine/types.ts';

const SYSTEM_NAMES: Readonly<Record<string, string>> = {
  ...Object.fromEntries(SOUND_SYSTEMS.map(({ name, label }) => [name, label])),
  other: 'another: enter the separation',
};

export const inputs = {
  system: {
    kind: 'choice',
    label: 'Sound system',
    options: SYSTEM_NAMES,
    default: 'super-8-magnetic',
    help: 'Gauge and kind of track. 9.5 mm sound is missing because no reliable figure was found.',
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
    help: 'At its own head the threading makes up for the separation. A track read together with the picture in the gate is early by all of it. What you found by eye and ear overrules both.',
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
    ...FILM_RATE,
    label: 'Film rate in the file',
    default: '18',
    accepted: '18, 16 2/3 or 24',
    help: 'Rate at which the film plays where you move the sound: the native rate in a finished film file, the rate it ran at in the raw recording.',
    bench: 'reel.nativeFps',
  },
  deliveryFps: {
    ...VIDEO_RATE,
    label: 'Frame rate of the timeline',
    default: '25',
    accepted: '25, 50 or 30000/1001',
    help: 'Frames per second of the timeline on which you move the sound.',
    bench: 'region.deliveryFps',
  },
} as const satisfies InputSpecs;

export type OffsetEntries = ValuesOf<typeof inputs>;
