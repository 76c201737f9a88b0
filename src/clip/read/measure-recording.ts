import { EncodedPacketSink, VideoSampleSink, type InputVideoTrack } from 'mediabunny';
import { readIndex } from '../save/read-index.ts';
import { SaveRefusedError } from '../save/save-refusals.ts';
import { DOUBLE, GrowingNumbers } from './growing-numbers.ts';
import { asReadRefused, openRecording, type OpenRecording } from './open-recording.ts';
import {
  codeScaleOf,
  lightMeasure,
  motionMeasure,
  PlaneReader,
  type PictureMeasure,
} from './picture-measure.ts';
import { ReadRefusedError } from './read-refusals.ts';
import type { ReadProgress, Reading, ReadRequest } from './reading.ts';

/** Fewer frames than this share of what length and rate promise: the recording is cut off. */
const LEAST_SHARE = 0.9;
/** Frames between two reports. */
const REPORT_EACH = 25;
/** Room laid out beforehand for no more frames than this, whatever a file says of itself. */
const MOST_EXPECTED = 250_000;

interface Part {
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly expectedFrames: number;
}

function partOf({ facts }: OpenRecording, request: ReadRequest): Part {
  const from = request.fromSeconds ?? 0;
  const lasts = Math.min(request.seconds ?? Number.POSITIVE_INFINITY, facts.seconds - from);
  if (!(lasts > 0)) {
    throw new ReadRefusedError(
      'nothing-there',
      `This recording is ${facts.seconds.toFixed(2)} s long; nothing follows ${from.toFixed(2)} s.`,
    );
  }
  const isToTheEnd = request.seconds === undefined || lasts < request.seconds;
  const share = facts.seconds > 0 ? lasts / facts.seconds : 1;
  return {
    // A hair early, so that times which were rounded on the way still count.
    fromSeconds: from === 0 ? Number.NEGATIVE_INFINITY : facts.firstSeconds + from - 1e-4,
    toSeconds: isToTheEnd ? Number.POSITIVE_INFINITY : facts.firstSeconds + from + lasts - 1e-4,
    expectedFrames: Math.min(MOST_EXPECTED, Math.round(facts.expectedFrames * share)),
  };
}

/** Refuses a recording that was trimmed by an edit list: its frame numbers do not mean the same everywhere. */
async function refuseTrimmed(file: Blob): Promise<void> {
  try {
    const { table } = await readIndex(file);
    if (table.hiddenByEdits > 0) {
      throw new ReadRefusedError(
        'trimmed',
        `This recording was trimmed without being rewritten: ${table.hiddenByEdits} of its ${table.sampleCount} pictures are hidden, and programs count them differently.`,
      );
    }
  } catch (error) {
    // Other containers have no such list, and what else is wrong shows in reading.
    if (!(error instanceof SaveRefusedError)) throw error;
  }
}

/** Containers whose index lists every frame, so that counting them reads nothing else. */
const WITH_INDEX = ['MP4', 'QuickTime File Format'];

/** Frames that the index promises for a part; undefined where there is no index. */
async function promisedFrames(
  { track, facts }: OpenRecording,
  part: Part,
): Promise<number | undefined> {
  if (!WITH_INDEX.includes(facts.container)) return undefined;
  let count = 0;
  const packets = new EncodedPacketSink(track).packets(undefined, undefined, {
    metadataOnly: true,
  });
  for await (const { timestamp } of packets) {
    if (timestamp >= part.fromSeconds && timestamp < part.toSeconds) count += 1;
  }
  return count;
}

/** Frames shown before a moment. */
async function framesBefore(track: InputVideoTrack, seconds: number): Promise<number> {
  if (seconds === Number.NEGATIVE_INFINITY) return 0;
  let count = 0;
  let late = 0;
  const packets = new EncodedPacketSink(track).packets(undefined, undefined, {
    metadataOnly: true,
  });
  for await (const packet of packets) {
    if (packet.timestamp < seconds) count += 1;
    else late += 1;
    // Frames are stored at most a few places away from where they are shown.
    if (late > 64) break;
  }
  return count;
}

interface Measured<Result> {
  readonly result: Result;
  readonly frameCount: number;
  readonly bitDepth: number;
  readonly pictureFormat: string;
  readonly readingSeconds: number;
}

