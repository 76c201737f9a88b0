import { ownProperty } from '../../quantity/own-property.ts';
import { listParts, parseQuantityList } from '../../quantity/parse-list.ts';
import { isBareNumber, numberEntry } from '../../quantity/parse-number.ts';
import {
  parseCount,
  parseQuantity,
  type QuantityReading as Reading,
} from '../../quantity/parse-quantity.ts';
import { plainTyping } from '../../quantity/typed-text.ts';
import { UNITS, type UnitName } from '../../quantity/units.ts';
import type { BenchReading } from '../../worksheets/machine/bench-columns.ts';
import { benchReading, standInOf } from '../../worksheets/machine/bench-fields.ts';
import type { BenchField } from '../../worksheets/machine/bench-table.ts';
import {
  evaluate,
  fillEntries,
  parseEntry,
  type Entries,
} from '../../worksheets/machine/evaluate.ts';
import type { ChoiceInput, InputSpec, Worksheet } from '../../worksheets/machine/types.ts';
import { current, currentTexts, type BenchState } from './bench-state.ts';
import type { TableReel } from './table-reel.ts';

/** The texts that count, by field. */
type Texts = ReturnType<typeof currentTexts>;

const CHANGED_BENCH =
  'The bench in use is not the one for which this reel was put on the table. Open the box again, which judges it again.';

/** What the reader's bench says to one worksheet. */
export interface BenchOverlay {
  /** Name of the bench, or of the reel where only that one speaks. */
  readonly name: string;
  /** Name of the reel of the box that lies on the table, where it says something to this sheet. */
  readonly reel?: string;
  /** Why that reel must not go on the projector of the bench. */
  readonly refusal?: string;
  /** Entries of the bench that the worksheet accepts. */
  readonly entries: Entries;
  /** Labels of the inputs whose entry from the bench was refused. */
  readonly leftOut: readonly string[];
}

type QuantityReading = Extract<BenchReading, { readonly unit: UnitName }>;
type QuantitySpec = Exclude<InputSpec, { readonly kind: 'choice' | 'count' | 'text' }>;

function numbers(text: string, reading: Reading): readonly number[] | undefined {
  const parsed = parseQuantityList(text, reading);
  return parsed.ok ? parsed.value.map(({ value }) => value) : undefined;
}

function areSame(some: readonly number[], others: readonly number[] | undefined): boolean {
  return (
    some.length === others?.length &&
    some.every((value, index) => {
      const other = others[index] ?? Number.NaN;
      return Math.abs(value - other) <= 1e-9 * Math.max(Math.abs(value), Math.abs(other));
    })
  );
}

/** The text with the unit that the bench means, where the worksheet would mean another one. */
function quantityText(
  text: string,
  reading: QuantityReading,
  spec: QuantitySpec,
): string | undefined {
  const benchUnit = reading.entryUnit ?? reading.unit;
  const { unit, minimum, maximum } = spec;
  const inBench = { unit, entryUnit: benchUnit, minimum, maximum };
  const inSheet = { ...inBench, entryUnit: spec.entryUnit ?? unit };
  // An angle becomes a time at the camera rate of the sheet itself.
  const isAngle = /(?:°|deg\w*)$/iu.test(plainTyping(text));
  if (spec.kind !== 'list' && spec.angleOf !== undefined && isAngle) return text;
  const isShare = UNITS[benchUnit].dimension === 'percent' && spec.unit === 'one';
  if (isShare) {
    const percent = parseQuantity(text, { unit: 'percent' });
    return percent.ok
      ? numberEntry(Number((percent.value.value / 100).toPrecision(12)))
      : undefined;
  }
  if (UNITS[benchUnit].dimension !== UNITS[spec.unit].dimension) return undefined;
  const meant = numbers(text, inBench);
  if (meant === undefined) return undefined;
  if (areSame(meant, numbers(text, inSheet))) return text;
  const withUnit = listParts(text)
    .map((part) => (isBareNumber(part) ? `${part} ${UNITS[benchUnit].symbol}` : part))
    .join('; ');
  return areSame(meant, numbers(withUnit, inSheet)) ? withUnit : undefined;
}

/** The number of a text, exact, where it is one. */
function exactNumber(text: string, reading: BenchReading): string | undefined {
  if ('unit' in reading) {
    const parsed = parseQuantity(text, reading);
    return parsed.ok ? parsed.value.exact.toFraction() : undefined;
  }
  const count = parseCount(text);
  return count.ok ? String(count.value) : undefined;
}

/**
 * The option that means the same: by its key, or by its number where the bench holds a number. Where
 * a worksheet tells things of one gauge apart (`16mm-optical`), it opens with the first of that gauge.
 */
function optionKey(text: string, reading: BenchReading, spec: ChoiceInput): string | undefined {
  if (Object.hasOwn(spec.options, text)) return text;
  if (reading.kind === 'choice') {
    return text === ''
      ? undefined
      : Object.keys(spec.options).find((key) => key.startsWith(`${text}-`));
  }
  const wanted = exactNumber(text, reading);
  if (wanted === undefined) return undefined;
  return Object.keys(spec.options).find(
    (key) => exactNumber(key, { kind: 'quantity', unit: 'one' }) === wanted,
  );
}

