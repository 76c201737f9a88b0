import { AudioSampleSink } from 'mediabunny';
import { soundCodecName } from './codec-names.ts';
import { asReadRefused, lettersOf, openRecording } from './open-recording.ts';

/** Sound of a recording as one channel. */
export interface MonoSound {
  readonly sampleRate: number;
  /** Time of the first sample, s as the file counts: the same clock as the frame times. */
  readonly firstSeconds: number;
  /** Mean of all channels, −1 to 1. */
  readonly samples: Float32Array<ArrayBuffer>;
}

/** Sound of a recording, its absence, or the coding that this browser does not decode. */
export type SoundFound =
  | { readonly kind: 'sound'; readonly sound: MonoSound }
  | { readonly kind: 'none' }
  | { readonly kind: 'not-decoded'; readonly codec: string };

/** Sound of a minute at most: a second reading needs no more, and memory stays bounded. */
const MOST_SECONDS = 60;
/** Samples a second that a file may state; more than any recorder takes is no sound. */
const MOST_SAMPLE_RATE = 384_000;

/** Adds the mean of all channels of a decoded stretch into the room at a place. */
function mixDown(
  sample: {
    readonly numberOfFrames: number;
    readonly numberOfChannels: number;
    copyTo: (room: Float32Array, options: { planeIndex: number; format: 'f32-planar' }) => void;
  },
  into: Float32Array,
  at: number,
): void {
  const room = new Float32Array(sample.numberOfFrames);
  for (let channel = 0; channel < sample.numberOfChannels; channel += 1) {
    sample.copyTo(room, { planeIndex: channel, format: 'f32-planar' });
    for (let frame = 0; frame < room.length && at + frame < into.length; frame += 1) {
      into[at + frame] = (into[at + frame] ?? 0) + (room[frame] ?? 0) / sample.numberOfChannels;
    }
  }
}

/**
 * Decodes the sound of a part of a recording.
 *
 * @param fromSeconds  s from the first frame of the pictures
 * @param seconds  length, s; at most a minute is given
 * @throws {ReadRefusedError}
 */
export async function readMonoSound(
  file: Blob,
  fromSeconds: number,
  seconds: number,
): Promise<SoundFound> {
  const { input, facts } = await openRecording(file);
  try {
    const track = await input.getPrimaryAudioTrack();
    if (track === null) return { kind: 'none' };
    const sampleRate = await track.getSampleRate();
    if (!(sampleRate <= MOST_SAMPLE_RATE) || !(await track.canDecode())) {
      const letters = (await track.getCodec()) ?? lettersOf(await track.getInternalCodecId());
      return { kind: 'not-decoded', codec: soundCodecName(letters) };
    }
    const begin = facts.firstSeconds + fromSeconds;
    const lasts = Math.min(seconds, MOST_SECONDS, facts.seconds - fromSeconds);
    const samples = new Float32Array(Math.max(0, Math.ceil(lasts * sampleRate)));
    let last = 0;
    for await (const sample of new AudioSampleSink(track).samples(begin, begin + lasts)) {
      try {
        const at = Math.round((sample.timestamp - begin) * sampleRate);
        // A stretch that begins a little before is shortened at its front.
        if (-at >= sample.numberOfFrames) continue;
        const part = at < 0 ? sample.trim(-at) : sample;
        mixDown(part, samples, Math.max(0, at));
        last = Math.max(last, Math.max(0, at) + part.numberOfFrames);
        if (part !== sample) part.close();
      } finally {
        sample.close();
      }
    }
    if (last === 0) return { kind: 'none' };
    return {
      kind: 'sound',
      sound: {
        sampleRate,
        firstSeconds: begin,
        samples: samples.slice(0, Math.min(last, samples.length)),
      },
    };
  } catch (error) {
    throw asReadRefused(error);
  } finally {
    input.dispose();
  }
}
