import { startReadingWorker } from './read-recording.ts';
import { readRefusal, type ReadRefusal } from './read/read-refusals.ts';
import type { RecordingFacts } from './read/recording-facts.ts';
import type { FramePicture, ReadingAnswer, ReadingTask } from './reading-messages.ts';

/** Thrown when a picture cannot be had; carries the sentence. */
export class PictureRefusedError extends Error {
  override readonly name = 'PictureRefusedError';
  readonly refusal: ReadRefusal;

  constructor(refusal: ReadRefusal) {
    super(refusal.sentence);
    this.refusal = refusal;
  }
}

/**
 * Small pictures of a recording, made in a worker: any camera frame for a strip, and kept frames one
 * after the other for a player. Close it when the page no longer shows them.
 */
export class RecordingPictures {
  readonly facts: RecordingFacts;
  readonly frameCount: number;
  readonly #line: WorkerLine;

  private constructor(line: WorkerLine, facts: RecordingFacts, frameCount: number) {
    this.#line = line;
    this.facts = facts;
    this.frameCount = frameCount;
  }

  /**
   * @param width  of the pictures, in columns as coded
   * @param frameSeconds  times of all camera frames, from a reading of the whole recording; found anew
   * from the file when left out
   * @throws {PictureRefusedError}
   */
  static async open(
    file: Blob,
    width: number,
    frameSeconds?: Float64Array,
  ): Promise<RecordingPictures> {
    const line = new WorkerLine();
    try {
      const answer = await line.ask({
        task: 'open-pictures',
        file,
        width,
        ...(frameSeconds === undefined ? {} : { frameSeconds }),
      });
      if (answer.answer !== 'pictures-open') throw new Error('the worker lost its place');
      return new RecordingPictures(line, answer.facts, answer.frameCount);
    } catch (error) {
      line.end();
      throw error;
    }
  }

  /**
   * The picture of one camera frame, as coded; undefined where there is no such frame. Close the bitmap
   * once it is drawn.
   *
   * @throws {PictureRefusedError}
   */
  async pictureOfFrame(cameraFrame: number): Promise<FramePicture | undefined> {
    const answer = await this.#line.ask({ task: 'picture', cameraFrame });
    return answer.answer === 'picture' ? answer.picture : undefined;
  }

  /**
   * Kept frames in order, decoded once each and only as fast as they are taken. One film at a time.
   *
   * @param cameraFrames  for each film frame the camera frame that stands for it, ascending
   * @throws {PictureRefusedError}
   */
  async *film(cameraFrames: ArrayLike<number>): AsyncGenerator<FramePicture, void, undefined> {
    await this.#line.ask({ task: 'start-film', cameraFrames: Float64Array.from(cameraFrames) });
    // One picture is on its way while the one before is shown.
    let coming = this.#line.ask({ task: 'next-picture' });
    for (;;) {
      const answer = await coming;
      if (answer.answer !== 'picture' || answer.picture === undefined) return;
      coming = this.#line.ask({ task: 'next-picture' });
      // Asked for whether or not it will be taken.
      coming.catch(() => undefined);
      yield answer.picture;
    }
  }

  close(): void {
    this.#line.end();
  }
}

interface Waiting {
  readonly resolve: (answer: ReadingAnswer) => void;
  readonly reject: (error: Error) => void;
}

/** A worker that answers in the order in which it was asked. */
class WorkerLine {
  readonly #worker = startReadingWorker();
  readonly #waiting: Waiting[] = [];
  #isEnded = false;

  constructor() {
    this.#worker.addEventListener('message', ({ data }: MessageEvent<ReadingAnswer>) => {
      const first = this.#waiting.shift();
      if (data.answer === 'refused') first?.reject(new PictureRefusedError(data.refusal));
      else first?.resolve(data);
    });
    this.#worker.addEventListener('error', () => {
      this.end();
    });
  }

  ask(task: ReadingTask): Promise<ReadingAnswer> {
    return new Promise((resolve, reject) => {
      if (this.#isEnded) {
        reject(new PictureRefusedError(readRefusal('stopped', 'The recording is closed.')));
        return;
      }
      this.#waiting.push({ resolve, reject });
      this.#worker.postMessage(task);
    });
  }

  end(): void {
    this.#isEnded = true;
    this.#worker.terminate();
    for (const { reject } of this.#waiting.splice(0)) {
      reject(new PictureRefusedError(readRefusal('stopped', 'The recording is closed.')));
    }
  }
}
