import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';

/** One moment that is both seen and heard, s from the beginning of each file. */
export interface SoundTie {
  readonly pictureSeconds: number;
  readonly soundSeconds: number;
}

/** What three ties say of a sound. */
export interface TiedSound {
  /** Film rate at which the sound was taken, for a film file at its native rate, frames/s. */
  readonly takenFps: number;
  /** How far the middle tie lies off when the outer two agree, film frames; above 0 the sound is late. */
  readonly middleOffFrames: number;
  /** Where the sound of the first picture lies in the sound file, s; below 0 it is missing. */
  readonly startSeconds: number;
}

const TIME = { minimum: 0, maximum: 86_400, unit: 's' };

/**
 * Rate and steadiness of a sound from three moments near the head, in the middle and near the tail.
 *
 * Model: taken rate = native rate × picture time ÷ sound time between the outer two; the middle one is
 * then laid by that ratio and compared. Exact for a sound that kept its speed.
 *
 * @param head       tie near the head; both times 0–86400 s
 * @param middle     tie in the middle, later in picture and sound than the head
 * @param tail       tie near the tail, later in both than the middle
 * @param nativeFps  rate of the film file, frames/s; > 0, at most 240
 * @returns taken rate, frames/s; middle, frames; start, s
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function tiedSound(
  head: SoundTie,
  middle: SoundTie,
  tail: SoundTie,
  nativeFps: number,
): TiedSound {
  requireInterval('nativeFps', nativeFps, { above: 0, maximum: 240 });
  requireInterval('headPictureSeconds', head.pictureSeconds, TIME);
  requireInterval('headSoundSeconds', head.soundSeconds, TIME);
  requireLater('middlePictureSeconds', head.pictureSeconds, middle.pictureSeconds);
  requireLater('middleSoundSeconds', head.soundSeconds, middle.soundSeconds);
  requireLater('tailPictureSeconds', middle.pictureSeconds, tail.pictureSeconds);
  requireLater('tailSoundSeconds', middle.soundSeconds, tail.soundSeconds);
  const share =
    (tail.pictureSeconds - head.pictureSeconds) / (tail.soundSeconds - head.soundSeconds);
  const laid = head.pictureSeconds + (middle.soundSeconds - head.soundSeconds) * share;
  return {
    takenFps: nativeFps * share,
    middleOffFrames: (laid - middle.pictureSeconds) * nativeFps,
    startSeconds: head.soundSeconds - head.pictureSeconds / share,
  };
}

function requireLater(argument: string, before: number, seconds: number): void {
  if (!(seconds > before + 1e-9) || seconds > TIME.maximum) {
    throw new OutOfRangeError(argument, seconds, 'a time after the tie before it');
  }
}