async function measureFrames<Result>(
  recording: OpenRecording,
  part: Part,
  makeMeasure: (scale: ReturnType<typeof codeScaleOf>) => PictureMeasure<Result>,
  onProgress: (progress: ReadProgress) => void,
  hardwareAcceleration: 'no-preference' | 'prefer-software',
): Promise<Measured<Result>> {
  const { track, facts } = recording;
  const planes = new PlaneReader();
  const times = new GrowingNumbers(DOUBLE, part.expectedFrames);
  let measure: PictureMeasure<Result> | undefined;
  let frameCount = 0;
  let bitDepth = 8;
  let pictureFormat = '';
  let readingMilliseconds = 0;
  let latest: number | undefined;
  const sink = new VideoSampleSink(track, { hardwareAcceleration });
  try {
    for await (const sample of sink.samples(part.fromSeconds, part.toSeconds)) {
      try {
        // The first one given is the one on show at the beginning, which may have begun before.
        if (sample.timestamp < part.fromSeconds) continue;
        const begin = performance.now();
        if (measure === undefined) {
          const scale = codeScaleOf(sample, facts.colour);
          measure = makeMeasure(scale);
          ({ bitDepth } = scale);
          pictureFormat = sample.format ?? '';
        } else if (sample.format !== pictureFormat) {
          throw new ReadRefusedError(
            'damaged',
            `The pictures of this recording change from ${pictureFormat} to ${sample.format ?? 'nothing'} on the way.`,
          );
        }
        measure.add(await planes.read(sample));
        times.add([sample.timestamp]);
        latest = sample.timestamp - facts.firstSeconds;
        readingMilliseconds += performance.now() - begin;
      } finally {
        sample.close();
      }
      frameCount += 1;
      if (frameCount % REPORT_EACH === 0) {
        onProgress({
          framesRead: frameCount,
          share: Math.min(1, frameCount / part.expectedFrames),
        });
      }
    }
  } catch (error) {
    throw asReadRefused(error, latest ?? 0);
  }
  requireEnough(frameCount, part.expectedFrames, latest);
  if (measure === undefined)
    throw new ReadRefusedError('cut-off', 'No picture of this recording could be decoded.');
  return {
    result: measure.finish(times.taken()),
    frameCount,
    bitDepth,
    pictureFormat,
    readingSeconds: readingMilliseconds / 1000,
  };
}

function requireEnough(frameCount: number, expected: number, latest: number | undefined): void {
  // Short parts: one frame more or less at either end is no sign of damage.
  if (frameCount >= LEAST_SHARE * expected - 2 && frameCount > 0) return;
  throw new ReadRefusedError(
    'cut-off',
    frameCount === 0
      ? 'Not one picture of this recording could be decoded: it is cut off or damaged.'
      : `Only ${frameCount} of about ${expected} frames are there; the last is ${(latest ?? 0).toFixed(2)} s from the beginning. The recording is cut off or damaged.`,
    latest,
  );
}

async function measureOpened(
  file: Blob,
  recording: OpenRecording,
  request: ReadRequest,
  onProgress: (progress: ReadProgress) => void,
): Promise<Reading> {
  if (request.want === 'film') await refuseTrimmed(file);
  const guessed = partOf(recording, request);
  const promised = await promisedFrames(recording, guessed);
  const part = { ...guessed, expectedFrames: promised ?? guessed.expectedFrames };
  const firstFrame = await framesBefore(recording.track, part.fromSeconds);
  const read = async (acceleration: 'no-preference' | 'prefer-software'): Promise<Reading> => {
    const common = { facts: recording.facts, firstFrame };
    if (request.want === 'gate') {
      const { result, ...told } = await measureFrames(
        recording,
        part,
        (scale) => lightMeasure(scale, part.expectedFrames),
        onProgress,
        acceleration,
      );
      return { kind: 'gate', light: result, ...common, ...told };
    }
    const { result, ...told } = await measureFrames(
      recording,
      part,
      (scale) => motionMeasure(scale, part.expectedFrames),
      onProgress,
      acceleration,
    );
    return { kind: 'film', motion: result, ...common, ...told };
  };
  try {
    return await read('no-preference');
  } catch (error) {
    const isKept =
      error instanceof ReadRefusedError && error.refusal.obstacle === 'planes-not-given';
    if (!isKept) throw error;
    // Some graphics chips keep what they decode; the processor gives it out.
    return await read('prefer-software');
  }
}

/**
 * Reads a recording frame by frame: the time of each and the light or the motion of its bands. Meant
 * for a worker. Memory stays within one decoded picture and the numbers, at any length.
 *
 * @throws {ReadRefusedError}
 */
export async function measureRecording(
  file: Blob,
  request: ReadRequest,
  onProgress: (progress: ReadProgress) => void,
): Promise<Reading> {
  const recording = await openRecording(file);
  try {
    return await measureOpened(file, recording, request, onProgress);
  } catch (error) {
    throw asReadRefused(error);
  } finally {
    recording.input.dispose();
  }
}
