import { OutOfRangeError } from '../../quantity/errors.ts';
import { ownProperty } from '../../quantity/own-property.ts';
import { formatNumber } from '../../quantity/format.ts';
import type { Parsed } from '../../quantity/parse-number.ts';
import { parseQuantityList } from '../../quantity/parse-list.ts';
import { parseCount, parseQuantity, type QuantityReading } from '../../quantity/parse-quantity.ts';
import { quotable } from '../../quantity/typed-text.ts';
import { UNITS, convertUnit, type Unit } from '../../quantity/units.ts';
import type {
  Worksheet,
  InputSpec,
  InputSpecs,
  ListInput,
  OptionalQuantityInput,
  Outcome,
  QuantityInput,
  TextInput,
  WorkingStep,
} from './types.ts';

/** Texts as typed, by input key. */
export type Entries = Readonly<Record<string, string>>;

/**
 * What became of a worksheet with these entries: either every entry was accepted and there is an
 * outcome, or at least one message and no outcome at all (a stale number would be worse than none).
 */
export interface Evaluation {
  /** Message beside a field, by input key. */
  readonly messages: Readonly<Record<string, string>>;
  /** Message that belongs to no single field. */
  readonly message?: string;
  readonly outcome?: Outcome;
  /** The steps; worked out when asked for. */
  readonly working?: () => readonly WorkingStep[];
}

type Read = Parsed<{ readonly value: unknown; readonly exact?: unknown }>;

/** The entries a worksheet opens with: its defaults, overlaid with those given. */
export function fillEntries(inputs: InputSpecs, given: Entries): Entries {
  return Object.fromEntries(
    Object.entries(inputs).map(([key, spec]) => [key, ownProperty(given, key) ?? spec.default]),
  );
}

function rangeText(spec: QuantityInput | OptionalQuantityInput | ListInput): string {
  const shown = spec.entryUnit ?? spec.unit;
  const inShown = (value: number): string => formatNumber(convertUnit(value, spec.unit, shown), 4);
  const unit: Unit = UNITS[shown];
  const symbol = unit.symbol === '' ? '' : ` ${unit.symbol}`;
  return `${inShown(spec.minimum)} to ${inShown(spec.maximum)}${symbol}`;
}

function refuse(reason: string, spec: { readonly accepted: string }): Read {
  return { ok: false, reason: `${reason}. Try ${spec.accepted}.` };
}

/** Unit and range of an input, as the parsers of core take them. */
function readingOf(spec: QuantityInput | OptionalQuantityInput | ListInput): QuantityReading {
  const { unit, entryUnit = unit, minimum, maximum } = spec;
  return { unit, entryUnit, minimum, maximum };
}

/**
 * A number inside an inclusive range; undefined outside. A typed decimal can miss a bound by one rounding step
 * of a unit conversion, and core takes the bound itself and nothing beyond it.
 */
function inRange(
  value: number,
  { minimum, maximum }: { readonly minimum: number; readonly maximum: number },
): number | undefined {
  const nearest = Math.min(maximum, Math.max(minimum, value));
  const slack = 1e-12 * Math.max(Math.abs(minimum), Math.abs(maximum));
  return Math.abs(value - nearest) <= slack ? nearest : undefined;
}

function readQuantity(
  spec: QuantityInput | OptionalQuantityInput,
  text: string,
  angleFps: number | undefined,
): Read {
  if (spec.kind === 'optional-quantity' && quotable(text) === '') {
    return { ok: true, value: { value: undefined } };
  }
  const parsed = parseQuantity(text, {
    ...readingOf(spec),
    ...(spec.angleOf === undefined ? {} : { angleFps: angleFps ?? Number.NaN }),
  });
  if (!parsed.ok) return refuse(parsed.reason, spec);
  const value = inRange(parsed.value.value, spec);
  if (value === undefined) {
    return refuse(`“${quotable(text)}” is outside the range ${rangeText(spec)}`, spec);
  }
  return { ok: true, value: { ...parsed.value, value } };
}

function readList(spec: ListInput, text: string): Read {
  if (spec.mayBeEmpty === true && text.trim() === '') {
    return { ok: true, value: { value: [], exact: [] } };
  }
  const parsed = parseQuantityList(text, readingOf(spec));
  if (!parsed.ok) return refuse(parsed.reason, spec);
  if (parsed.value.length > spec.longest) {
    return refuse(`That is more than ${spec.longest} entries`, spec);
  }
  const values = parsed.value.map(({ value }) => inRange(value, spec));
  const outside = values.indexOf(undefined);
  if (outside >= 0) {
    return refuse(`Entry ${outside + 1} is outside the range ${rangeText(spec)}`, spec);
  }
  return {
    ok: true,
    value: {
      value: values,
      exact: parsed.value.map(({ exact }) => exact),
    },
  };
}

