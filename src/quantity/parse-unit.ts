import { ownProperty } from './own-property.ts';
import { DIMENSION_WORDS, UNITS, type Dimension, type Unit, type UnitName } from './units.ts';

/** Bits where bytes are asked for: what the letters say is hardly what was meant, so nothing is taken. */
const BIT_MULTIPLES: Readonly<Record<string, string>> = {
  b: 'a bit; a byte is B',
  kb: 'kilobits; kilobytes are kB',
  Kb: 'kilobits; kilobytes are kB',
  Mb: 'megabits; megabytes are MB',
  Gb: 'gigabits; gigabytes are GB',
  Tb: 'terabits; terabytes are TB',
};

/** What a text in the place of a unit turned out to be. */
export type UnitReading =
  | { readonly kind: 'unit'; readonly unit: UnitName }
  | {
      readonly kind: 'refused';
      readonly reason: string;
      /** Kind of quantity that the spelling belongs to, where it is not the one asked for. */
      readonly other?: Dimension;
    };

/** Every unit with the ways to spell it, as they are and without capitals. */
const SPELT = (Object.keys(UNITS) as UnitName[]).map((name) => {
  const { symbol, spellings, dimension }: Unit = UNITS[name];
  const exact = [symbol, ...spellings];
  return { name, symbol, dimension, exact, lower: exact.map((text) => text.toLowerCase()) };
});

/** Spelling without what people add freely: full stops, doubled spaces, spaces about a slash. */
function plainSpelling(text: string): string {
  return text
    .replaceAll('.', '')
    .replaceAll(/\s+/gu, ' ')
    .replaceAll(/ ?\/ ?/gu, '/')
    .replaceAll(/° (?=[cf]$)/giu, '°')
    .trim();
}

/** The units of a dimension that are spelt so: exactly, or else whatever the capitals. */
function candidates(text: string, dimension?: Dimension): typeof SPELT {
  if (text === '') return [];
  const within =
    dimension === undefined ? SPELT : SPELT.filter((unit) => unit.dimension === dimension);
  const found = within.filter(({ exact }) => exact.includes(text));
  if (found.length > 0) return found;
  const lowered = text.toLowerCase();
  return within.filter(({ lower }) => lower.includes(lowered));
}

function elsewhere(text: string): Dimension | undefined {
  const found = candidates(text);
  const bySymbol = found.find(({ symbol }) => symbol === text) ?? found[0];
  // A lone letter in the wrong capitals says too little: `5 d` are days rather than a density.
  const isSure = text.length > 1 || found.some(({ exact }) => exact.includes(text));
  return isSure ? bySymbol?.dimension : undefined;
}

/**
 * Reads the spelling of a unit in plain characters. Capitals are taken at their word first (`Mb/s` is
 * megabits, `MB/s` megabytes); where nothing is spelt exactly so, they do not matter as long as one
 * unit only comes into question (`MBIT/S`, but not `mb/s`).
 *
 * @returns the unit, or the reason why there is none, which says what the spelling means elsewhere
 */
export function parseUnit(text: string, dimension: Dimension): UnitReading {
  const spelling = plainSpelling(text);
  const bits = dimension === 'data' ? ownProperty(BIT_MULTIPLES, spelling) : undefined;
  if (bits !== undefined) return { kind: 'refused', reason: `“${spelling}” means ${bits}` };
  const [first, ...others] = candidates(spelling, dimension);
  if (first !== undefined && others.length === 0) return { kind: 'unit', unit: first.name };
  if (first !== undefined) {
    const symbols = [first, ...others].map(({ symbol }) => symbol).join(' or ');
    return { kind: 'refused', reason: `“${spelling}” could mean ${symbols}` };
  }
  const wanted = DIMENSION_WORDS[dimension];
  if (dimension === 'temperature' && spelling === '°') {
    return { kind: 'refused', reason: '“°” alone could mean °C or °F' };
  }
  const other = elsewhere(spelling);
  if (other === undefined) {
    const reason = `“${spelling}” is not a unit of this book; this field takes ${wanted}`;
    return { kind: 'refused', reason };
  }
  const reason = `“${spelling}” is the unit of ${DIMENSION_WORDS[other]}; this field takes ${wanted}`;
  return { kind: 'refused', reason, other };
}
