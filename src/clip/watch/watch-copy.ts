import type Fraction from 'fraction.js';
import {
  BlobSource,
  canEncodeVideo,
  EncodedPacketSink,
  Input,
  MP4,
  Mp4OutputFormat,
  Output,
  StreamTarget,
  VideoSample,
  VideoSampleSink,
  VideoSampleSource,
  WEBM,
  WebMOutputFormat,
} from 'mediabunny';
import { FramePictures } from '../read/frame-pictures.ts';
import { asReadRefused, type OpenRecording } from '../read/open-recording.ts';
import { freeStoreBytes, hasPrivateStore, PrivateFile, StoreFullError } from './private-file.ts';
import { sourcePlanes, writeTurnedPicture, type PlaneTurn } from './turned-planes.ts';

/** How a copy to watch is made. */
export interface WatchSettings {
  /** Name of the file in the browser’s store while it grows, from `privateFileName`. */
  readonly privateName: string;
  /** What has to be turned so that the picture is the right way round, as it is shown. */
  readonly turn: PlaneTurn;
  /** Part of the picture to keep, in columns and rows as coded; made even. The whole when left out. */
  readonly crop?: {
    readonly left: number;
    readonly top: number;
    readonly width: number;
    readonly height: number;
  };
  /** Bits a second of the copy. */
  readonly bitsPerSecond: number;
  /** Codings in order of preference; H.264, then VP9 where it is left out. */
  readonly codecs?: readonly WatchCodec[];
}

export type WatchCodec = 'avc' | 'vp9';

export interface WatchProgress {
  readonly filmFrames: number;
  readonly share: number;
}

/** Why there is no copy to watch. */
export interface WatchRefusal {
  readonly obstacle:
    | 'no-encoder'
    | 'store-full'
    | 'no-store'
    | 'frame-not-in-file'
    | 'planes-not-given'
    | 'not-as-asked'
    | 'recording'
    | 'stopped';
  readonly sentence: string;
  readonly advice: string;
}

/** A copy to watch, or the reason why there is none. */
export type WatchOutcome =
  | {
      readonly kind: 'made';
      /** Lies in the browser’s store until it is swept. */
      readonly file: File;
      readonly privateName: string;
      readonly extension: 'mp4' | 'webm';
      readonly codec: 'H.264' | 'VP9';
      /** Always 8: a copy to watch, not for the archive. */
      readonly bitDepth: 8;
      readonly frameCount: number;
      readonly totalBytes: number;
      /** The recording named no colour matrix; the copy says BT.709. */
      readonly isMatrixAssumed: boolean;
    }
  | { readonly kind: 'refused'; readonly refusal: WatchRefusal };

const COMMANDS = 'Make the copy to watch with the commands on this page.';
const KEY_EVERY_SECONDS = 2;
const WRITTEN_AT_ONCE = 2 ** 22;
/** What the container adds, and what a coder may overshoot by. */
const MARGIN = 1.25;

class WatchRefusedError extends Error {
  readonly refusal: WatchRefusal;

  constructor(obstacle: WatchRefusal['obstacle'], sentence: string, advice = COMMANDS) {
    super(sentence);
    this.refusal = { obstacle, sentence, advice };
  }
}

interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const even = (length: number): number => 2 * Math.floor(length / 2);

/** The part to keep, on even columns and rows inside the picture. */
export function keptArea(settings: WatchSettings, width: number, height: number): Area {
  const whole = { left: 0, top: 0, width, height };
  const { left, top, ...size } = settings.crop ?? whole;
  const x = even(Math.min(Math.max(left, 0), width - 2));
  const y = even(Math.min(Math.max(top, 0), height - 2));
  return {
    x,
    y,
    width: Math.max(2, even(Math.min(size.width, width - x))),
    height: Math.max(2, even(Math.min(size.height, height - y))),
  };
}

/** A turn of the picture as shown, as a turn of the planes as coded. */
export function codedTurn(turn: PlaneTurn, rotationDegrees: number): PlaneTurn {
  return rotationDegrees % 180 === 0
    ? turn
    : { isUpsideDown: turn.isLeftRightChanged, isLeftRightChanged: turn.isUpsideDown };
}

async function chooseCodec(
  area: Area,
  { bitsPerSecond: bitrate, codecs = ['avc', 'vp9'] }: WatchSettings,
): Promise<WatchCodec> {
  const { width, height } = area;
  for (const codec of codecs) {
    if (await canEncodeVideo(codec, { width, height, bitrate })) return codec;
  }
  throw new WatchRefusedError(
    'no-encoder',
    `This browser codes no pictures of ${width} × ${height} into a file.`,
  );
}

