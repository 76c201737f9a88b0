// Code values of luma into light, by the colour tags of the file.

/** Light of a signal level between black (0) and white (1); levels above white go on. */
type LightOf = (level: number) => number;

/** Exponent where nothing is known of the tone curve. */
const UNKNOWN_GAMMA = 2.2;

const power =
  (exponent: number): LightOf =>
  (level) =>
    level ** exponent;

/** Inverse of the camera curve that BT.709, BT.601 and BT.2020 share. */
const cameraCurve: LightOf = (level) =>
  level < 0.081 ? level / 4.5 : ((level + 0.099) / 1.099) ** (1 / 0.45);

const screenCurve: LightOf = (level) =>
  level <= 0.04045 ? level / 12.92 : ((level + 0.055) / 1.055) ** 2.4;

/** Inverse of the hybrid log-gamma camera curve (BT.2100). */
const hybridLogGamma: LightOf = (level) =>
  level <= 0.5
    ? level ** 2 / 3
    : (Math.exp((level - 0.559_910_73) / 0.178_832_77) + 0.284_668_92) / 12;

/** Perceptual quantiser (BT.2100); 1 is 10,000 candelas a square metre. */
const perceptualQuantiser: LightOf = (level) => {
  const root = level ** (1 / 78.843_75);
  return (
    (Math.max(root - 0.835_937_5, 0) / (18.851_562_5 - 18.6875 * root)) ** (1 / 0.159_301_757_812_5)
  );
};

/** Curves by the names of WebCodecs. */
const CURVES: Readonly<Record<string, LightOf>> = {
  bt709: cameraCurve,
  smpte170m: cameraCurve,
  'bt2020-10': cameraCurve,
  'bt2020-12': cameraCurve,
  'iec61966-2-1': screenCurve,
  linear: power(1),
  gamma22: power(2.2),
  gamma28: power(2.8),
  hlg: hybridLogGamma,
  pq: perceptualQuantiser,
};

/** What has to be known to turn codes into light. */
export interface CodeScale {
  readonly bitDepth: number;
  readonly isFullRange: boolean;
  /** Name of the curve as WebCodecs writes it; 2.2 where it is unknown. */
  readonly transfer: string | undefined;
}

function blackAndWhite({ bitDepth, isFullRange }: CodeScale): { black: number; white: number } {
  const scale = 2 ** (bitDepth - 8);
  return isFullRange
    ? { black: 0, white: 2 ** bitDepth - 1 }
    : { black: 16 * scale, white: 235 * scale };
}

/**
 * Signal level of every code, black 0 and white 1.
 *
 * Model: (code − black) ÷ (white − black), never below 0; levels above white stay in the limited range.
 *
 * @source from memory, unverified
 */
export function codeLevels(scale: CodeScale): Float64Array {
  const { black, white } = blackAndWhite(scale);
  return Float64Array.from({ length: 2 ** scale.bitDepth }, (_, code) =>
    Math.max(0, (code - black) / (white - black)),
  );
}

/**
 * Linear light of every code, 1 for the brightest that the file can hold.
 *
 * Model: inverse of the camera curve that the file names. A camera’s real curve may differ from its
 * tag, which changes the size of a ripple and never its rate.
 */
export function codeLight(scale: CodeScale): Float64Array {
  const { transfer } = scale;
  const lightOf =
    (transfer !== undefined && Object.hasOwn(CURVES, transfer) ? CURVES[transfer] : undefined) ??
    power(UNKNOWN_GAMMA);
  const levels = codeLevels(scale);
  const brightest = lightOf(levels.at(-1) ?? 1);
  return levels.map((level) => lightOf(level) / brightest);
}

/** Shares of samples at the ends of the range, 0–1. */
export interface RangeEnds {
  readonly clippedShare: number;
  readonly blackShare: number;
}

/**
 * Shares of samples at the top and at the bottom of the range. In the limited range some cameras stop at
 * white and some go on above it; where next to nothing lies above, white is the top.
 *
 * @param counts  samples of each code
 */
export function rangeEnds(counts: ArrayLike<number>, scale: CodeScale): RangeEnds {
  const { black, white } = blackAndWhite(scale);
  const step = 2 ** (scale.bitDepth - 8);
  const between = (from: number, to: number): number => {
    let sum = 0;
    for (let code = from; code <= to; code += 1) sum += counts[code] ?? 0;
    return sum;
  };
  const top = 2 ** scale.bitDepth - 1;
  const all = between(0, top);
  if (all === 0) return { clippedShare: 0, blackShare: 0 };
  const atWhite = between(white - step, Math.min(top, white + 2 * step));
  const above = between(Math.min(top, white + 2 * step) + 1, top);
  const stopsAtWhite = scale.isFullRange || above <= 0.02 * atWhite;
  const clipped = stopsAtWhite ? atWhite + above : between(top - 3 * step, top);
  return { clippedShare: clipped / all, blackShare: between(0, black + step) / all };
}
