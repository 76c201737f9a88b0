import { FILE_NAMES } from '../../../core/file/file-names.ts';
import { VIDEO_RATE } from '../../machine/rate-ranges.ts';
import type { ExactOf, InputSpecs, QuantityInput, ValuesOf } from '../../machine/types.ts';
import { inputs as keepInputs } from '../keep-list/inputs.ts';
import { inputs as cropInputs } from '../picture-crop/inputs.ts';
import { inputs as retimingInputs } from '../sound-retiming/inputs.ts';

const onlyWhenCropped = (input: QuantityInput): QuantityInput => ({
  ...input,
  help: `${input.help} Only counts when the copy is cropped.`,
});

/** Longest name, characters: file systems take some 255 bytes. */
const LONGEST_NAME = 120;

export const inputs = {
  reelName: {
    kind: 'text',
    label: 'Name of the reel',
    longest: LONGEST_NAME,
    mayBeEmpty: true,
    default: '',
    accepted: 'Reel 7, Regatta 1962',
    help: 'For the log.',
  },
  recordingName: {
    kind: 'text',
    label: 'File of the recording',
    longest: LONGEST_NAME,
    default: FILE_NAMES.recording,
    accepted: 'recording.mov',
    help: 'With its ending.',
  },
  keepBy: {
    kind: 'choice',
    label: 'Film frames are kept',
    options: {
      ties: 'by the ties below',
      list: `by a measured list, in ${FILE_NAMES.keepFilter}`,
    },
    default: 'ties',
    help: 'A measured list comes from the chapter on whole frames; ties and shutter are then not used.',
  },
  ...keepInputs,
  copyShows: {
    kind: 'choice',
    label: 'The copy to watch shows',
    options: { whole: 'all of the frame', cropped: 'the picture only: cropped' },
    default: 'whole',
    help: 'The master always keeps all of the frame. Try the crop in the sheet on crop and shape.',
  },
  leftPixels: onlyWhenCropped(cropInputs.leftPixels),
  rightPixels: onlyWhenCropped(cropInputs.rightPixels),
  topPixels: onlyWhenCropped(cropInputs.topPixels),
  bottomPixels: onlyWhenCropped(cropInputs.bottomPixels),
  trimPercent: onlyWhenCropped(cropInputs.trimPercent),
  sound: {
    kind: 'choice',
    label: 'Sound',
    options: { none: 'none', taken: 'in a file of its own' },
    default: 'none',
    help: 'As the sound recorder wrote it, untouched.',
  },
  soundName: {
    kind: 'text',
    label: 'File of the sound',
    longest: LONGEST_NAME,
    default: FILE_NAMES.taken,
    accepted: 'taken.wav',
    help: 'Only counts with sound.',
  },
  takenFps: {
    kind: 'optional-quantity',
    label: 'Film rate while the sound was taken',
    unit: 'fps',
    minimum: 8,
    maximum: 60,
    default: '',
    accepted: '18 or 17.83',
    help: 'Empty: taken in the same run as the picture, so the rate between first and last tie counts, or the film rate above. Only counts with sound.',
  },
  sampleRate: {
    ...retimingInputs.sampleRate,
    label: 'Sample rate of the sound',
    help: 'The script asks the file and stops if it has another. Only counts with sound.',
  },
  soundOffSeconds: {
    kind: 'quantity',
    label: 'The sound is off by',
    unit: 's',
    minimum: 0,
    maximum: 3600,
    default: '0',
    accepted: '0, 0.11 or 1.4 s',
    help: 'At the native rate, from the sheet on sound offset. Only counts with sound.',
  },
  soundWay: {
    kind: 'choice',
    label: 'The sound comes',
    options: { late: 'late, after its picture', early: 'early, before its picture' },
    default: 'late',
    help: 'Late: the splash is seen first and heard afterwards.',
  },
  deliveryFps: {
    ...VIDEO_RATE,
    label: 'Rate of the copy to watch',
    default: '25',
    accepted: '25, 50 or 30000/1001',
    help: 'Frames per second of the customer’s screen; not below the native rate.',
    bench: 'region.deliveryFps',
  },
} as const satisfies InputSpecs;

export type ScriptEntries = ValuesOf<typeof inputs>;
export type ScriptRates = ExactOf<typeof inputs>;
