import type { VideoSample } from 'mediabunny';
import { BAND_COUNT, type BandLight } from '../../core/gate/band-light.ts';
import {
  gramAccumulator,
  NUMBERS_PER_FRAME,
  PICTURE_COLUMNS,
  PICTURE_ROWS,
  type BandMotion,
} from '../../core/file/band-motion.ts';
import { codeLevels, codeLight, rangeEnds, type CodeScale } from './code-light.ts';
import { DOUBLE, GrowingNumbers, SINGLE } from './growing-numbers.ts';
import { boxMeans, countBandCodes, lumaBitDepth, type LumaPlane } from './luma-plane.ts';
import { ReadRefusedError } from './read-refusals.ts';
import type { ColourTags } from './recording-facts.ts';

/** Takes the plane of luma of each frame in order, and gives what was wanted of them. */
export interface PictureMeasure<Result> {
  add(plane: LumaPlane): void;
  finish(frameSeconds: Float64Array<ArrayBuffer>): Result;
}

/** Light of twelve bands, from a count of the codes in each: exact sums, and clipping by the way. */
export function lightMeasure(scale: CodeScale, expectedFrames: number): PictureMeasure<BandLight> {
  const codes = 2 ** scale.bitDepth;
  const light = codeLight(scale);
  const counts = new Uint32Array(BAND_COUNT * codes);
  const all = new Float64Array(codes);
  const bands = new GrowingNumbers(DOUBLE, expectedFrames, BAND_COUNT);
  const means = new Float64Array(BAND_COUNT);
  return {
    add(plane) {
      counts.fill(0);
      countBandCodes(plane, BAND_COUNT, counts, codes);
      for (let band = 0; band < BAND_COUNT; band += 1) {
        let sum = 0;
        let samples = 0;
        for (let code = 0; code < codes; code += 1) {
          const count = counts[band * codes + code] ?? 0;
          if (count === 0) continue;
          sum += count * (light[code] ?? 0);
          samples += count;
          all[code] = (all[code] ?? 0) + count;
        }
        means[band] = sum / samples;
      }
      bands.add(means);
    },
    finish: (frameSeconds) => ({ frameSeconds, bands: bands.taken(), ...rangeEnds(all, scale) }),
  };
}

/** Motion of twelve bands, from small pictures of box means. */
export function motionMeasure(
  scale: CodeScale,
  expectedFrames: number,
): PictureMeasure<BandMotion> {
  const levels = codeLevels(scale);
  const accumulator = gramAccumulator();
  // Seven digits: the evidence asks for no more, and an hour takes 52 MB instead of 104.
  const gram = new GrowingNumbers(SINGLE, expectedFrames, NUMBERS_PER_FRAME);
  const picture = new Float64Array(PICTURE_COLUMNS * PICTURE_ROWS);
  // One list for all frames: a new one for each would pile up by the hundred thousand.
  const numbers = new Float64Array(NUMBERS_PER_FRAME);
  return {
    add(plane) {
      boxMeans(plane, PICTURE_COLUMNS, PICTURE_ROWS, levels, picture);
      gram.add(accumulator.add(picture, numbers));
    },
    finish: (frameSeconds) => ({ frameSeconds, gram: gram.taken() }),
  };
}

/** Copies the planes of one frame after the other into the same room. */
export class PlaneReader {
  #room = new Uint8Array();

  /** @throws {ReadRefusedError} where the browser keeps the planes to itself */
  async read(sample: VideoSample): Promise<LumaPlane> {
    const bitDepth = lumaBitDepth(sample.format);
    if (bitDepth === undefined) {
      throw new ReadRefusedError(
        'planes-not-given',
        `This browser gives the pictures of this recording as ${sample.format ?? 'something it keeps to itself'}, without a plane of brightness.`,
      );
    }
    const bytes = sample.allocationSize();
    if (this.#room.length < bytes) this.#room = new Uint8Array(bytes);
    const [luma] = await sample.copyTo(this.#room);
    if (luma === undefined) {
      throw new ReadRefusedError(
        'planes-not-given',
        'This browser gives no planes of its pictures.',
      );
    }
    const { width, height } = sample.visibleRect;
    return bitDepth === 8
      ? { samples: this.#room, offset: luma.offset, stride: luma.stride, width, height }
      : {
          samples: new Uint16Array(this.#room.buffer, 0, this.#room.length >> 1),
          offset: luma.offset >> 1,
          stride: luma.stride >> 1,
          width,
          height,
        };
  }
}

/** Scale of the codes of a decoded frame; the frame’s own tags go before those of the file. */
export function codeScaleOf(sample: VideoSample, tags: ColourTags): CodeScale {
  return {
    bitDepth: lumaBitDepth(sample.format) ?? 8,
    isFullRange: sample.colorSpace.fullRange ?? tags.isFullRange,
    transfer: sample.colorSpace.transfer ?? tags.transfer,
  };
}
