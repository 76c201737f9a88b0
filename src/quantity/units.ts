import { requireInterval } from './errors.ts';

/** Kinds of quantity that a reader can type; a quantity of one kind never stands for another. */
export type Dimension =
  | 'time'
  | 'frameRate'
  | 'frequency'
  | 'rotation'
  | 'length'
  | 'area'
  | 'volume'
  | 'angle'
  | 'temperature'
  | 'percent'
  | 'data'
  | 'dataRate'
  | 'speed'
  | 'lightRatio'
  | 'fNumber'
  | 'sensitivity'
  | 'pixels'
  | 'frames'
  | 'pictureSpeed'
  | 'lineDetail'
  | 'pitch'
  | 'partsPerMillion'
  | 'massConcentration'
  | 'airChanges'
  | 'turnsPerFrame'
  | 'pulses'
  | 'money'
  | 'code'
  | 'illuminance'
  | 'luminousFlux'
  | 'lightDose'
  | 'irradiance'
  | 'temperatureRise'
  | 'force'
  | 'torque'
  | 'level'
  | 'ratio';

/** A unit: its symbol as printed and its size in the base unit of its dimension. */
export interface Unit {
  readonly symbol: string;
  readonly dimension: Dimension;
  /**
   * Base units in one of this unit; base units are s, frames/s, Hz, rev/min, mm, mm², mL, °, °C, %,
   * byte, bit/s, mm/s, stop; every other dimension has one unit only.
   */
  readonly factor: number;
  /** Base value of this unit's zero; only temperature uses it. */
  readonly offset?: number;
  /** Other ways to write the symbol. Capitals count first; see parseUnit for when they do not. */
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
 * 304.8 mm exactly); byte multiples are decimal, as on the label of a disc or tape; b is a bit and B a
 * byte. A density D lets 10^−D of the light through, so that one stop is a density of log10 2.
 */
export const UNITS = {
  s: unit('s', 'time', 1, ['sec', 'secs', 'second', 'seconds', '"']),
  ms: unit('ms', 'time', 1e-3, ['millisecond', 'milliseconds', 'msec', 'msecs']),
  us: unit('µs', 'time', 1e-6, ['us', 'microsecond', 'microseconds']),
  min: unit('min', 'time', 60, ['minute', 'minutes', 'mins', 'm', "'"]),
  h: unit('h', 'time', 3600, ['hour', 'hours', 'hr', 'hrs']),
  fps: unit('frames/s', 'frameRate', 1, [
    'fps',
    'frame/s',
    'f/s',
    'fr/s',
    'frames/sec',
    'frames/second',
    'frames per second',
    'frame per second',
    'frames a second',
  ]),
  Hz: unit('Hz', 'frequency', 1, ['/s', 'per second', 'hertz']),
  kHz: unit('kHz', 'frequency', 1000, ['kilohertz']),
  rpm: unit('rev/min', 'rotation', 1, [
    'rpm',
    'r/min',
    'revs/min',
    'rev per minute',
    'revs per minute',
    'revolutions per minute',
  ]),
  revPerSecond: unit('rev/s', 'rotation', 60, ['rps', 'r/s', 'revs/s', 'revs per second']),
  mm: unit('mm', 'length', 1, ['millimetre', 'millimetres', 'millimeter', 'millimeters']),
  um: unit('µm', 'length', 1e-3, ['um', 'micron', 'microns', 'micrometre', 'micrometres']),
  cm: unit('cm', 'length', 10, ['centimetre', 'centimetres', 'centimeter', 'centimeters']),
  m: unit('m', 'length', 1000, ['metre', 'metres', 'meter', 'meters']),
  in: unit('in', 'length', 25.4, ['inch', 'inches', '"']),
  ft: unit('ft', 'length', 304.8, ['foot', 'feet', "'"]),
  mm2: unit('mm²', 'area', 1, ['mm2', 'sq mm']),
  deg: unit('°', 'angle', 1, ['deg', 'degs', 'degree', 'degrees']),
  arcmin: unit('arcmin', 'angle', 1 / 60, ['minutes of arc', 'arc minutes']),
  celsius: unit('°C', 'temperature', 1, ['C', 'degC', 'deg C', 'celsius', 'degrees celsius']),
  fahrenheit: {
    ...unit('°F', 'temperature', 5 / 9, ['F', 'degF', 'deg F', 'fahrenheit', 'degrees fahrenheit']),
    offset: -160 / 9,
  },
  percent: unit('%', 'percent', 1, ['percent', 'per cent', 'pct']),
  byte: unit('B', 'data', 1, ['byte', 'bytes']),
  kB: unit('kB', 'data', 1e3, ['KB', 'kilobyte', 'kilobytes']),
  MB: unit('MB', 'data', 1e6, ['megabyte', 'megabytes']),
  GB: unit('GB', 'data', 1e9, ['gigabyte', 'gigabytes']),
  TB: unit('TB', 'data', 1e12, ['terabyte', 'terabytes']),
  kBps: unit('kB/s', 'dataRate', 8e3, ['KB/s', 'kBps', 'KBps', 'kilobytes/s']),
  MBps: unit('MB/s', 'dataRate', 8e6, ['MBps', 'Mbyte/s', 'megabytes/s', 'megabytes per second']),
  kbps: unit('kbit/s', 'dataRate', 1e3, ['kb/s', 'Kb/s', 'kbps', 'Kbps', 'kilobits/s']),
  Mbps: unit('Mbit/s', 'dataRate', 1e6, ['Mb/s', 'Mbps', 'megabits/s', 'megabits per second']),
  mmPerSecond: unit('mm/s', 'speed', 1, ['mm per second']),
  ftPerMinute: unit('ft/min', 'speed', 5.08, ['feet per minute', 'feet/min']),
  stop: unit('stop', 'lightRatio', 1, ['stops', 'EV', 'f-stop', 'f-stops']),
  density: unit('D', 'lightRatio', Math.log2(10), ['density']),
  fNumber: unit('', 'fNumber', 1),
  iso: unit('', 'sensitivity', 1, ['ISO', 'ASA']),
  px: unit('px', 'pixels', 1, ['pixel', 'pixels']),
  frames: unit('frames', 'frames', 1, ['frame', 'fr']),
  pictureHeightsPerSecond: unit('picture heights/s', 'pictureSpeed', 1, [
    'picture heights per second',
  ]),
  lpPerMm: unit('lp/mm', 'lineDetail', 1, ['line pairs/mm', 'line pairs per mm', 'cycles/mm']),
  semitone: unit('semitone', 'pitch', 1, ['semitones']),
  ppm: unit('ppm', 'partsPerMillion', 1, ['ml/m³', 'ml/m3', 'cm³/m³', 'parts per million']),
  mgPerCubicMetre: unit('mg/m³', 'massConcentration', 1, ['mg/m3', 'mg per cubic metre']),
  cubicMetre: unit('m³', 'volume', 1e6, ['m3', 'cu m', 'cubic metre', 'cubic metres']),
  cubicFoot: unit('ft³', 'volume', 28_316.846_592, ['ft3', 'cu ft', 'cubic foot', 'cubic feet']),
  millilitre: unit('mL', 'volume', 1, ['ml', 'cm³', 'cm3', 'cc', 'millilitre', 'millilitres']),
  airChangesPerHour: unit('', 'airChanges', 1, ['/h', 'per hour', 'an hour', 'ACH']),
  turnsPerFrame: unit('', 'turnsPerFrame', 1, ['turn', 'turns', 'turns/frame', 'turns per frame']),
  pulses: unit('', 'pulses', 1, ['pulse', 'pulses', 'beats']),
  money: unit('', 'money', 1),
  code: unit('', 'code', 1),
  lx: unit('lx', 'illuminance', 1, ['lux']),
  lm: unit('lm', 'luminousFlux', 1, ['lumen', 'lumens']),
  luxHours: unit('lx·h', 'lightDose', 1, ['lxh', 'lx h', 'lux hours']),
  wattsPerMm2: unit('W/mm²', 'irradiance', 1, ['W/mm2']),
  kelvin: unit('K', 'temperatureRise', 1, ['kelvin']),
  newton: unit('N', 'force', 1, ['newton', 'newtons']),
  newtonMillimetre: unit('N·mm', 'torque', 1, ['Nmm', 'N mm']),
  dB: unit('dB', 'level', 1, ['decibel', 'decibels']),
  one: unit('', 'ratio', 1, ['x', '×', 'times']),
} as const satisfies Record<string, Unit>;

