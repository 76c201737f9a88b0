/** Numbers in single or double precision. */
type Numbers = Float64Array<ArrayBuffer> | Float32Array<ArrayBuffer>;

/** How a list of numbers is kept: a list of so many zeros, or one that a buffer holds. */
type Precision<List extends Numbers> = (room: number | ArrayBuffer, length?: number) => List;

/** Fifteen digits. */
export const DOUBLE: Precision<Float64Array<ArrayBuffer>> = (room, length) =>
  typeof room === 'number' ? new Float64Array(room) : new Float64Array(room, 0, length);

/** Seven digits, in half of the room. */
export const SINGLE: Precision<Float32Array<ArrayBuffer>> = (room, length) =>
  typeof room === 'number' ? new Float32Array(room) : new Float32Array(room, 0, length);

/**
 * Numbers that grow frame by frame. The room is laid out for the expected length, so that a long
 * recording is not copied while it grows.
 */
export class GrowingNumbers<List extends Numbers> {
  readonly #precision: Precision<List>;
  readonly #perFrame: number;
  #numbers: List;
  #frames = 0;

  constructor(precision: Precision<List>, expectedFrames: number, perFrame = 1) {
    this.#precision = precision;
    this.#perFrame = perFrame;
    this.#numbers = precision((Math.max(0, expectedFrames) + 64) * perFrame);
  }

  add(numbers: ArrayLike<number>): void {
    const at = this.#frames * this.#perFrame;
    if (at + this.#perFrame > this.#numbers.length) {
      const length = Math.ceil(this.#numbers.length * 1.25) + this.#perFrame;
      const larger = this.#precision(length);
      larger.set(this.#numbers);
      this.#numbers = larger;
    }
    this.#numbers.set(numbers, at);
    this.#frames += 1;
  }

  /**
   * The numbers of all frames, as a view of their buffer, which may be handed to another thread. The
   * buffer is a little longer: cutting it would take a second one beside it, 52 MB for an hour.
   */
  taken(): List {
    const { buffer } = this.#numbers;
    this.#numbers = this.#precision(0);
    return this.#precision(buffer, this.#frames * this.#perFrame);
  }
}
