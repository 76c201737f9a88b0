/** Physical kinds of quantity that a reader can type. */
export type Dimension =
  | 'time'
  | 'frameRate'
  | 'frequency'
  | 'rotation'
  | 'length'
  | 'area'
  | 'angle'
  | 'temperature'
  | 'percent'
  | 'data'
  | 'dataRate'
  | 'speed'
  | 'plain';

/** A unit: its symbol as printed and its size in the base unit of its dimension. */
export interface Unit {
  readonly symbol: string;
  readonly dimension: Dimension;
  /** Base units in one of this unit; base units are s, frames/s, Hz, rev/min, mm, mm², °, °C, %, byte, bit/s, mm/s. */
  readonly factor: number;
  /** Base value of this unit's zero; only temperature uses it. */
  readonly offset?: number;
  /** Other ways a reader may write the symbol, in lower case. */
  readonly spellings: readonly string[];
}

const unit = (
  symbol: string,
  dimension: Dimension,
  factor: number,
  spellings: readonly string[] = [],
): Unit => ({ symbol, dimension, factor, spellings });

/**
 * Every unit the handbook reads and prints. Inch and foot are the international ones (25.4 mm and
 * 304.8 mm exactly); byte multiples are decimal, as on the label of a disc or tape.
 */
export const UNITS = {
  s: unit('s', 'time', 1, ['sec', 'secs', 'second', 'seconds']),
  ms: unit('ms', 'time', 1e-3, ['millisecond', 'milliseconds', 'msec']),
  us: unit('µs', 'time', 1e-6, ['us', 'μs', 'microsecond', 'microseconds']),
  min: unit('min', 'time', 60, ['minute', 'minutes', 'mins', "'"]),
  h: unit('h', 'time', 3600, ['hour', 'hours', 'hr', 'hrs']),
  fps: unit('frames/s', 'frameRate', 1, ['fps', 'frame/s', 'f/s', 'frames per second']),
  Hz: unit('Hz', 'frequency', 1, ['hz', '/s', 'per second']),
  kHz: unit('kHz', 'frequency', 1000, ['khz']),
  rpm: unit('rev/min', 'rotation', 1, ['rpm', 'r/min', 'revs/min', 'rev per minute']),
  revPerSecond: unit('rev/s', 'rotation', 60, ['rps', 'r/s']),
  mm: unit('mm', 'length', 1, ['millimetre', 'millimetres', 'millimeter', 'millimeters']),
  um: unit('µm', 'length', 1e-3, ['um', 'μm', 'micron', 'microns', 'micrometre', 'micrometres']),
  cm: unit('cm', 'length', 10, ['centimetre', 'centimetres']),
  m: unit('m', 'length', 1000, ['metre', 'metres', 'meter', 'meters']),
  in: unit('in', 'length', 25.4, ['inch', 'inches', '"', '″']),
  ft: unit('ft', 'length', 304.8, ['foot', 'feet', "'", '′']),
  mm2: unit('mm²', 'area', 1, ['mm2']),
  deg: unit('°', 'angle', 1, ['deg', 'degree', 'degrees']),
  celsius: unit('°C', 'temperature', 1, ['c', 'degc', 'celsius']),
  fahrenheit: {
    ...unit('°F', 'temperature', 5 / 9, ['f', 'degf', 'fahrenheit']),
    offset: -160 / 9,
  },
  percent: unit('%', 'percent', 1, ['percent', 'per cent', 'pct']),
  byte: unit('B', 'data', 1, ['byte', 'bytes']),
  MB: unit('MB', 'data', 1e6, ['mb', 'megabyte', 'megabytes']),
  GB: unit('GB', 'data', 1e9, ['gb', 'gigabyte', 'gigabytes']),
  TB: unit('TB', 'data', 1e12, ['tb', 'terabyte', 'terabytes']),
  MBps: unit('MB/s', 'dataRate', 8e6, ['mb/s (bytes)', 'megabytes/s']),
  Mbps: unit('Mbit/s', 'dataRate', 1e6, ['mbit/s', 'mb/s', 'mbps']),
  mmPerSecond: unit('mm/s', 'speed', 1, []),
  ftPerMinute: unit('ft/min', 'speed', 5.08, []),
  stop: unit('stop', 'plain', 1, ['stops', 'ev']),
  one: unit('', 'plain', 1, ['x', '×']),
  px: unit('px', 'plain', 1, ['pixel', 'pixels']),
  frames: unit('frames', 'plain', 1, ['frame', 'fr']),
  pictureHeightsPerSecond: unit('picture heights/s', 'plain', 1, []),
  density: unit('D', 'plain', 1, ['d']),
  lpPerMm: unit('lp/mm', 'plain', 1, []),
  semitone: unit('semitone', 'plain', 1, ['semitones']),
  ppm: unit('ppm', 'plain', 1, []),
  mgPerCubicMetre: unit('mg/m³', 'plain', 1, ['mg/m3']),
  cubicMetre: unit('m³', 'plain', 1, ['m3']),
  millilitre: unit('mL', 'plain', 1, ['ml']),
  money: unit('', 'plain', 1, []),
} as const satisfies Record<string, Unit>;

/** Key of a unit in {@link UNITS}. */
export type UnitName = keyof typeof UNITS;

/**
 * Value in another unit of the same dimension.
 *
 * @returns value in the unit `to`
 * @throws {RangeError} when the two units measure different things
 * @example convertUnit(50, 'ft', 'm') // ≈ 15.24
 */
export function convertUnit(value: number, from: UnitName, to: UnitName): number {
  const source: Unit = UNITS[from];
  const target: Unit = UNITS[to];
  if (source.dimension !== target.dimension) {
    throw new RangeError(`cannot convert ${from} to ${to}`);
  }
  if (from === to) return value;
  const base = value * source.factor + (source.offset ?? 0);
  return (base - (target.offset ?? 0)) / target.factor;
}
