import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';

/** One moment that is both seen and heard, s from the beginning of each file. */
export interface SoundTie {
  /** Which of the three it is, for a refusal. */
  readonly name: 'head' | 'middle' | 'tail';
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
 * @param ties       three ties in any order; times 0–86400 s, later in the sound where later in the picture
 * @param nativeFps  rate of the film file, frames/s; > 0, at most 240
 * @returns taken rate, frames/s; middle, frames; start, s
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function tiedSound(ties: readonly SoundTie[], nativeFps: number): TiedSound {
  requireInterval('nativeFps', nativeFps, { above: 0, maximum: 240 });
  for (const { name, pictureSeconds, soundSeconds } of ties) {
    requireInterval(`${name}PictureSeconds`, pictureSeconds, TIME);
    requireInterval(`${name}SoundSeconds`, soundSeconds, TIME);
  }
  const [head, middle, tail] = ties.toSorted((a, b) => a.pictureSeconds - b.pictureSeconds);
  if (head === undefined || middle === undefined || tail === undefined) {
    throw new RangeError('three ties are needed');
  }
  requireLater(head, middle);
  requireLater(middle, tail);
  const share =
    (tail.pictureSeconds - head.pictureSeconds) / (tail.soundSeconds - head.soundSeconds);
  const laid = head.pictureSeconds + (middle.soundSeconds - head.soundSeconds) * share;
  return {
    takenFps: nativeFps * share,
    middleOffFrames: (laid - middle.pictureSeconds) * nativeFps,
    startSeconds: head.soundSeconds - head.pictureSeconds / share,
  };
}

function requireLater(before: SoundTie, { name, pictureSeconds, soundSeconds }: SoundTie): void {
  if (!(pictureSeconds > before.pictureSeconds + 1e-9)) {
    throw new OutOfRangeError(`${name}PictureSeconds`, pictureSeconds, 'another moment');
  }
  if (!(soundSeconds > before.soundSeconds + 1e-9)) {
    throw new OutOfRangeError(
      `${name}SoundSeconds`,
      soundSeconds,
      'a later time than the sound of the tie before it',
    );
  }
}
