import Fraction from 'fraction.js';

/** What a spelling is worth, apart from the table of the book: sizes written down once more by hand. */
export interface UnitMeaning {
  /** Every spelling that stands for it, the first one the symbol. */
  readonly spellings: readonly string[];
  /** Base units in one of it, as a decimal or fraction that is exact, unless `isRounded`. */
  readonly size: string;
  /** Base value of its zero. */
  readonly zero?: string;
  readonly isRounded?: true;
  /** The same in mathjs, with the base unit to compare it in. */
  readonly mathjs?: readonly [unit: string, base: string];
}

/**
 * Meanings by kind of quantity. The inch is 25.4 mm and the foot 12 of them (international yard and
 * pound agreement of 1959); b is a bit, B is a byte of 8 bits and the multiples are decimal (IEC
 * 80000-13, from memory); a stop doubles the light, a density of 1 divides it by ten.
 */
export const MEANINGS: Readonly<Record<string, Readonly<Record<string, UnitMeaning>>>> = {
  time: {
    s: {
      spellings: ['s', 'sec', 'secs', 'second', 'seconds', '"', '″', '”'],
      size: '1',
      mathjs: ['s', 's'],
    },
    ms: {
      spellings: ['ms', 'millisecond', 'milliseconds', 'msec', 'msecs'],
      size: '1/1000',
      mathjs: ['ms', 's'],
    },
    us: {
      spellings: ['µs', 'μs', 'us', 'microsecond', 'microseconds'],
      size: '1/1000000',
      mathjs: ['us', 's'],
    },
    min: {
      spellings: ['min', 'minute', 'minutes', 'mins', 'm', "'", '′', '’'],
      size: '60',
      mathjs: ['minute', 's'],
    },
    h: { spellings: ['h', 'hour', 'hours', 'hr', 'hrs'], size: '3600', mathjs: ['hour', 's'] },
  },
  frameRate: {
    fps: {
      spellings: [
        'frames/s',
        'fps',
        'frame/s',
        'f/s',
        'fr/s',
        'frames/sec',
        'frames/second',
        'frames per second',
        'frame per second',
        'frames a second',
        'frames / s',
      ],
      size: '1',
    },
  },
  frequency: {
    Hz: { spellings: ['Hz', '/s', 'per second', 'hertz'], size: '1', mathjs: ['Hz', 'Hz'] },
    kHz: { spellings: ['kHz', 'kilohertz'], size: '1000', mathjs: ['kHz', 'Hz'] },
  },
  rotation: {
    rpm: {
      spellings: [
        'rev/min',
        'rpm',
        'r/min',
        'revs/min',
        'rev per minute',
        'revs per minute',
        'revolutions per minute',
        'r.p.m.',
      ],
      size: '1',
    },
    revPerSecond: { spellings: ['rev/s', 'rps', 'r/s', 'revs/s', 'revs per second'], size: '60' },
  },
  length: {
    mm: {
      spellings: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'],
      size: '1',
      mathjs: ['mm', 'mm'],
    },
    um: {
      spellings: ['µm', 'μm', 'um', 'micron', 'microns', 'micrometre', 'micrometres'],
      size: '1/1000',
      mathjs: ['um', 'mm'],
    },
    cm: {
      spellings: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
      size: '10',
      mathjs: ['cm', 'mm'],
    },
    m: {
      spellings: ['m', 'metre', 'metres', 'meter', 'meters'],
      size: '1000',
      mathjs: ['m', 'mm'],
    },
    in: {
      spellings: ['in', 'inch', 'inches', '"', '″', '”'],
      size: '127/5',
      mathjs: ['inch', 'mm'],
    },
    ft: {
      spellings: ['ft', 'foot', 'feet', "'", '′', '’'],
      size: '1524/5',
      mathjs: ['foot', 'mm'],
    },
  },
  area: {
    mm2: { spellings: ['mm²', 'mm2', 'sq mm', 'sq. mm'], size: '1', mathjs: ['mm^2', 'mm^2'] },
  },
  volume: {
    millilitre: {
      spellings: ['mL', 'ml', 'cm³', 'cm3', 'cc', 'millilitre', 'millilitres'],
      size: '1',
      mathjs: ['cm^3', 'cm^3'],
    },
    cubicMetre: {
      spellings: ['m³', 'm3', 'cu m', 'cubic metre', 'cubic metres'],
      size: '1000000',
      mathjs: ['m^3', 'cm^3'],
    },
    cubicFoot: {
      spellings: ['ft³', 'ft3', 'cu ft', 'cubic foot', 'cubic feet', 'cu. ft.'],
      size: '28316.846592',
      mathjs: ['foot^3', 'cm^3'],
    },
  },
  angle: {
    deg: {
      spellings: ['°', 'º', '˚', 'deg', 'degs', 'degree', 'degrees'],
      size: '1',
      mathjs: ['deg', 'deg'],
    },
    arcmin: {
      spellings: ['arcmin', 'minutes of arc', 'arc minutes'],
      size: '1/60',
      mathjs: ['arcmin', 'deg'],
    },
  },
  temperature: {
    celsius: {
      spellings: ['°C', '℃', '° C', 'ºC', 'C', 'degC', 'deg C', 'celsius', 'degrees celsius'],
      size: '1',
      mathjs: ['degC', 'degC'],
    },
    fahrenheit: {
      spellings: ['°F', '℉', '° F', 'ºF', 'F', 'degF', 'deg F', 'fahrenheit', 'degrees fahrenheit'],
      size: '5/9',
      zero: '-160/9',
      mathjs: ['degF', 'degC'],
    },
  },
  percent: { percent: { spellings: ['%', '٪', 'percent', 'per cent', 'pct'], size: '1' } },
  data: {
    byte: { spellings: ['B', 'byte', 'bytes'], size: '1', mathjs: ['byte', 'byte'] },
    kB: {
      spellings: ['kB', 'KB', 'kilobyte', 'kilobytes'],
      size: '1000',
      mathjs: ['kB', 'byte'],
    },
    MB: { spellings: ['MB', 'megabyte', 'megabytes'], size: '1000000', mathjs: ['MB', 'byte'] },
    GB: { spellings: ['GB', 'gigabyte', 'gigabytes'], size: '1000000000', mathjs: ['GB', 'byte'] },
    TB: {
      spellings: ['TB', 'terabyte', 'terabytes'],
      size: '1000000000000',
      mathjs: ['TB', 'byte'],
    },
  },
  dataRate: {
    kbps: {
      spellings: ['kbit/s', 'kb/s', 'Kb/s', 'kbps', 'Kbps', 'kilobits/s'],
      size: '1000',
      mathjs: ['kb/s', 'b/s'],
    },
    Mbps: {
      spellings: ['Mbit/s', 'Mb/s', 'Mbps', 'megabits/s', 'megabits per second', 'Mbit / s'],
      size: '1000000',
      mathjs: ['Mb/s', 'b/s'],
    },
    kBps: {
      spellings: ['kB/s', 'KB/s', 'kBps', 'KBps', 'kilobytes/s'],
      size: '8000',
      mathjs: ['kB/s', 'b/s'],
    },
    MBps: {
      spellings: ['MB/s', 'MBps', 'Mbyte/s', 'megabytes/s', 'megabytes per second'],
      size: '8000000',
      mathjs: ['MB/s', 'b/s'],
    },
  },
  speed: {
    mmPerSecond: { spellings: ['mm/s', 'mm per second'], size: '1', mathjs: ['mm/s', 'mm/s'] },
    ftPerMinute: {
      spellings: ['ft/min', 'feet per minute', 'feet/min'],
      size: '127/25',
      mathjs: ['foot/minute', 'mm/s'],
    },
  },
  lightRatio: {
    stop: { spellings: ['stop', 'stops', 'EV', 'f-stop', 'f-stops'], size: '1' },
    density: { spellings: ['D', 'density'], size: '3.321928094887362', isRounded: true },
  },
  fNumber: { fNumber: { spellings: [''], size: '1' } },
  sensitivity: { iso: { spellings: ['', 'ISO', 'ASA'], size: '1' } },
  pixels: { px: { spellings: ['px', 'pixel', 'pixels'], size: '1' } },
  frames: { frames: { spellings: ['frames', 'frame', 'fr', 'fr.'], size: '1' } },
  pictureSpeed: {
    pictureHeightsPerSecond: {
      spellings: ['picture heights/s', 'picture heights per second'],
      size: '1',
    },
  },
  lineDetail: {
    lpPerMm: {
      spellings: ['lp/mm', 'line pairs/mm', 'line pairs per mm', 'cycles/mm'],
      size: '1',
    },
  },
  pitch: { semitone: { spellings: ['semitone', 'semitones'], size: '1' } },
  partsPerMillion: {
    ppm: { spellings: ['ppm', 'ml/m³', 'ml/m3', 'cm³/m³', 'parts per million'], size: '1' },
  },
  massConcentration: {
    mgPerCubicMetre: { spellings: ['mg/m³', 'mg/m3', 'mg per cubic metre'], size: '1' },
  },
  airChanges: {
    airChangesPerHour: { spellings: ['', '/h', 'per hour', 'an hour', 'ACH'], size: '1' },
  },
  turnsPerFrame: {
    turnsPerFrame: {
      spellings: ['', 'turn', 'turns', 'turns/frame', 'turns per frame'],
      size: '1',
    },
  },
  pulses: { pulses: { spellings: ['', 'pulse', 'pulses', 'beats'], size: '1' } },
  money: { money: { spellings: [''], size: '1' } },
  code: { code: { spellings: [''], size: '1' } },
  illuminance: { lx: { spellings: ['lx', 'lux'], size: '1' } },
  luminousFlux: { lm: { spellings: ['lm', 'lumen', 'lumens'], size: '1' } },
  lightDose: { luxHours: { spellings: ['lx·h', 'lxh', 'lx h', 'lux hours'], size: '1' } },
  irradiance: {
    wattsPerMm2: { spellings: ['W/mm²', 'W/mm2'], size: '1', mathjs: ['W/mm^2', 'W/mm^2'] },
  },
  temperatureRise: { kelvin: { spellings: ['K', 'kelvin'], size: '1', mathjs: ['K', 'K'] } },
  force: {
    newton: { spellings: ['N', 'newton', 'newtons'], size: '1', mathjs: ['N', 'N'] },
  },
  torque: {
    newtonMillimetre: {
      spellings: ['N·mm', 'Nmm', 'N mm'],
      size: '1',
      mathjs: ['N mm', 'N mm'],
    },
  },
  level: { dB: { spellings: ['dB', 'decibel', 'decibels'], size: '1' } },
  ratio: { one: { spellings: ['', 'x', '×', 'times'], size: '1' } },
};

/** One spelling of one unit with what it is worth. */
export interface Spelling {
  readonly dimension: string;
  readonly unit: string;
  readonly spelling: string;
  readonly meaning: UnitMeaning;
}

export const SPELLINGS: readonly Spelling[] = Object.entries(MEANINGS).flatMap(
  ([dimension, units]) =>
    Object.entries(units).flatMap(([unit, meaning]) =>
      meaning.spellings.map((spelling) => ({ dimension, unit, spelling, meaning })),
    ),
);

const meaningOf = new Map(Object.values(MEANINGS).flatMap((units) => Object.entries(units)));

/** A number in one unit, in another of the same kind, by the sizes above. */
export function meant(number: Fraction, from: string, to: string): Fraction {
  const source = meaningOf.get(from);
  const target = meaningOf.get(to);
  if (source === undefined || target === undefined) throw new Error(`no ${from} or no ${to}`);
  const base = number.mul(new Fraction(source.size)).add(new Fraction(source.zero ?? '0'));
  return base.sub(new Fraction(target.zero ?? '0')).div(new Fraction(target.size));
}
