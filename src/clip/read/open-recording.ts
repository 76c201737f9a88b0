import {
  BlobSource,
  EncodedPacketSink,
  Input,
  InputDisposedError,
  MATROSKA,
  MP4,
  MPEG_TS,
  QTFF,
  UnsupportedInputFormatError,
  WEBM,
  type InputVideoTrack,
} from 'mediabunny';
import { readIndex } from '../save/read-index.ts';
import { SaveRefusedError } from '../save/save-refusals.ts';
import { bitmapLetters, codecName, containerName, otherFileName } from './codec-names.ts';
import { ReadRefusedError } from './read-refusals.ts';
import type { ColourTags, RecordingFacts } from './recording-facts.ts';

/** A recording whose index has been read. */
export interface OpenRecording {
  readonly input: Input;
  readonly track: InputVideoTrack;
  readonly facts: RecordingFacts;
}

/** Larger pictures than any camera of the trade records; a hostile file may state them. */
const MOST_PIXELS = 8192 * 4608;
/** Frames from whose steps the camera rate is told. */
const RATE_FRAMES = 64;

const undefinedIfNone = (text: string | null | undefined): string | undefined => text ?? undefined;

export function colourTagsOf(colour: VideoColorSpaceInit): ColourTags {
  return {
    matrix: undefinedIfNone(colour.matrix),
    primaries: undefinedIfNone(colour.primaries),
    transfer: undefinedIfNone(colour.transfer),
    isFullRange: colour.fullRange ?? false,
    isRangeTagged: typeof colour.fullRange === 'boolean',
  };
}

function openInput(file: Blob): Input {
  return new Input({
    formats: [MP4, QTFF, MATROSKA, WEBM, MPEG_TS],
    source: new BlobSource(file),
  });
}

async function refuseUnknown(file: Blob): Promise<never> {
  const beginning = new Uint8Array(await file.slice(0, 64).arrayBuffer());
  const container = containerName(beginning);
  if (container !== undefined) {
    throw new ReadRefusedError(
      'container-not-read',
      `This file is ${container}, which browsers do not read.`,
    );
  }
  if (beginning.every((byte) => byte === 0)) {
    throw new ReadRefusedError(
      'damaged',
      'This file begins with nothing but zeros: it was never filled.',
    );
  }
  const other = otherFileName(beginning);
  if (other !== undefined) throw new ReadRefusedError('not-a-recording', `This file is ${other}.`);
  const letters = String.fromCharCode(...beginning.subarray(4, 8));
  if (['ftyp', 'moov', 'mdat', 'wide', 'free'].includes(letters)) {
    throw new ReadRefusedError(
      'cut-off',
      'This file has no index: the recording was cut off before the camera wrote it.',
    );
  }
  throw new ReadRefusedError('not-a-recording', 'This file is no video recording.');
}

async function videoTrackOf(file: Blob, input: Input): Promise<InputVideoTrack> {
  const track = await input.getPrimaryVideoTrack();
  if (track !== null) return track;
  const sound = await input.getPrimaryAudioTrack();
  if (sound !== null) {
    throw new ReadRefusedError('no-pictures', 'This file holds sound and no pictures.');
  }
  if ((await input.getFormat()).name === MPEG_TS.name) {
    throw new ReadRefusedError(
      'codec-not-decoded',
      'The pictures of this transport stream are coded neither as H.264 nor as HEVC, but in another way, most often MPEG-2, which browsers do not decode.',
    );
  }
  const { size } = file;
  throw new ReadRefusedError(
    'cut-off',
    `There are no pictures in this file of ${size.toLocaleString('en')} bytes: it was cut off before its index was written.`,
  );
}

/** Letters by which a file names a coding. */
export function lettersOf(internal: string | number | Uint8Array | null): string {
  if (internal instanceof Uint8Array) return String.fromCharCode(...internal);
  // A transport stream numbers its codings.
  if (internal === 1 || internal === 2) return internal === 1 ? 'mpg1' : 'mpeg2';
  return internal === null ? '' : String(internal);
}

/** Bytes at the beginning of a file in which its tracks are described. */
const DESCRIBED_WITHIN = 65_536;

/** Letters of the coding of the pictures. */
async function pictureLetters(file: Blob, track: InputVideoTrack): Promise<string> {
  const letters = lettersOf(await track.getInternalCodecId());
  if (!letters.startsWith('V_MS/VFW')) return letters;
  const beginning = new Uint8Array(await file.slice(0, DESCRIBED_WITHIN).arrayBuffer());
  return bitmapLetters(beginning) ?? letters;
}

async function requireDecodable(file: Blob, track: InputVideoTrack): Promise<string> {
  const codec = await track.getCodec();
  const name = codecName(codec ?? (await pictureLetters(file, track)));
  if (codec === null || !(await track.canDecode())) {
    throw new ReadRefusedError(
      'codec-not-decoded',
      `This recording is coded as ${name}, which this browser does not decode.`,
    );
  }
  return name;
}

