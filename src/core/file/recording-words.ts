import type { KeptStatus } from './measured-keep-list.ts';
import type { RefusalReason } from './recording-refusal.ts';
import type { TieConflict } from './tied-places.ts';
import type { UntoldReason } from './told-pieces.ts';

/** What something is, and what the worker can do about it. */
export interface SayAndDo {
  readonly says: string;
  readonly toDo: string;
}

/** The statuses of kept frames, in the words of the sheet. */
export const STATUS_WORDS: Readonly<Record<KeptStatus, SayAndDo>> = {
  whole: {
    says: 'Every row shows this film frame and no other.',
    toDo: 'Nothing to do.',
  },
  unsure: {
    says: 'The frame lies so near the moment of the film’s move that it may hold a trace of a neighbour.',
    toDo: 'Look at the top and bottom rows. A faster camera or a shorter exposure gives more room.',
  },
  blended: {
    says: 'The frame holds two film frames; the camera took no better one.',
    toDo: 'Record again with a faster camera or a shorter exposure if every frame must be clean.',
  },
  bridged: {
    says: 'The pictures here do not tell where the film is; the frame is placed by the speed on either side.',
    toDo: 'Step through the stretch, count its film frames and enter a tie.',
  },
};

/** Why a stretch does not tell the film position. */
export const UNTOLD_WORDS: Readonly<Record<UntoldReason, SayAndDo>> = {
  'nothing-to-see': {
    says: 'Nothing in these pictures changes from film frame to film frame: black, white, or a still without visible grain.',
    toDo: 'If the count matters, count the film frames by hand and enter a tie at the first moving picture after the stretch. If it is leader, leave it.',
  },
  'two-answers': {
    says: 'These pictures fit the bench nearly as well if another shutter blade hides the film’s move.',
    toDo: 'Check the shutter and the exposure time of your bench, and use an exposure longer than the time a blade keeps the gate dark.',
  },
  'witnesses-differ': {
    says: 'Two halves of the picture give different film positions.',
    toDo: 'Look at the stretch: steadying or noise reduction in the camera, a hand over the gate or a jump of the film do this. Enter a tie after it.',
  },
};

/** Why a recording is not read at all. */
export const REFUSAL_WORDS: Readonly<Record<RefusalReason, SayAndDo>> = {
  'too-short': {
    says: 'The recording is too short: less than two seconds.',
    toDo: 'Choose a recording of at least ten seconds of moving film.',
  },
  'irregular-times': {
    says: 'The frames of this file do not stand at even times.',
    toDo: 'Set the camera to a constant frame rate. For this file, use the command that lays it on an even grid, and read the result.',
  },
  'camera-too-slow': {
    says: 'The camera takes no more frames than the film shows, so film frames are missing from the recording.',
    toDo: 'Record at a higher camera rate, best 50 or 60 frames/s, or run the film more slowly.',
  },
  'film-too-slow': {
    says: 'The film rate on your bench is below a tenth of the camera rate.',
    toDo: 'Check the film rate on your bench, or record at a lower camera rate.',
  },
  'exposure-too-short': {
    says: 'The exposure on your bench is so short against the time a blade keeps the gate dark that camera frames, or film frames with them, stay dark.',
    toDo: 'Check exposure time and shutter on your bench. Record with a longer exposure, best one that matches the flashes.',
  },
  'nothing-told': {
    says: 'The pictures do not tell the film position anywhere that two halves of the picture agree on.',
    toDo: 'Check film rate, shutter, exposure time and readout time of your bench, switch off steadying and noise reduction in the camera, and choose a part with movement in it.',
  },
};

/** Why a tie entered by hand does not fit. */
export const TIE_WORDS: Readonly<Record<TieConflict['reason'], SayAndDo>> = {
  'between-film-frames': {
    says: 'At this camera frame the film is between two film frames.',
    toDo: 'Enter the middle of the camera frames that show the film frame clean.',
  },
  'another-count': {
    says: 'This tie gives another count than the pictures or an earlier tie.',
    toDo: 'Count again from the film frame before the stretch that is not told.',
  },
  outside: {
    says: 'The recording has no such camera frame.',
    toDo: 'Check the number of the camera frame.',
  },
};

/** Said beside a film frame that hardly differs from the one before. */
export const SAME_PICTURE_WORDS: SayAndDo = {
  says: 'Same picture twice? It differs from the one before by no more than the noise.',
  toDo: 'Look at both. If the film stood or slipped, inspect that place for torn perforations or a lost loop before it runs again.',
};

/** Said where the camera left frames out. */
export const LOST_FRAME_WORDS: SayAndDo = {
  says: 'The camera left frames out here, and no frame shows this film frame.',
  toDo: 'Record this part again; a faster card or a lower quality setting stops the camera from dropping frames.',
};