/** A text on one line; control signs and line breaks would end up in file names and scripts. */
function readText(spec: TextInput, text: string): Read {
  const value = text.trim();
  if (value === '') {
    return spec.mayBeEmpty === true
      ? { ok: true, value: { value } }
      : refuse('Nothing is written here', spec);
  }
  if (/[\p{Cc}\p{Zl}\p{Zp}]/u.test(value) || !value.isWellFormed()) {
    return refuse('There is a sign in it that cannot be seen', spec);
  }
  if (value.length > spec.longest) return refuse(`That is more than ${spec.longest} signs`, spec);
  return { ok: true, value: { value } };
}

/**
 * Reads one entry the way a worksheet does: the value, or the message for its field. Never throws.
 * `angleFps` turns a shutter angle into a time; without it angles are refused.
 */
export function parseEntry(spec: InputSpec, text: string, angleFps?: number): Read {
  switch (spec.kind) {
    case 'quantity':
    case 'optional-quantity':
      return readQuantity(spec, text, angleFps);
    case 'list':
      return readList(spec, text);
    case 'text':
      return readText(spec, text);
    case 'count': {
      const parsed = parseCount(text, spec);
      if (!parsed.ok) return refuse(parsed.reason, spec);
      if (parsed.value < spec.minimum || parsed.value > spec.maximum) {
        return refuse(
          `“${quotable(text)}” is outside the range ${spec.minimum} to ${spec.maximum}`,
          spec,
        );
      }
      return { ok: true, value: { value: parsed.value } };
    }
    case 'choice':
      return Object.hasOwn(spec.options, text)
        ? { ok: true, value: { value: text } }
        : {
            ok: false,
            reason: `“${quotable(text)}” is not one of the choices: ${Object.values(spec.options).join('; ')}.`,
          };
  }
}

/** Whether the worksheet takes the first example of a field beside these values of the others. */
function isTaken(
  worksheet: Worksheet,
  key: string,
  values: Readonly<Record<string, unknown>>,
  exact: Readonly<Record<string, unknown>>,
): boolean {
  const spec = worksheet.inputs[key];
  if (spec === undefined || spec.kind === 'choice') return false;
  const isOneText = spec.kind === 'list' || spec.kind === 'text';
  const [first = ''] = spec.accepted.split(isOneText ? / or /u : /, | or /u);
  const read = parseEntry(spec, first);
  if (!read.ok) return false;
  try {
    worksheet.run({ ...values, [key]: read.value.value }, { ...exact, [key]: read.value.exact });
    return true;
  } catch (error) {
    if (error instanceof OutOfRangeError) return error.argument !== key;
    throw error;
  }
}

/**
 * Reads the entries and computes the worksheet. Never throws for anything a reader can type; an
 * error that is not about a value is a fault of ours and passes through.
 */
export function evaluate(worksheet: Worksheet, entries: Entries): Evaluation {
  const specs = worksheet.inputs;
  const values: Record<string, unknown> = {};
  const exact: Record<string, unknown> = {};
  const messages: Record<string, string> = {};

  const keys = Object.keys(specs);
  const needsRate = (key: string): boolean => {
    const spec = specs[key];
    return (
      (spec?.kind === 'quantity' || spec?.kind === 'optional-quantity') &&
      spec.angleOf !== undefined
    );
  };
  const ordered = [...keys.filter((key) => !needsRate(key)), ...keys.filter(needsRate)];
  for (const key of ordered) {
    const spec = specs[key];
    if (spec === undefined) continue;
    const rateKey =
      spec.kind === 'quantity' || spec.kind === 'optional-quantity' ? spec.angleOf : undefined;
    const angleFps = rateKey === undefined ? undefined : (values[rateKey] as number | undefined);
    const read = parseEntry(spec, ownProperty(entries, key) ?? spec.default, angleFps);
    if (read.ok) {
      values[key] = read.value.value;
      if (read.value.exact !== undefined) exact[key] = read.value.exact;
    } else {
      messages[key] = read.reason;
    }
  }
  if (Object.keys(messages).length > 0) return { messages };

  try {
    return { messages, ...worksheet.run(values, exact) };
  } catch (error) {
    if (!(error instanceof OutOfRangeError)) throw error;
    const spec = ownProperty(specs, error.argument);
    const expected = `Expected ${error.accepted}.`;
    if (spec === undefined) return { messages, message: `${error.argument}: ${expected}` };
    const isExample = spec.kind !== 'choice' && isTaken(worksheet, error.argument, values, exact);
    const example = isExample ? ` An entry looks like ${spec.accepted}.` : '';
    return { messages: { [error.argument]: `${expected}${example}` } };
  }
}
