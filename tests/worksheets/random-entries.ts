import Fraction from 'fraction.js';
import type { Entries } from '../../src/worksheets/machine/evaluate.ts';
import type {
  InputSpec,
  InputSpecs,
  ListInput,
  OptionalQuantityInput,
  QuantityInput,
} from '../../src/worksheets/machine/types.ts';
import { MEANINGS, SPELLINGS } from '../quantity/unit-meanings.ts';

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

/** What an entry was typed to mean, in the unit of its input; undefined for one left empty. */
export type Meant = number | string | readonly number[] | undefined;

/** Entries with what each was typed to mean. */
export interface KnownEntries {
  readonly entries: Entries;
  readonly meant: Readonly<Record<string, Meant>>;
}

interface Typed<Value extends Meant = Meant> {
  readonly text: string;
  readonly meant: Value;
}

const sizes = new Map(
  Object.values(MEANINGS).flatMap((units) =>
    Object.entries(units).map(([unit, { size, zero = '0' }]) => [
      unit,
      { size: new Fraction(size).valueOf(), zero: new Fraction(zero).valueOf() },
    ]),
  ),
);

const dimensions = new Map(SPELLINGS.map(({ unit, dimension }) => [unit, dimension]));

/** A value in another unit, by the table of the tests. */
export function inOtherUnit(value: number, from: string, to: string): number {
  const source = sizes.get(from);
  const target = sizes.get(to);
  if (source === undefined || target === undefined) throw new Error(`no ${from} or no ${to}`);
  if (from === to) return value;
  return (value * source.size + source.zero - target.zero) / target.size;
}

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

/** Digits for a value, and the number that they are. */
function plainDigits(value: number, chance: Chance): Typed<number> {
  const digits = pick([2, 3, 4, 6, 12], chance);
  const meant = Number(value.toPrecision(digits));
  return { text: inSomeHand(meant.toString(), chance), meant };
}

/** The same digits as people of many countries type and paste them. */
function inSomeHand(text: string, chance: Chance): string {
  const way = chance();
  // People do not type 1e-7, but the parser must read it, so it stays in when it occurs.
  if (text.includes('e') || way > 0.4) return text;
  if (way < 0.2) return text.replace('.', ',');
  if (way < 0.25) return text.replace('-', '−');
  if (way < 0.3) return `\u200e${text}\u202c`;
  const shifted = (first: number): string =>
    text.replaceAll(/\d/gu, (digit) => String.fromCodePoint(first + Number(digit)));
  if (way < 0.35) return shifted(0xff_10);
  return shifted(0x06_60).replace('.', '٫');
}

const VULGAR: Readonly<Record<string, string>> = { '1/2': '½', '1/3': '⅓', '2/3': '⅔', '3/4': '¾' };

/** `16 2/3`, or with a ready-made fraction. */
function mixedNumber(whole: number, chance: Chance): Typed<number> {
  const parts = pick([2, 3, 4, 5], chance);
  const top = 1 + Math.floor(chance() * (parts - 1));
  const sign = VULGAR[`${top}/${parts}`];
  const text =
    sign !== undefined && chance() < 0.5 ? `${whole}${sign}` : `${whole} ${top}/${parts}`;
  return { text, meant: whole + top / parts };
}

function withUnit(text: string, unit: string, chance: Chance): string {
  const spellings = MEANINGS[dimensions.get(unit) ?? '']?.[unit]?.spellings ?? [];
  const gap = pick([' ', ' ', '', '\u00a0'], chance);
  // The symbol is commonest.
  const spelling = chance() < 0.6 ? (spellings[0] ?? '') : pick(spellings, chance);
  return `${text}${gap}${spelling}`.trim();
}

/** `3:20`, `3 min 20 s`, `3'20"` and the like for whole seconds. */
function typedClock(seconds: number, chance: Chance): string {
  const [hours, minutes, rest] = [
    Math.floor(seconds / 3600),
    Math.floor((seconds % 3600) / 60),
    seconds % 60,
  ];
  const two = (value: number): string => String(value).padStart(2, '0');
  const inMinutes = hours * 60 + minutes;
  if (hours > 0) {
    const clock = `${hours}:${two(minutes)}:${two(rest)}`;
    return pick(
      [clock, `${hours} h ${minutes} min ${rest} s`, `${hours}h${minutes}m${rest}`],
      chance,
    );
  }
  const words = [
    `${inMinutes} min ${rest} s`,
    `${inMinutes}′${two(rest)}″`,
    `${inMinutes}m${rest}s`,
  ];
  return pick([`${inMinutes}:${two(rest)}`, ...words], chance);
}

function typedTime(
  spec: Measured,
  seconds: number,
  chance: Chance,
  angleFps: number | undefined,
): Typed<number> | undefined {
  const back = (value: number, from: string): number => inOtherUnit(value, from, spec.unit);
  const shown = spec.entryUnit ?? spec.unit;
  const way = chance();
  if (angleFps !== undefined && way < 0.25) {
    const { text, meant } = plainDigits(seconds * angleFps * 360, chance);
    return {
      text: `${text}${pick(['°', 'º', ' deg'], chance)}`,
      meant: back(meant / 360 / angleFps, 's'),
    };
  }
  // A bare fraction is in the unit of the field, but a camera time in ms is a fraction of a second.
  const unit = shown === 'ms' ? 's' : shown;
  const fraction = inOtherUnit(seconds, 's', unit);
  if (way < 0.5 && fraction < 1) {
    const { text, meant } = plainDigits(1 / fraction, chance);
    return { text: `1${pick(['/', '⁄'], chance)}${text}`, meant: back(1 / meant, unit) };
  }
  if (way < 0.7 && seconds >= 60 && seconds < 360_000) {
    const whole = Math.round(seconds);
    return { text: typedClock(whole, chance), meant: back(whole, 's') };
  }
  return undefined;
}

