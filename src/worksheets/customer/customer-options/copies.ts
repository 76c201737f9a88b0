import { bitRateBytes, soundBitsPerSecond } from '../../../core/file/file-size.ts';
import { tightFrameBits } from '../../../core/file/frame-bytes.ts';
import { keepSize } from '../../../core/file/keep-size.ts';
import { repeatPattern } from '../../../core/file/repeat-pattern.ts';
import { pitchSemitones } from '../../../core/file/sound-retiming.ts';
import { speedChangePercent } from '../../../core/file/speed-change.ts';
import { framesOnLength, runningSeconds } from '../../../core/reel/film-length.ts';
import { KEEP_SAMPLES, type Exact, type Values } from './inputs.ts';

/** Sound of the file to watch, uncompressed: two channels of 16 bit at 48 kHz. */
const WATCH_SOUND = soundBitsPerSecond(48_000, 16, 2);

/** Sound of the file to keep, uncompressed: two channels of 24 bit at 48 kHz. */
const KEEP_SOUND = soundBitsPerSecond(48_000, 24, 2);

/** How long each copy runs, how large it is, and what becomes of movement and pitch. */
export function copiesOf(values: Values, exact: Exact) {
  const { gauge, lengthMetres, nativeFps, deliveryFps, megabitsPerSecond } = values;
  const isSilent = values.sound === 'silent';
  const frames = framesOnLength(lengthMetres * 1000, gauge, 'frames-per-foot');
  const ownSeconds = runningSeconds(frames, nativeFps);
  const fastSeconds = runningSeconds(frames, deliveryFps);
  const watchRate = megabitsPerSecond * 1e6 + (isSilent ? 0 : WATCH_SOUND);
  const { bitDepth, sampling } = KEEP_SAMPLES[values.keepSamples];
  const { keepWidth: widthPixels, keepHeight: heightPixels } = values;
  const frame = { widthPixels, heightPixels, bitDepth, sampling };
  return {
    frames,
    ownSeconds,
    fastSeconds,
    keep: keepSize(frames, frame, ownSeconds, isSilent ? 0 : KEEP_SOUND),
    frameBytes: tightFrameBits(widthPixels, heightPixels, bitDepth, sampling) / 8,
    keepSoundBytes: isSilent ? 0 : bitRateBytes(ownSeconds, KEEP_SOUND),
    /** Bits/s of picture and sound. */
    watchRate,
    watchBytes: bitRateBytes(ownSeconds, watchRate),
    fastBytes: bitRateBytes(fastSeconds, watchRate),
    fastPercent: speedChangePercent(nativeFps, deliveryFps),
    /** Pitch of the sound when played straight on, semitones; undefined for silent film. */
    fastSemitones: isSilent ? undefined : pitchSemitones(deliveryFps / nativeFps),
    pattern: repeatPattern(exact.nativeFps, exact.deliveryFps),
  };
}

export type Copies = ReturnType<typeof copiesOf>;
