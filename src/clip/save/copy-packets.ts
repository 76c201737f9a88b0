import type Fraction from 'fraction.js';
import {
  BlobSource,
  EncodedPacketSink,
  EncodedVideoPacketSource,
  Input,
  MATROSKA,
  MovOutputFormat,
  Mp4OutputFormat,
  Output,
  StreamTarget,
  UnsupportedInputFormatError,
  WEBM,
  type EncodedPacket,
  type InputVideoTrack,
  type VideoCodec,
} from 'mediabunny';
import { refusalIn } from './as-refused.ts';
import { BlobWriter } from './blob-writer.ts';
import type { SavedFile } from './check-saved.ts';
import { isSameBytes, readAvcDescription, readHevcDescription } from './parameter-sets.ts';
import { AloneProof } from './prove-alone.ts';
import { readIndex } from './read-index.ts';
import type { SavedCopy } from './save-copy.ts';
import { SaveRefusedError } from './save-refusals.ts';
import { ruleByDefinition, type StandAloneRule } from './stands-alone.ts';

/** Pictures of a saved file that are compared with the recording, spread over its length. */
const COMPARED = 24;

interface Progress {
  readonly framesRead: number;
  readonly share: number;
}

function ruleOf(codec: VideoCodec | null, description: Uint8Array | undefined): StandAloneRule {
  if (codec === 'avc') {
    return { codec: 'h264', description: description && readAvcDescription(description) };
  }
  if (codec === 'hevc') {
    return { codec: 'hevc', description: description && readHevcDescription(description) };
  }
  const proRes = codec === 'prores' ? ruleByDefinition('apch') : undefined;
  if (proRes !== undefined) return proRes;
  throw new SaveRefusedError(
    'unknown-codec',
    'Pictures of this coding can be copied out of MP4 and MOV only, not out of this Matroska file.',
  );
}

function bytesOf(source: AllowSharedBufferSource | undefined): Uint8Array | undefined {
  if (source === undefined) return undefined;
  return ArrayBuffer.isView(source)
    ? new Uint8Array(source.buffer, source.byteOffset, source.byteLength)
    : new Uint8Array(source);
}

/** Times of all packets; refuses marks and orders that speak against standing alone. */
async function packetSeconds(track: InputVideoTrack): Promise<Float64Array> {
  const seconds: number[] = [];
  let alone = 0;
  let isReordered = false;
  const packets = new EncodedPacketSink(track).packets(undefined, undefined, {
    metadataOnly: true,
  });
  for await (const { timestamp, type } of packets) {
    isReordered ||= timestamp <= (seconds.at(-1) ?? Number.NEGATIVE_INFINITY);
    seconds.push(timestamp);
    if (type === 'key') alone += 1;
  }
  if (alone !== seconds.length) {
    throw new SaveRefusedError(
      'few-stand-alone',
      `Only ${alone} of the ${seconds.length} pictures of this recording stand alone; the others hold just what changed since their neighbours.`,
    );
  }
  if (isReordered) {
    throw new SaveRefusedError(
      'reordered',
      'The pictures of this recording are stored in another order than they are shown in.',
    );
  }
  return Float64Array.from(seconds);
}

async function packetAt(
  sink: EncodedPacketSink,
  seconds: Float64Array,
  cameraFrame: number,
): Promise<EncodedPacket> {
  const time = seconds[cameraFrame];
  const packet = time === undefined ? null : await sink.getPacket(time);
  if (packet === null || packet.timestamp !== time) {
    throw new SaveRefusedError(
      'frame-not-in-file',
      `The list names camera frame ${cameraFrame}; this file ends with frame ${seconds.length - 1}.`,
    );
  }
  return packet;
}

