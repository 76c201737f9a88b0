import type { StreamTargetChunk } from 'mediabunny';

/** First bytes of a file that may still be changed once the rest is written. */
const STILL_OPEN = 2 ** 16;
/** Bytes gathered before they are given to the browser, which keeps large ones outside memory. */
const PIECE = 2 ** 22;

/**
 * Gathers what a writer of files gives out into pieces that the browser keeps. Only the first 64 kB may
 * be written a second time, as a length that is known last; nothing is written to the reader’s disk.
 */
export class BlobWriter {
  readonly #open = new Uint8Array(STILL_OPEN);
  readonly #pieces: Blob[] = [];
  #waiting: Uint8Array<ArrayBuffer>[] = [];
  #waitingBytes = 0;
  #length = 0;

  readonly stream = new WritableStream<StreamTargetChunk>({
    write: ({ data, position }) => {
      this.#write(data, position);
    },
  });

  #write(given: Uint8Array<ArrayBuffer>, givenAt: number): void {
    let data = given;
    let position = givenAt;
    if (position < STILL_OPEN) {
      const part = data.subarray(0, STILL_OPEN - position);
      this.#open.set(part, position);
      this.#length = Math.max(this.#length, position + part.length);
      data = data.subarray(part.length);
      position += part.length;
    }
    if (data.length === 0) return;
    if (position !== this.#length) throw new RangeError('a file is written in order');
    this.#waiting.push(data.slice());
    this.#waitingBytes += data.length;
    this.#length += data.length;
    if (this.#waitingBytes >= PIECE) this.#keep();
  }

  #keep(): void {
    this.#pieces.push(new Blob(this.#waiting));
    this.#waiting = [];
    this.#waitingBytes = 0;
  }

  file(type: string): Blob {
    this.#keep();
    const open = this.#open.subarray(0, Math.min(this.#length, STILL_OPEN));
    return new Blob([open.slice(), ...this.#pieces], { type });
  }
}
