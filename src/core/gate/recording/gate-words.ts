// What a reading of an empty gate says, in words. Numbers are put in by whoever shows it.
import type { GateCause, GateRefusalReason } from './gate-reading.ts';

/** A cause as a person at the bench meets it. */
export interface CauseWords {
  /** Its name, for a table. */
  readonly name: string;
  /** What it is. */
  readonly what: string;
  /** What to do about it. */
  readonly remedy: string;
}

export const CAUSE_WORDS: Readonly<Record<GateCause, CauseWords>> = {
  shutter: {
    name: 'exposure and shutter do not match',
    what: 'One exposure does not hold a whole number of flashes, so each camera frame, or each row, catches a little more or less light than the one before.',
    remedy:
      'Set the matching exposure time. Where the camera has no such step, bring the film rate to the exposure time instead.',
  },
  unequal: {
    name: 'unequal blades',
    what: 'The flashes of one film frame are not alike: a blade is wider than the others, or bent, or sits askew.',
    remedy:
      'No exposure of one flash takes this out; one whole film frame does. Stop the machine, pull the mains plug and look at the shutter. If the blades are meant to differ, enter them as measured.',
  },
  lamp: {
    name: 'lamp',
    what: 'The lamp itself flickers with the mains, and that mixes with the flashes of the shutter.',
    remedy:
      'Feed the lamp with smooth direct current, or use one that does not flicker. Leave work on mains wiring to someone qualified. An exposure of whole lamp periods helps only if it is one of whole flashes as well.',
  },
  'automatic-exposure': {
    name: 'automatic exposure',
    what: 'The whole picture grows lighter and darker slowly, as a camera does that keeps correcting itself.',
    remedy:
      'Lock exposure time, aperture and sensitivity by hand, and switch off anything called automatic brightness or dynamic range. Then record again.',
  },
  drift: {
    name: 'drift',
    what: 'The light grows or fades evenly from the start of the clip to its end.',
    remedy:
      'Let the lamp warm up until its light holds, and check that the camera does not correct by itself.',
  },
};

/** Why a recording is not read, and what to do. */
export interface RefusalWords {
  readonly reason: string;
  readonly remedy: string;
}

export const REFUSAL_WORDS: Readonly<Record<GateRefusalReason, RefusalWords>> = {
  'too-short': {
    reason: 'The clip is too short to tell one rate from another.',
    remedy: 'Record at least ten seconds in one take.',
  },
  clipped: {
    reason:
      'Parts of the picture are as bright as the file can hold, and a change there cannot be seen.',
    remedy:
      'Close the aperture or lower the sensitivity until nothing is clipped. Leave the exposure time alone.',
  },
  black: {
    reason: 'There is too little light in the picture, or in a part of it.',
    remedy:
      'Light the whole picture: open the aperture, or let the gate fill the frame. Leave the exposure time alone.',
  },
  'something-moves': {
    reason: 'Something moves in the picture: film, dust, a hand, or the camera itself.',
    remedy:
      'Take the film out, stand the camera on something firm, switch stabilisation off and record the empty gate again.',
  },
  'irregular-times': {
    reason:
      'The camera frames are not evenly spaced in time, so no rate can be measured against them.',
    remedy:
      'Switch the camera to a constant frame rate. A file that was converted or edited may have lost its times: use the one from the camera.',
  },
  'two-answers': {
    reason: 'Two answers fit this recording alike.',
    remedy:
      'Make sure that the exposure is locked by hand. Then time a counted length of film with a stopwatch, or record again at another camera rate: 30 or 60 where this clip has 25 or 50, and the other way round. One of the two then drops out.',
  },
  'slow-beat': {
    reason:
      'The flashes run almost in step with the camera. The light changes so slowly that the clip does not hold one and a half of its turns.',
    remedy:
      'Record for longer, or turn the speed knob a very little, so that the picture pulses at least twice in the clip.',
  },
  unexplained: {
    reason:
      'The light changes from camera frame to camera frame in a way that shutter, blades, lamp and automatic exposure do not explain.',
    remedy:
      'Check the film rate and the flashes per frame of your bench. Switch noise reduction and automatic exposure off and record again. Near a match a motor that wanders does this too: then record with a shorter exposure.',
  },
};

/** What to say of an exposure of one whole film frame, the only one that unequal blades leave even. */
export const WHOLE_FILM_FRAME_WORDS =
  'Only an exposure of one whole film frame is even behind these blades, but then camera frames blend two film frames: use it to prove the cause, not to copy film.';

/** Sentences of the reading itself. */
export const READING_WORDS = {
  even: 'No flicker that anybody would see.',
  quiet: 'A flicker larger than this, either way, would have been found.',
  atLeast: 'At least: the clip does not show every phase of the flash, so there may be more.',
  noFilmRate:
    'Nothing in the light tells the film rate. Record with a short exposure, a quarter of a flash or less, to measure it.',
  standing:
    'Bands that stand still in the picture look like uneven lighting. Turn the speed knob a little: if they move, they are flicker.',
  toneCurve:
    'A camera that bends its tone curve makes the ripple up to a fifth too large or too small. The film rate does not depend on it.',
  clock: 'The error takes the clock of the camera to be right within 0.005 %.',
} as const;