async function requireRoom(bytes: number): Promise<void> {
  if (!hasPrivateStore()) {
    throw new WatchRefusedError('no-store', 'This browser gives pages no room for files.');
  }
  const free = await freeStoreBytes();
  if (free !== undefined && free < bytes) {
    const megabytes = (count: number): string => Math.ceil(count / 1e6).toLocaleString('en');
    throw new WatchRefusedError(
      'store-full',
      `The copy needs about ${megabytes(bytes)} MB; this browser has ${megabytes(free)} MB left for this page.`,
      'Make room on the disk, or save a shorter part.',
    );
  }
}

/** Colour tags of a frame; what names no matrix is taken as BT.709. */
function tagsOf(
  sample: VideoSample,
  { facts }: OpenRecording,
): VideoColorSpaceInit & { isAssumed: boolean } {
  const { colour } = facts;
  const matrix = sample.colorSpace.matrix ?? colour.matrix;
  return {
    matrix: (matrix ?? 'bt709') as VideoMatrixCoefficients,
    primaries: (sample.colorSpace.primaries ?? colour.primaries ?? 'bt709') as VideoColorPrimaries,
    transfer: (sample.colorSpace.transfer ??
      colour.transfer ??
      'bt709') as VideoTransferCharacteristics,
    fullRange: sample.colorSpace.fullRange ?? colour.isFullRange,
    isAssumed: matrix === undefined,
  };
}

/** Turns decoded frames into frames for the coder, always in the same two rooms. */
class FrameTurner {
  readonly #turn: PlaneTurn;
  readonly #area: Area;
  readonly #recording: OpenRecording;
  #room = new Uint8Array();
  isMatrixAssumed = false;

  constructor(recording: OpenRecording, settings: WatchSettings, area: Area) {
    this.#recording = recording;
    this.#area = area;
    this.#turn = codedTurn(settings.turn, recording.facts.rotationDegrees);
  }

