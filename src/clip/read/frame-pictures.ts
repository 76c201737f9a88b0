import { EncodedPacketSink, VideoSampleSink, type VideoSample } from 'mediabunny';
import type { FramePicture } from '../reading-messages.ts';
import { openRecording, type OpenRecording } from './open-recording.ts';

/** Times of all camera frames in the order shown, s, from the index of the file. */
async function listFrameSeconds({ track }: OpenRecording): Promise<Float64Array> {
  const times: number[] = [];
  const packets = new EncodedPacketSink(track).packets(undefined, undefined, {
    metadataOnly: true,
  });
  for await (const packet of packets) times.push(packet.timestamp);
  return Float64Array.from(times).sort();
}

/** Small pictures of single camera frames, and of kept frames one after the other. */
export class FramePictures {
  readonly recording: OpenRecording;
  readonly #frameSeconds: Float64Array;
  readonly #sink: VideoSampleSink;
  readonly #width: number;
  #film: AsyncGenerator<VideoSample | null, void, unknown> | undefined;
  #cameraFrames: Float64Array = new Float64Array();
  #filmFrame = 0;

  private constructor(recording: OpenRecording, frameSeconds: Float64Array, width: number) {
    this.recording = recording;
    this.#frameSeconds = frameSeconds;
    this.#sink = new VideoSampleSink(recording.track);
    this.#width = width;
  }

  /**
   * @param width  of the small pictures, in pixels as coded
   * @throws {ReadRefusedError}
   */
  static async open(
    file: Blob,
    width: number,
    frameSeconds?: Float64Array,
  ): Promise<FramePictures> {
    const recording = await openRecording(file);
    return new FramePictures(recording, frameSeconds ?? (await listFrameSeconds(recording)), width);
  }

  get frameCount(): number {
    return this.#frameSeconds.length;
  }

  /** A moment within a frame, s, so that rounding does not give the one before. */
  momentWithin(cameraFrame: number): number {
    const begin = this.#frameSeconds[cameraFrame] ?? Number.NaN;
    const next = this.#frameSeconds[cameraFrame + 1] ?? begin + 1 / this.recording.facts.cameraFps;
    return begin + (next - begin) / 4;
  }

  async #small(sample: VideoSample, cameraFrame: number): Promise<FramePicture> {
    const frame = sample.toVideoFrame();
    try {
      const { width, height } = sample.visibleRect;
      const resizeWidth = Math.max(1, Math.min(width, Math.round(this.#width)));
      const bitmap = await createImageBitmap(frame, {
        resizeWidth,
        resizeHeight: Math.max(1, Math.round((height * resizeWidth) / width)),
        resizeQuality: 'medium',
      });
      return { cameraFrame, bitmap };
    } finally {
      frame.close();
      sample.close();
    }
  }

  /** The picture of one camera frame; undefined where the recording has no such frame. */
  async picture(cameraFrame: number): Promise<FramePicture | undefined> {
    if (!(cameraFrame >= 0 && cameraFrame < this.frameCount)) return undefined;
    const sample = await this.#sink.getSample(this.momentWithin(cameraFrame));
    return sample === null ? undefined : this.#small(sample, cameraFrame);
  }

  /** Begins to give the kept frames one after the other, each decoded once. */
  async startFilm(cameraFrames: Float64Array): Promise<void> {
    await this.#film?.return();
    this.#cameraFrames = cameraFrames;
    this.#filmFrame = 0;
    this.#film = this.#sink.samplesAtTimestamps(
      Array.from(cameraFrames, (cameraFrame) => this.momentWithin(cameraFrame)),
    );
  }

  /** The picture of the next film frame; undefined after the last. */
  async next(): Promise<FramePicture | undefined> {
    const step = await this.#film?.next();
    if (step === undefined || step.done === true || step.value === null) return undefined;
    const cameraFrame = this.#cameraFrames[this.#filmFrame] ?? Number.NaN;
    this.#filmFrame += 1;
    return this.#small(step.value, cameraFrame);
  }

  async close(): Promise<void> {
    await this.#film?.return();
    this.recording.input.dispose();
  }
}
