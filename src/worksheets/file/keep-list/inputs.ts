import { LAST_CAMERA_FRAME, MOST_FILM_FRAMES } from '../../../core/file/keep-list.ts';
import {
  cameraFpsInput,
  edgeWipeDegreesInput,
  exposureSecondsInput,
  filmFpsInput,
  flashesPerFrameInput,
  openPercentInput,
  pulldownBladeDegreesInput,
  readoutSecondsInput,
} from '../../gate/gate-inputs.ts';
import { FILM_RATE } from '../../machine/rate-ranges.ts';
import type { ExactOf, InputSpecs, ValuesOf } from '../../machine/types.ts';
import { codeRangeInput, pictureTurnInput } from '../recording-inputs.ts';

/** Ties in between at most; beyond that the command grows too long for a terminal. */
const MOST_TIES = 40;

export const inputs = {
  filmFps: {
    ...filmFpsInput,
    label: 'Film rate while recording',
    help: 'As measured while the recording was made.',
  },
  cameraFps: { ...cameraFpsInput, default: '50' },
  nativeFps: {
    ...FILM_RATE,
    label: 'Native rate',
    default: '18',
    accepted: '18, 16 or 24',
    help: 'Rate at which the film was shot; the film file is stamped with it.',
    bench: 'reel.nativeFps',
  },
  filmFrames: {
    kind: 'count',
    unit: 'frames',
    label: 'Film frames wanted',
    minimum: 1,
    maximum: MOST_FILM_FRAMES,
    default: '3600',
    accepted: '3600',
    help: 'From the first film frame to the last, both counted. 50 ft of Super 8 hold 3600.',
  },
  firstCameraFrame: {
    kind: 'quantity',
    label: 'Camera frame of the first film frame',
    unit: 'frames',
    minimum: 0,
    maximum: LAST_CAMERA_FRAME,
    default: '126',
    accepted: '126, 126 1/2 or 126.3',
    help: 'Step through the recording, counting from 0. The middle one of the camera frames that show the first film frame clean; 126 1/2 when 126 and 127 are clean. Tenths are for moving the start by trial; they leave the list unsure.',
  },
  lastCameraFrame: {
    kind: 'optional-quantity',
    label: 'Camera frame of the last film frame',
    unit: 'frames',
    minimum: 0,
    maximum: LAST_CAMERA_FRAME,
    default: '',
    accepted: '10123 or 10123 1/2',
    help: 'The same for the last film frame, if you know its number. Ties the list at both ends. Leave it empty to trust the rates.',
  },
  tieFilmFrames: {
    kind: 'list',
    label: 'Film frames tied in between',
    unit: 'frames',
    minimum: 2,
    maximum: MOST_FILM_FRAMES,
    longest: MOST_TIES,
    mayBeEmpty: true,
    default: '',
    accepted: '1201; 2401',
    help: 'More film frames that you found in the recording, for instance the first one after a splice. Their numbers, the first film frame of the reel being 1, in order and separated by semicolons.',
  },
  tieCameraFrames: {
    kind: 'list',
    label: 'Their camera frames',
    unit: 'frames',
    minimum: 0,
    maximum: LAST_CAMERA_FRAME,
    longest: MOST_TIES,
    mayBeEmpty: true,
    default: '',
    accepted: '3463; 6801 1/2',
    help: 'The middle of the clean camera frames of each, counted from 0, in the same order.',
  },
  rateErrorPercent: {
    kind: 'quantity',
    label: 'The film rate may be out by',
    unit: 'percent',
    minimum: 0,
    maximum: 10,
    default: '0.1',
    accepted: '0.1 %',
    help: 'Either way: what your measurement leaves unsure. Counts where no tie follows. 0 only where one clock drives projector and camera.',
  },
  wanderPercent: {
    kind: 'optional-quantity',
    label: 'The speed wanders by',
    unit: 'percent',
    minimum: 0,
    maximum: 10,
    default: '',
    accepted: '0.1 %',
    help: 'How far the film rate strays from its steady value while the reel runs, either way, as measured with film in the gate. Empty means not measured: ±1 % is assumed. A motor that follows the mains strays by 0.1 to 0.4 %, others by more. 0 only where one clock drives both machines.',
  },
  exposureSeconds: { ...exposureSecondsInput, default: '1/54' },
  readoutSeconds: readoutSecondsInput,
  flashesPerFrame: flashesPerFrameInput,
  openPercent: openPercentInput,
  pulldownBladeDegrees: pulldownBladeDegreesInput,
  edgeWipeDegrees: edgeWipeDegreesInput,
  turn: pictureTurnInput,
  codeRange: codeRangeInput,
} as const satisfies InputSpecs;

/** Entries as numbers in their units; ties by film frame counted from 1 and camera frame from 0. */
export type KeepEntries = ValuesOf<typeof inputs>;

/** The exact rates behind the entries. */
export type KeepRates = Pick<ExactOf<typeof inputs>, 'filmFps' | 'cameraFps' | 'nativeFps'>;