async function checkCopied(
  saved: Blob,
  sink: EncodedPacketSink,
  seconds: Float64Array,
  cameraFrames: ArrayLike<number>,
  filmFps: Fraction,
): Promise<SavedFile> {
  const wrong = (what: string): SaveRefusedError =>
    new SaveRefusedError('changed-while-saving', `The saved file was read again, and ${what}.`);
  const { table } = await readIndex(saved);
  const count = cameraFrames.length;
  if (table.sampleCount !== count)
    throw wrong(`it holds ${table.sampleCount} pictures, not ${count}`);
  const perFrame = (table.ticksPerSecond * Number(filmFps.d)) / Number(filmFps.n);
  if (table.decodeTicks.some((ticks, film) => ticks !== film * perFrame)) {
    throw wrong('its pictures are not at the rate of the film');
  }
  const steps = Math.min(COMPARED, count);
  for (let at = 0; at < steps; at += 1) {
    const film = Math.round((at * (count - 1)) / Math.max(1, steps - 1));
    const from = table.offsets[film] ?? 0;
    const copied = new Uint8Array(
      await saved.slice(from, from + (table.sizes[film] ?? 0)).arrayBuffer(),
    );
    const original = await packetAt(sink, seconds, cameraFrames[film] ?? Number.NaN);
    if (!isSameBytes(copied, original.data))
      throw wrong(`film frame ${film} differs from the recording`);
  }
  return {
    frameCount: count,
    seconds: count / filmFps.valueOf(),
    totalBytes: saved.size,
    comparedCount: steps,
  };
}

async function copyOpened(
  input: Input,
  cameraFrames: ArrayLike<number>,
  filmFps: Fraction,
  onProgress: (progress: Progress) => void,
): Promise<SavedCopy> {
  if (cameraFrames.length === 0)
    throw new SaveRefusedError('nothing-kept', 'The list names no frame.');
  const track = await input.getPrimaryVideoTrack();
  if (track === null) {
    throw new SaveRefusedError('no-picture-track', 'There are no pictures in this file.');
  }
  const codec = await track.getCodec();
  const decoderConfig = await track.getDecoderConfig();
  const rule = ruleOf(codec, bytesOf(decoderConfig?.description));
  if (codec === null || decoderConfig === null) {
    throw new SaveRefusedError(
      'parameter-sets',
      'This file does not say how its pictures are decoded.',
    );
  }
  const seconds = await packetSeconds(track);
  const sink = new EncodedPacketSink(track);
  const writer = new BlobWriter();
  const isProRes = codec === 'prores';
  const output = new Output({
    format: isProRes
      ? new MovOutputFormat({ fastStart: false })
      : new Mp4OutputFormat({ fastStart: false }),
    target: new StreamTarget(writer.stream),
  });
  const source = new EncodedVideoPacketSource(codec);
  const rate = filmFps.valueOf();
  output.addVideoTrack(source, {
    rotation: await track.getRotation(),
    frameRate: rate,
    hasOnlyKeyPackets: true,
  });
  await output.start();
  const proof = new AloneProof(rule);
  for (let film = 0; film < cameraFrames.length; film += 1) {
    const cameraFrame = cameraFrames[film] ?? Number.NaN;
    const packet = await packetAt(sink, seconds, cameraFrame);
    proof.add(cameraFrame, packet.data);
    await source.add(
      packet.clone({ timestamp: film / rate, duration: 1 / rate, sequenceNumber: film }),
      { decoderConfig },
    );
    onProgress({ framesRead: film + 1, share: (film + 1) / cameraFrames.length });
  }
  await output.finalize();
  const file = writer.file(isProRes ? 'video/quicktime' : 'video/mp4');
  const checked = await checkCopied(file, sink, seconds, cameraFrames, filmFps);
  return {
    kind: 'saved',
    file,
    extension: isProRes ? 'mov' : 'mp4',
    checked,
    leavesSoundOut: (await input.getPrimaryAudioTrack()) !== null,
  };
}

/**
 * Makes a film file of a Matroska recording in which every picture stands alone: its own coded
 * pictures, byte for byte, in MP4 (H.264, HEVC) or MOV (ProRes), at the film’s rate.
 */
export async function copyPackets(
  file: Blob,
  cameraFrames: ArrayLike<number>,
  filmFps: Fraction,
  onProgress: (progress: Progress) => void = () => undefined,
): Promise<SavedCopy> {
  const input = new Input({ formats: [MATROSKA, WEBM], source: new BlobSource(file) });
  try {
    return await copyOpened(input, cameraFrames, filmFps, onProgress);
  } catch (error) {
    if (error instanceof UnsupportedInputFormatError) {
      return refusalIn(
        new SaveRefusedError('not-mp4-or-mov', 'This file is neither MP4 nor MOV nor Matroska.'),
      );
    }
    return refusalIn(error);
  } finally {
    input.dispose();
  }
}