/** Times of the first frames in the order shown, s. */
async function firstTimes(track: InputVideoTrack): Promise<readonly number[]> {
  const times: number[] = [];
  const packets = new EncodedPacketSink(track).packets(undefined, undefined, {
    metadataOnly: true,
  });
  for await (const packet of packets) {
    times.push(packet.timestamp);
    if (times.length === RATE_FRAMES) break;
  }
  return times.sort((a, b) => a - b);
}

function middleStep(times: readonly number[]): number {
  // The last ones shown may still lack frames between them that are stored later.
  const known = times.slice(0, Math.max(2, times.length - 8));
  const steps = known
    .slice(1)
    .map((seconds, at) => seconds - (known[at] ?? 0))
    .filter((step) => step > 0)
    .sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? Number.NaN;
}

async function factsOf(file: Blob, input: Input, track: InputVideoTrack): Promise<RecordingFacts> {
  const codedWidth = await track.getCodedWidth();
  const codedHeight = await track.getCodedHeight();
  if (!(codedWidth > 0 && codedHeight > 0)) {
    throw new ReadRefusedError(
      'damaged',
      'The index of this file is damaged: it states pictures without width or height.',
    );
  }
  if (codedWidth * codedHeight > MOST_PIXELS) {
    throw new ReadRefusedError(
      'picture-too-large',
      `The pictures of this file are said to be ${codedWidth} × ${codedHeight}, more than can be read here.`,
    );
  }
  const codec = await requireDecodable(file, track);
  const times = await firstTimes(track);
  const [firstSeconds] = times;
  if (firstSeconds === undefined) {
    throw new ReadRefusedError(
      'cut-off',
      'There is not one picture in this file: it was cut off at its beginning.',
    );
  }
  const step = middleStep(times);
  // What the index states; a file without a stated length is read to its last packet.
  const stated = await track.getDurationFromMetadata();
  const end = stated ?? (await track.computeDuration({ metadataOnly: true }));
  const seconds = Math.max(end - firstSeconds, 0);
  return {
    container: (await input.getFormat()).name,
    codec,
    codecParameters: undefinedIfNone(await track.getCodecParameterString()),
    codedWidth,
    codedHeight,
    rotationDegrees: await track.getRotation(),
    colour: colourTagsOf(await track.getColorSpace()),
    firstSeconds,
    seconds,
    expectedFrames: Number.isFinite(step) ? Math.max(1, Math.round(seconds / step)) : times.length,
    cameraFps: 1 / step,
    hasSound: (await input.getPrimaryAudioTrack()) !== null,
    fileBytes: file.size,
  };
}

/** What was thrown while a file was read, as a refusal; refusals stay as they are. */
export function asReadRefused(error: unknown, atSeconds?: number): ReadRefusedError {
  if (error instanceof ReadRefusedError) return error;
  if (error instanceof InputDisposedError) {
    return new ReadRefusedError('stopped', 'Reading was stopped.');
  }
  if (error instanceof DOMException && ['NotReadableError', 'NotFoundError'].includes(error.name)) {
    return new ReadRefusedError(
      'unreadable',
      'This file can no longer be read: it was changed, or its card or drive was taken out.',
      atSeconds,
    );
  }
  const where = atSeconds === undefined ? '' : ` ${atSeconds.toFixed(2)} s from its beginning`;
  return new ReadRefusedError('damaged', `This recording is damaged${where}.`, atSeconds);
}

/** Refuses a file whose pictures are locked with a key. */
async function refuseProtected(file: Blob): Promise<void> {
  try {
    await readIndex(file);
  } catch (error) {
    if (!(error instanceof SaveRefusedError) || error.refusal.obstacle !== 'encrypted') return;
    throw new ReadRefusedError('protected', error.refusal.sentence);
  }
}

/**
 * Opens a recording and reads what its index says. Close `input` with `dispose()` in every case.
 *
 * @throws {ReadRefusedError} says why the file cannot be read
 */
export async function openRecording(file: Blob): Promise<OpenRecording> {
  if (file.size === 0) throw new ReadRefusedError('empty', 'This file is empty.');
  if (typeof VideoDecoder === 'undefined') {
    throw new ReadRefusedError(
      'browser-too-old',
      'This browser has no decoder that a page may use.',
    );
  }
  const input = openInput(file);
  try {
    const track = await videoTrackOf(file, input);
    return { input, track, facts: await factsOf(file, input, track) };
  } catch (error) {
    input.dispose();
    if (error instanceof UnsupportedInputFormatError) return await refuseUnknown(file);
    await refuseProtected(file);
    throw asReadRefused(error);
  }
}
