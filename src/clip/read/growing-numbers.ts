/**
 * Numbers in double precision that grow frame by frame. The room is laid out for the expected length,
 * so that a long recording is not copied while it grows.
 */
export class GrowingNumbers {
  readonly #perFrame: number;
  #numbers: Float64Array<ArrayBuffer>;
  #frames = 0;

  constructor(expectedFrames: number, perFrame = 1) {
    this.#perFrame = perFrame;
    this.#numbers = new Float64Array((Math.max(0, expectedFrames) + 64) * perFrame);
  }

  add(numbers: ArrayLike<number>): void {
    const at = this.#frames * this.#perFrame;
    if (at + this.#perFrame > this.#numbers.length) {
      const larger = new Float64Array(Math.ceil(this.#numbers.length * 1.25) + this.#perFrame);
      larger.set(this.#numbers);
      this.#numbers = larger;
    }
    this.#numbers.set(numbers, at);
    this.#frames += 1;
  }

  /** The numbers of all frames, in a buffer of their own that may be handed to another thread. */
  taken(): Float64Array<ArrayBuffer> {
    const { buffer } = this.#numbers;
    const length = this.#frames * this.#perFrame;
    this.#numbers = new Float64Array();
    // Shortened in place where the browser can: no second copy of a long recording.
    return typeof buffer.transfer === 'function'
      ? new Float64Array(buffer.transfer(8 * length))
      : new Float64Array(buffer.slice(0, 8 * length));
  }
}