function typedQuantity(
  spec: Measured,
  chance: Chance,
  angleFps: number | undefined,
): Typed<number> {
  const value = randomValue(spec, chance);
  const dimension = dimensions.get(spec.unit);
  if (dimension === undefined) throw new Error(`no meaning of ${spec.unit}`);
  if (dimension === 'time' && value > 0) {
    const seconds = inOtherUnit(value, spec.unit, 's');
    const time = typedTime(spec, seconds, chance, angleFps);
    if (time !== undefined) return time;
  }
  const bareUnit = spec.entryUnit ?? spec.unit;
  if (dimension !== 'time' && chance() < 0.2 && value > 1 && value < 1e6) {
    const { text, meant } = mixedNumber(Math.floor(value), chance);
    return spec.entryUnit === undefined && chance() < 0.5
      ? { text, meant }
      : { text: withUnit(text, spec.unit, chance), meant };
  }
  const others = Object.entries(MEANINGS[dimension] ?? {}).flatMap(([unit, { spellings }]) =>
    spellings[0] === '' ? [] : [unit],
  );
  const shown = others.length === 0 || chance() < 0.6 ? bareUnit : pick(others, chance);
  const { text, meant } = plainDigits(inOtherUnit(value, spec.unit, shown), chance);
  const isBare = shown === bareUnit && chance() < 0.6;
  return {
    text: isBare ? text : withUnit(text, shown, chance),
    meant: inOtherUnit(meant, shown, spec.unit),
  };
}

function typedCount(spec: InputSpec & { readonly kind: 'count' }, chance: Chance): Typed<number> {
  const meant = spec.minimum + Math.floor(chance() * (spec.maximum - spec.minimum + 1));
  const digits = inSomeHand(String(meant), chance);
  const isCounted = spec.unit !== undefined && chance() < 0.2;
  return { text: isCounted ? withUnit(digits, spec.unit ?? '', chance) : digits, meant };
}

/** Names as people write them, with every sign that a shell could trip over. */
const TEXTS: readonly string[] = [
  '',
  'reel 7',
  'Ada’s „Müller & Söhne“ $HOME `1962` "x" (50%).mov',
  '-Ton für Tom\'s "Film" $(date).wav',
  '¼ 🎞 Zürich',
  '1.234,5',
];

/** An entry and what it means; the default of an input stands without a meaning of its own. */
function typedText(
  spec: InputSpec,
  chance: Chance,
  angleFps: number | undefined,
): Typed | Omit<Typed, 'meant'> {
  if (chance() < 0.1) return { text: spec.default };
  switch (spec.kind) {
    case 'quantity':
      return typedQuantity(spec, chance, angleFps);
    case 'optional-quantity':
      return chance() < 0.4
        ? { text: '', meant: undefined }
        : typedQuantity(spec, chance, angleFps);
    case 'count':
      return typedCount(spec, chance);
    case 'text': {
      const written = pick(TEXTS, chance);
      const isKept = written.length <= spec.longest && (spec.mayBeEmpty || written !== '');
      const meant = isKept ? written : 'reel 7';
      return { text: chance() < 0.2 ? `  ${meant} ` : meant, meant };
    }
    case 'choice': {
      const key = pick(Object.keys(spec.options), chance);
      return { text: key, meant: key };
    }
    case 'list': {
      // Lists that may be empty often come in pairs, which only fit together when both are.
      if (spec.mayBeEmpty === true && chance() < 0.85) return { text: '', meant: [] };
      const length = 1 + Math.floor(chance() * Math.min(spec.longest, 8));
      const items = Array.from({ length }, () => typedQuantity(spec, chance, undefined));
      return {
        text: items.map(({ text }) => text).join('; '),
        meant: items.map(({ meant }) => meant),
      };
    }
  }
}

/**
 * Entries for every input of a worksheet, typed the many ways people type, mostly inside the ranges
 * (rounding may step just outside, and then the worksheet has to refuse), with what each means. An
 * input that holds its default has no key in `meant`.
 */
export function knownEntries(specs: InputSpecs, chance: Chance): KnownEntries {
  const entries: Record<string, string> = {};
  const meant: Record<string, Meant> = {};
  const keys = Object.keys(specs);
  const rateKeyOf = (key: string): string | undefined => {
    const spec = specs[key]!;
    return spec.kind === 'quantity' || spec.kind === 'optional-quantity' ? spec.angleOf : undefined;
  };
  for (const key of [...keys].sort((a, b) => Number(!!rateKeyOf(a)) - Number(!!rateKeyOf(b)))) {
    const rateKey = rateKeyOf(key);
    const rate = rateKey === undefined ? undefined : meant[rateKey];
    const typed = typedText(specs[key]!, chance, typeof rate === 'number' ? rate : undefined);
    entries[key] = typed.text;
    if ('meant' in typed) meant[key] = typed.meant;
  }
  return { entries, meant };
}

/** The entries alone. */
export function randomEntries(specs: InputSpecs, chance: Chance): Entries {
  return knownEntries(specs, chance).entries;
}
