import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';

/** Red, green and blue. */
export interface Channels {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
}

/** What happens to the codes of one channel: v′ = gain × v^exponent, codes as shares of the full code. */
export interface ChannelCurve {
  readonly gain: number;
  readonly exponent: number;
}

/** Curves of all channels. */
export type ColourCurves = Readonly<Record<keyof Channels, ChannelCurve>>;

const requireGamma = (gamma: number): number =>
  requireInterval('gamma', gamma, { minimum: 1, maximum: 3 });

/**
 * Stops to add to red and blue so that a patch becomes neutral; green stays.
 *
 * Model: γ × log2(green ÷ channel) on codes, which is log2 of the light when codes follow a power law.
 *
 * @param codes  codes of a patch that was grey, as shares of the full code; above 0, at most 1
 * @param gamma  exponent that turns codes into light; 1–3
 * @returns stops to add; 0 for green
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function balanceStops(codes: Channels, gamma: number): Channels {
  const exponent = requireGamma(gamma);
  const share = (name: keyof Channels): number =>
    requireInterval(name, codes[name], { above: 0, maximum: 1 });
  const stops = (name: keyof Channels): number =>
    exponent * Math.log2(share('green') / share(name));
  return { red: stops('red'), green: 0, blue: stops('blue') };
}

/**
 * Curves that make a grey patch neutral: the same gain for every code of a channel.
 *
 * Model: gain on codes = green ÷ channel. Exact for codes that follow a power law.
 *
 * @param codes  codes of a patch that was grey, as shares of the full code; above 0, at most 1
 * @returns curves; exponents 1
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function balanceCurves(codes: Channels): ColourCurves {
  const curve = (name: keyof Channels): ChannelCurve => ({
    gain:
      requireInterval('green', codes.green, { above: 0, maximum: 1 }) /
      requireInterval(name, codes[name], { above: 0, maximum: 1 }),
    exponent: 1,
  });
  return { red: curve('red'), green: { gain: 1, exponent: 1 }, blue: curve('blue') };
}

/**
 * Density of a code, as the recording shows it.
 *
 * Model: −γ × log10(code).
 *
 * @param code   code as a share of the full code; above 0, at most 1
 * @param gamma  exponent that turns codes into light; 1–3
 * @returns density, ≥ 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example codeDensity(0.1, 2) // 2
 */
export function codeDensity(code: number, gamma: number): number {
  requireInterval('code', code, { above: 0, maximum: 1 });
  return -requireGamma(gamma) * Math.log10(code) + 0;
}

/** Names of the three codes of the black part, for a refusal. */
const BLACK_ARGUMENTS = { red: 'blackRed', green: 'blackGreen', blue: 'blackBlue' } as const;

/** How a faded layer is brought back. */
export interface DyeRestoring {
  /** Factor on the density of the channel; 1 for the one that faded least. */
  readonly contrast: number;
  /** Density added afterwards. */
  readonly offset: number;
  readonly curve: ChannelCurve;
}

/**
 * Contrast and offset of each channel that bring a black and a clear part of faded film back to what the
 * channel with the longest range has.
 *
 * Model: dark fading takes a share of each dye, which is a loss of contrast of that layer, and leaves a
 * stain. D′ = g D + o with g = range of the best channel ÷ range of this one. In codes
 * v′ = 10^(−o ÷ γ) × v^g. Approximate: dyes overlap, and fading may be uneven over the picture.
 *
 * @param white  codes of a clear part that should be neutral, as shares; above 0, at most 1
 * @param black  codes of a part that should be neutral black, as shares; above 0, a thousandth below the
 *   white at least
 * @param gamma  exponent that turns codes into light; 1–3
 * @returns contrast, offset and curve for each channel
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source wallace-1989
 */
export function dyeRestoring(
  white: Channels,
  black: Channels,
  gamma: number,
): Readonly<Record<keyof Channels, DyeRestoring>> {
  const density = (codes: Channels, name: keyof Channels): number =>
    codeDensity(codes[name], gamma);
  const names = ['red', 'green', 'blue'] as const;
  const range = (name: keyof Channels): number => {
    // A thousandth apart: less is no film, and its contrast has no end.
    if (!(white[name] - black[name] > 0.001)) {
      throw new OutOfRangeError(BLACK_ARGUMENTS[name], black[name], 'less than the clear part');
    }
    return density(black, name) - density(white, name);
  };
  const best = names.reduce((a, b) => (range(b) > range(a) ? b : a));
  const restoring = (name: keyof Channels): DyeRestoring => {
    const contrast = range(best) / range(name);
    const offset = density(white, best) - contrast * density(white, name);
    return {
      contrast,
      offset,
      curve: { gain: 10 ** (-offset / gamma), exponent: contrast },
    };
  };
  return { red: restoring('red'), green: restoring('green'), blue: restoring('blue') };
}