  async turned(sample: VideoSample, film: number, rate: number): Promise<VideoSample> {
    const { x, y, width, height } = this.#area;
    const { visibleRect } = sample;
    const rect = { x: visibleRect.left + x, y: visibleRect.top + y, width, height };
    const bytes = sample.allocationSize({ rect });
    if (this.#room.length < bytes) this.#room = new Uint8Array(bytes);
    const layout = await sample.copyTo(this.#room, { rect });
    const planes = sourcePlanes(this.#room, layout, sample.format, width, height);
    if (planes === undefined) {
      throw new WatchRefusedError(
        'planes-not-given',
        'This browser gives no planes of its pictures.',
      );
    }
    const picture = new Uint8Array((width * height * 3) / 2);
    writeTurnedPicture(planes, this.#turn, picture, width, height);
    const { isAssumed, ...colorSpace } = tagsOf(sample, this.#recording);
    this.isMatrixAssumed ||= isAssumed;
    return new VideoSample(picture, {
      format: 'I420',
      codedWidth: width,
      codedHeight: height,
      timestamp: film / rate,
      duration: 1 / rate,
      colorSpace,
    });
  }
}

/** Counts the frames of the finished file and looks at the time of each. */
async function checkWatchCopy(file: Blob, count: number, rate: number): Promise<void> {
  const input = new Input({ formats: [MP4, WEBM], source: new BlobSource(file) });
  try {
    const track = await input.getPrimaryVideoTrack();
    let found = 0;
    let worst = 0;
    if (track !== null) {
      const packets = new EncodedPacketSink(track).packets(undefined, undefined, {
        metadataOnly: true,
      });
      for await (const { timestamp } of packets) {
        worst = Math.max(worst, Math.abs(timestamp - found / rate));
        found += 1;
      }
    }
    // Files of one kind round their times to a thousandth of a second.
    if (found !== count || worst > 0.0006) {
      throw new WatchRefusedError(
        'not-as-asked',
        `The copy was read again, and it holds ${found} of ${count} pictures, up to ${(worst * 1000).toFixed(1)} ms away from their times.`,
      );
    }
  } finally {
    input.dispose();
  }
}

async function encode(
  pictures: FramePictures,
  cameraFrames: Float64Array,
  filmFps: Fraction,
  settings: WatchSettings,
  onProgress: (progress: WatchProgress) => void,
): Promise<WatchOutcome> {
  const { recording } = pictures;
  const { facts, track } = recording;
  const beyond = cameraFrames.find((frame) => !(frame >= 0 && frame < pictures.frameCount));
  if (beyond !== undefined || cameraFrames.length === 0) {
    throw new WatchRefusedError(
      'frame-not-in-file',
      cameraFrames.length === 0
        ? 'The list names no frame.'
        : `The list names camera frame ${beyond}; this file ends with frame ${pictures.frameCount - 1}.`,
      'Read the recording again, and save with the list of that reading.',
    );
  }
  const rate = filmFps.valueOf();
  const area = keptArea(settings, facts.codedWidth, facts.codedHeight);
  const codec = await chooseCodec(area, settings);
  await requireRoom(((cameraFrames.length / rate) * settings.bitsPerSecond * MARGIN) / 8);
  const stored = await PrivateFile.make(settings.privateName);
  const output = new Output({
    format: codec === 'avc' ? new Mp4OutputFormat({ fastStart: false }) : new WebMOutputFormat(),
    target: new StreamTarget(stored.stream, { chunked: true, chunkSize: WRITTEN_AT_ONCE }),
  });
  try {
    const source = new VideoSampleSource({
      codec,
      bitrate: settings.bitsPerSecond,
      keyFrameInterval: KEY_EVERY_SECONDS,
      latencyMode: 'quality',
    });
    output.addVideoTrack(source, { rotation: facts.rotationDegrees, frameRate: rate });
    await output.start();
    const turner = new FrameTurner(recording, settings, area);
    let film = 0;
    const times = Array.from(cameraFrames, (cameraFrame) => pictures.momentWithin(cameraFrame));
    for await (const sample of new VideoSampleSink(track).samplesAtTimestamps(times)) {
      if (sample === null)
        throw new WatchRefusedError(
          'frame-not-in-file',
          `Film frame ${film} could not be decoded.`,
        );
      let turned: VideoSample | undefined;
      try {
        turned = await turner.turned(sample, film, rate);
        await source.add(turned);
      } finally {
        turned?.close();
        sample.close();
      }
      film += 1;
      onProgress({ filmFrames: film, share: film / cameraFrames.length });
    }
    await output.finalize();
    const file = await stored.finish();
    await checkWatchCopy(file, cameraFrames.length, rate);
    return {
      kind: 'made',
      file,
      privateName: settings.privateName,
      extension: codec === 'avc' ? 'mp4' : 'webm',
      codec: codec === 'avc' ? 'H.264' : 'VP9',
      bitDepth: 8,
      frameCount: cameraFrames.length,
      totalBytes: file.size,
      isMatrixAssumed: turner.isMatrixAssumed,
    };
  } catch (error) {
    await output.cancel().catch(() => undefined);
    await stored.remove();
    throw error;
  }
}

function asWatchRefusal(error: unknown): WatchRefusal {
  if (error instanceof WatchRefusedError) return error.refusal;
  const isFull =
    error instanceof StoreFullError ||
    (error instanceof DOMException && error.name === 'QuotaExceededError');
  if (isFull) {
    return {
      obstacle: 'store-full',
      sentence: 'The room that this browser gives the page is full; what was written is removed.',
      advice: 'Make room on the disk, or save a shorter part.',
    };
  }
  const { sentence, advice } = asReadRefused(error).refusal;
  return { obstacle: 'recording', sentence, advice };
}

/**
 * Codes the kept frames anew into a copy to watch: 8 bits, at the film’s rate, from the planes of the
 * decoded pictures, never by way of colours on a canvas. Meant for a worker. On every way out but a
 * finished copy nothing is left in the browser’s store.
 *
 * @param cameraFrames  for each film frame the camera frame that stands for it
 * @param filmFps  exact rate of the film, frames/s
 */
export async function makeWatchCopy(
  file: Blob,
  cameraFrames: Float64Array,
  filmFps: Fraction,
  settings: WatchSettings,
  onProgress: (progress: WatchProgress) => void,
): Promise<WatchOutcome> {
  let pictures: FramePictures | undefined;
  try {
    pictures = await FramePictures.open(file, 1);
    return await encode(pictures, cameraFrames, filmFps, settings, onProgress);
  } catch (error) {
    return { kind: 'refused', refusal: asWatchRefusal(error) };
  } finally {
    await pictures?.close();
  }
}