/** Text of a bench field as this input takes it; undefined where it says nothing that fits. */
export function convertBenchText(
  field: BenchField,
  text: string,
  spec: InputSpec,
): string | undefined {
  const reading = benchReading(field);
  // The bench holds no names.
  if (spec.kind === 'text') return undefined;
  if (spec.kind === 'choice') return optionKey(text, reading, spec);
  if ('unit' in reading && spec.kind !== 'count') return quantityText(text, reading, spec);
  return reading.kind === 'choice' ? undefined : text;
}

/** Text of the field that says the same where the reader left this one empty, if it fits the input. */
function standInText(field: BenchField, texts: Texts, spec: InputSpec): string | undefined {
  const standIn = standInOf(field);
  const text = standIn === undefined ? undefined : texts[standIn];
  if (standIn === undefined || text === undefined) return undefined;
  const converted = convertBenchText(standIn, text, spec);
  // Several fixed speeds do not say which one is in use.
  return converted !== undefined && parseEntry(spec, converted).ok ? converted : undefined;
}

function without(entries: Entries, keys: readonly string[]): Entries {
  return Object.fromEntries(Object.entries(entries).filter(([key]) => !keys.includes(key)));
}

/** The entries that the worksheet computes with, beside the book's: as many of these as it can take. */
function accepted(worksheet: Worksheet, book: Entries, offered: Entries): Entries {
  let kept = offered;
  while (Object.keys(kept).length > 0) {
    const { messages, outcome } = evaluate(worksheet, { ...book, ...kept });
    if (outcome !== undefined) return kept;
    const refused = Object.keys(kept).filter((key) => messages[key] !== undefined);
    if (refused.length === 0) break;
    kept = without(kept, refused);
  }
  // Each alone is in order, yet not together with the book's numbers: try to give up just one.
  const culprit = Object.keys(kept).find(
    (key) => evaluate(worksheet, { ...book, ...without(kept, [key]) }).outcome !== undefined,
  );
  return culprit === undefined ? {} : without(kept, [culprit]);
}

/** What bench and table offer a worksheet, before it is asked whether it takes that. */
interface Offered {
  readonly entries: Entries;
  /** Inputs about which the reel on the table says something. */
  readonly ofReel: ReadonlySet<string>;
  /** Inputs whose field of the bench is filled with what they cannot take. */
  readonly unfit: readonly string[];
}

function offeredTo(worksheet: Worksheet, texts: Texts, table: TableReel | undefined): Offered {
  const own = table?.sheets[worksheet.id] ?? {};
  const ofReel = new Set<string>();
  const entries: Record<string, string> = {};
  const unfit: string[] = [];
  for (const [key, spec] of Object.entries(worksheet.inputs)) {
    const given = ownProperty(own, key);
    if (given !== undefined && parseEntry(spec, given).ok) {
      entries[key] = given;
      ofReel.add(key);
      continue;
    }
    if (spec.bench === undefined) continue;
    if (ownProperty(table?.entries ?? {}, spec.bench) !== undefined) ofReel.add(key);
    const text = texts[spec.bench]?.trim() ?? '';
    const standIn =
      spec.onlyOwnBenchField === true ? undefined : standInText(spec.bench, texts, spec);
    const converted = text === '' ? standIn : convertBenchText(spec.bench, text, spec);
    if (converted !== undefined) entries[key] = converted;
    else if (text !== '') unfit.push(key);
  }
  return { entries, ofReel, unfit };
}

/** What speaks against the reel on the table; empty where nothing does. */
function refusalOf(table: TableReel, projectorGauge: string): string {
  // A word about another projector says nothing about this one.
  return table.judgedFor === projectorGauge ? table.refusal : CHANGED_BENCH;
}

/**
 * What the bench in use says to a worksheet, over the entries the book gives it. An entry that the
 * worksheet refuses is left out and named, so that it opens with answers.
 *
 * @returns undefined when the bench says nothing about any input of the worksheet
 */
export function benchOverlay(
  worksheet: Worksheet,
  bookEntries: Entries,
  state: BenchState,
  table?: TableReel,
): BenchOverlay | undefined {
  const inputs = worksheet.inputs;
  const texts = currentTexts(state, table?.entries);
  const offered = offeredTo(worksheet, texts, table);
  const entries = accepted(worksheet, fillEntries(inputs, bookEntries), offered.entries);
  const refused = Object.keys(offered.entries).filter((key) => !Object.hasOwn(entries, key));
  const leftOut = [...offered.unfit, ...refused].map((key) => inputs[key]?.label ?? key);
  if (Object.keys(entries).length + leftOut.length === 0) return undefined;
  const bench = current(state, 'benches');
  if (table === undefined) {
    return { name: (bench ?? current(state, 'reels'))?.name ?? '', entries, leftOut };
  }
  const name = bench?.name ?? '';
  if (!Object.keys(entries).some((key) => offered.ofReel.has(key))) {
    return { name, entries, leftOut };
  }
  const refusal = refusalOf(table, texts['projector.gauge'] ?? '');
  return { name, reel: table.name, ...(refusal === '' ? {} : { refusal }), entries, leftOut };
}