/** Key of a unit in {@link UNITS}. */
export type UnitName = keyof typeof UNITS;

/** Each kind of quantity as it reads in “this field takes …”. */
export const DIMENSION_WORDS: Readonly<Record<Dimension, string>> = {
  time: 'a time',
  frameRate: 'a frame rate',
  frequency: 'a frequency',
  rotation: 'a speed of rotation',
  length: 'a length',
  area: 'an area',
  volume: 'a volume',
  angle: 'an angle',
  temperature: 'a temperature',
  percent: 'a percentage',
  data: 'a size in bytes',
  dataRate: 'a data rate',
  speed: 'a speed',
  lightRatio: 'a density or a number of stops',
  fNumber: 'an f-number',
  sensitivity: 'an ISO number',
  pixels: 'a number of pixels',
  frames: 'a number of frames',
  pictureSpeed: 'a speed in picture heights',
  lineDetail: 'a number of line pairs per millimetre',
  pitch: 'a musical interval',
  partsPerMillion: 'a concentration in ppm',
  massConcentration: 'a concentration in mg/m³',
  airChanges: 'a number of air changes in an hour',
  turnsPerFrame: 'a number of turns',
  pulses: 'a number of pulses',
  money: 'an amount of money without its currency',
  code: 'a code of the picture',
  illuminance: 'an amount of light in lux',
  luminousFlux: 'an amount of light in lumens',
  lightDose: 'a dose of light in lux hours',
  irradiance: 'a power in watts for each square millimetre',
  temperatureRise: 'a rise of temperature in kelvin',
  force: 'a force in newtons',
  torque: 'a torque in newton millimetres',
  level: 'a level in decibels',
  ratio: 'a plain number',
};

/**
 * Value in another unit of the same dimension.
 *
 * @returns value in the unit `to`
 * @throws {RangeError} when the two units measure different things, or the value is not finite
 * @example convertUnit(50, 'ft', 'm') // ≈ 15.24
 */
export function convertUnit(value: number, from: UnitName, to: UnitName): number {
  const source: Unit = UNITS[from];
  const target: Unit = UNITS[to];
  if (source.dimension !== target.dimension) {
    throw new RangeError(`cannot convert ${from} to ${to}`);
  }
  requireInterval('value', value, {});
  if (from === to) return value;
  const base = value * source.factor + (source.offset ?? 0);
  return (base - (target.offset ?? 0)) / target.factor;
}
