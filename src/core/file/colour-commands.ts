import type { ColourCurves, ChannelCurve } from './colour-balance.ts';

const digits = (value: number): string => String(Number(value.toPrecision(5)));

function expression({ gain, exponent }: ChannelCurve): string {
  const share = exponent === 1 ? 'val/maxval' : `pow(val/maxval,${digits(exponent)})`;
  return `'clip(maxval*${digits(gain)}*${share},0,maxval)'`;
}

/**
 * Filter of an open tool that bends the codes of each channel by its curve, in as many bits as the
 * picture has.
 *
 * @param curves  curve of each channel
 * @returns one filter, to stand in a chain inside double quotes
 * @source ffmpeg-documentation
 */
export function colourFilter(curves: ColourCurves): string {
  const { red, green, blue } = curves;
  return `lutrgb=r=${expression(red)}:g=${expression(green)}:b=${expression(blue)}`;
}
