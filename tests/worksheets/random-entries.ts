import { convertUnit, UNITS, type UnitName } from '../../src/core/quantity/units.ts';
import type { Entries } from '../../src/worksheets/evaluate.ts';
import type {
  InputSpec,
  InputSpecs,
  ListInput,
  OptionalQuantityInput,
  QuantityInput,
} from '../../src/worksheets/types.ts';

/** A source of chance that repeats itself: the same seed gives the same run. */
export type Chance = () => number;

/** Small seeded generator (mulberry32): even numbers in 0…1, the same on every machine. */
export function seededChance(seed: number): Chance {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Seed from a name, so that each worksheet has its own run and a new one changes no other. */
export function seedOf(name: string): number {
  let seed = 2166136261;
  for (const character of name) seed = Math.imul(seed ^ character.codePointAt(0)!, 16777619);
  return seed >>> 0;
}

function pick<Item>(items: readonly Item[], chance: Chance): Item {
  return items[Math.floor(chance() * items.length)]!;
}

type Measured = QuantityInput | OptionalQuantityInput | ListInput;

/** A value of the range: an end, anywhere in it, or with all magnitudes equally likely. */
function randomValue({ minimum, maximum }: Measured, chance: Chance): number {
  const way = chance();
  if (way < 0.06) return minimum;
  if (way < 0.12) return maximum;
  if (way < 0.5 && minimum > 0 && maximum / minimum > 20) {
    return minimum * (maximum / minimum) ** chance();
  }
  const value = minimum + (maximum - minimum) * chance();
  const rounded = Math.round(value);
  return way > 0.75 && rounded >= minimum && rounded <= maximum ? rounded : value;
}

function plainDigits(value: number, chance: Chance): string {
  const digits = pick([2, 3, 4, 6, 12], chance);
  const text = Number(value.toPrecision(digits)).toString();
  // People do not type 1e-7, but the parser must read it, so it stays in when it occurs.
  return text.includes('.') && chance() < 0.2 ? withDecimalComma(text) : text;
}

/** The decimal comma, except before exactly three digits, where it is refused as ambiguous. */
function withDecimalComma(text: string): string {
  return /^-?[1-9]\d{0,2}\.\d{3}$/u.test(text) ? text : text.replace('.', ',');
}

function unitsOf(unit: UnitName): readonly UnitName[] {
  const { dimension } = UNITS[unit];
  const names = Object.keys(UNITS) as UnitName[];
  return names.filter((name) => UNITS[name].dimension === dimension && UNITS[name].symbol !== '');
}

function typedQuantity(spec: Measured, chance: Chance, angleFps: number | undefined): string {
  const value = randomValue(spec, chance);
  const { dimension } = UNITS[spec.unit];
  const way = chance();
  if (dimension === 'time' && value > 0) {
    const seconds = convertUnit(value, spec.unit, 's');
    if (angleFps !== undefined && way < 0.25) {
      return `${plainDigits(seconds * angleFps * 360, chance)}°`;
    }
    if (way < 0.5 && seconds < 1) return `1/${plainDigits(1 / seconds, chance)}`;
  }
  if (dimension !== 'plain' && dimension !== 'time' && way < 0.2 && value > 1) {
    const whole = Math.floor(value);
    const parts = pick([2, 3, 4, 5], chance);
    return typedInUnit(`${whole} ${Math.floor(chance() * parts)}/${parts}`, spec, chance);
  }
  const shown =
    dimension === 'plain' || chance() < 0.6
      ? (spec.entryUnit ?? spec.unit)
      : pick(unitsOf(spec.unit), chance);
  const digits = plainDigits(convertUnit(value, spec.unit, shown), chance);
  if (shown === (spec.entryUnit ?? spec.unit) && chance() < 0.6) return digits;
  return `${digits} ${spelling(shown, chance)}`.trim();
}

function typedInUnit(number: string, spec: Measured, chance: Chance): string {
  return spec.entryUnit === undefined && chance() < 0.5
    ? number
    : `${number} ${UNITS[spec.unit].symbol}`.trim();
}

function spelling(unit: UnitName, chance: Chance): string {
  const { symbol, spellings } = UNITS[unit];
  // `'` is both feet and minutes, `"` both inches and seconds to some; the symbol is always safe.
  return pick([symbol, symbol, ...spellings.filter((each) => !/['"]/u.test(each))], chance);
}

function typedText(spec: InputSpec, chance: Chance, angleFps: number | undefined): string {
  if (chance() < 0.1) return spec.default;
  switch (spec.kind) {
    case 'quantity':
      return typedQuantity(spec, chance, angleFps);
    case 'optional-quantity':
      return chance() < 0.4 ? '' : typedQuantity(spec, chance, angleFps);
    case 'count':
      return String(spec.minimum + Math.floor(chance() * (spec.maximum - spec.minimum + 1)));
    case 'choice':
      return pick(Object.keys(spec.options), chance);
    case 'list': {
      // Lists that may be empty often come in pairs, which only fit together when both are.
      if (spec.mayBeEmpty === true && chance() < 0.85) return '';
      const length = 1 + Math.floor(chance() * Math.min(spec.longest, 8));
      return Array.from({ length }, () => typedQuantity(spec, chance, undefined)).join('; ');
    }
  }
}

/**
 * Entries for every input of a worksheet, typed the many ways people type, mostly inside the ranges
 * (rounding may step just outside, and then the worksheet has to refuse).
 */
export function randomEntries(specs: InputSpecs, chance: Chance): Entries {
  const entries: Record<string, string> = {};
  const keys = Object.keys(specs);
  const rateKeyOf = (key: string): string | undefined => {
    const spec = specs[key]!;
    return spec.kind === 'quantity' || spec.kind === 'optional-quantity' ? spec.angleOf : undefined;
  };
  for (const key of [...keys].sort((a, b) => Number(!!rateKeyOf(a)) - Number(!!rateKeyOf(b)))) {
    const rateKey = rateKeyOf(key);
    const rate = rateKey === undefined ? Number.NaN : Number(entries[rateKey]);
    entries[key] = typedText(specs[key]!, chance, Number.isFinite(rate) ? rate : undefined);
  }
  return entries;
}
