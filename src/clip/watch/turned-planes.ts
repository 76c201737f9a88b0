// Decoded pictures as 4:2:0 of 8 bits, turned and cut to size on the way. Codes are never turned into
// colours and back, so range and tags stay what they were.

/** One plane as the decoder laid it out. */
export interface SourcePlane {
  readonly samples: Uint8Array | Uint16Array;
  readonly offset: number;
  readonly stride: number;
  /** Entries from one sample of this plane to the next; 2 where two planes are interleaved. */
  readonly step: 1 | 2;
  readonly width: number;
  readonly height: number;
  /** Bits beyond 8. */
  readonly extraBits: number;
}

/** Ways to turn a plane as coded. */
export interface PlaneTurn {
  readonly isUpsideDown: boolean;
  readonly isLeftRightChanged: boolean;
}

/** How many source samples make one of the result, each way: 1, or 2 where chroma is finer than 4:2:0. */
interface Thinning {
  readonly columns: 1 | 2;
  readonly rows: 1 | 2;
}

/**
 * Writes a plane of 8 bits, turned; several source samples become their mean, to the nearest code.
 *
 * @param into  receives width × height codes from `at` on, without gaps between rows
 */
export function writeTurnedPlane(
  source: SourcePlane,
  turn: PlaneTurn,
  into: Uint8Array,
  at: number,
  width: number,
  height: number,
): void {
  const thinning: Thinning = {
    columns: source.width >= 2 * width ? 2 : 1,
    rows: source.height >= 2 * height ? 2 : 1,
  };
  const { samples, step, stride } = source;
  const isPlain =
    step === 1 && source.extraBits === 0 && thinning.columns === 1 && thinning.rows === 1;
  const divisor = 2 ** source.extraBits * thinning.columns * thinning.rows;
  const half = divisor / 2;
  const across = step * thinning.columns;
  for (let row = 0; row < height; row += 1) {
    const from = source.offset + row * thinning.rows * stride;
    const target = at + (turn.isUpsideDown ? height - 1 - row : row) * width;
    if (isPlain && !turn.isLeftRightChanged) {
      into.set(samples.subarray(from, from + width), target);
      continue;
    }
    for (let column = 0; column < width; column += 1) {
      const place = from + column * across;
      let sum = samples[place] ?? 0;
      if (thinning.columns === 2) sum += samples[place + step] ?? 0;
      if (thinning.rows === 2) {
        sum += samples[place + stride] ?? 0;
        if (thinning.columns === 2) sum += samples[place + stride + step] ?? 0;
      }
      const code = divisor === 1 ? sum : Math.min(255, Math.floor((sum + half) / divisor));
      into[target + (turn.isLeftRightChanged ? width - 1 - column : column)] = code;
    }
  }
}

/** Planes of a decoded picture by the decoder’s name of the layout; undefined for layouts without planes. */
export function sourcePlanes(
  bytes: Uint8Array,
  layout: readonly { readonly offset: number; readonly stride: number }[],
  format: string | null,
  width: number,
  height: number,
): readonly [SourcePlane, SourcePlane, SourcePlane] | undefined {
  const match = /^(?:NV12|I4(20|22|44)A?(?:P(10|12))?)$/u.exec(format ?? '');
  if (match === null) return undefined;
  const extraBits = Number(match[2] ?? 8) - 8;
  const isWide = extraBits > 0;
  const samples = isWide
    ? new Uint16Array(bytes.buffer, bytes.byteOffset, bytes.length >> 1)
    : bytes;
  const chroma = match[1] ?? '20';
  const plane = (index: number, shift: number, step: 1 | 2): SourcePlane => {
    const { offset = 0, stride = 0 } = layout[index] ?? {};
    const isChroma = index > 0;
    return {
      samples,
      offset: (isWide ? offset >> 1 : offset) + shift,
      stride: isWide ? stride >> 1 : stride,
      step,
      width: isChroma && chroma !== '44' ? (width + 1) >> 1 : width,
      height: isChroma && chroma === '20' ? (height + 1) >> 1 : height,
      extraBits,
    };
  };
  return format === 'NV12'
    ? [plane(0, 0, 1), plane(1, 0, 2), plane(1, 1, 2)]
    : [plane(0, 0, 1), plane(1, 0, 1), plane(2, 0, 1)];
}

/**
 * A picture as 4:2:0 of 8 bits without gaps, turned.
 *
 * @param into  width × height × 3/2 bytes; width and height are even
 */
export function writeTurnedPicture(
  planes: readonly [SourcePlane, SourcePlane, SourcePlane],
  turn: PlaneTurn,
  into: Uint8Array,
  width: number,
  height: number,
): void {
  const luma = width * height;
  writeTurnedPlane(planes[0], turn, into, 0, width, height);
  writeTurnedPlane(planes[1], turn, into, luma, width / 2, height / 2);
  writeTurnedPlane(planes[2], turn, into, luma + luma / 4, width / 2, height / 2);
}
