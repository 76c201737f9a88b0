import { parseEntry, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import type { InputSpec, InputSpecs } from '../../src/worksheets/machine/types.ts';
import type { KnownEntries, Meant } from './random-entries.ts';

function isSame(found: unknown, wanted: Meant): boolean {
  if (typeof wanted === 'number' && typeof found === 'number') {
    return Math.abs(found - wanted) <= 1e-9 * Math.max(Math.abs(wanted), 1e-6);
  }
  if (Array.isArray(wanted) && Array.isArray(found)) {
    return (
      wanted.length === found.length &&
      wanted.every((value: number, index) => isSame(found[index], value))
    );
  }
  return found === wanted;
}

/** True where a point or comma could part off thousands somewhere in the entry. */
function mayHoldThousands(text: string): boolean {
  return /(?<![\p{Nd}.,٫])\p{Nd}{1,3}[.,٫．，]\p{Nd}{3}(?!\p{Nd})/u.test(text);
}

function isOutside(spec: InputSpec, wanted: Meant): boolean {
  if (
    spec.kind === 'choice' ||
    spec.kind === 'text' ||
    wanted === undefined ||
    typeof wanted === 'string'
  )
    return false;
  const values = typeof wanted === 'number' ? [wanted] : wanted;
  const near = 1e-9 * Math.max(Math.abs(spec.minimum), Math.abs(spec.maximum));
  return values.some((value) => value <= spec.minimum + near || value >= spec.maximum - near);
}

function misread(
  spec: InputSpec,
  text: string,
  wanted: Meant,
  rate: number | undefined,
): string | undefined {
  const read = parseEntry(spec, text, rate);
  // Where thousands come into question the entry may be refused, or read so if it is outside else.
  const isUnclear = mayHoldThousands(text);
  if (read.ok) {
    if (isSame(read.value.value, wanted)) return undefined;
    if (isUnclear && isOutside(spec, wanted)) return undefined;
    return `“${text}” is read as ${String(read.value.value)}, meant was ${String(wanted)}`;
  }
  if (isOutside(spec, wanted)) return undefined;
  if (isUnclear && read.reason.includes('could mean')) return undefined;
  // An angle waits for a rate, and the rate was refused for a fault of its own.
  if (rate === undefined && read.reason.includes('needs a valid camera rate')) return undefined;
  // A comma in a list of one could part two entries.
  const isAlone = Array.isArray(wanted) && wanted.length === 1 && text.includes(',');
  if (isAlone && read.reason.includes('two entries')) return undefined;
  return `“${text}”, meant as ${String(wanted)}, is refused: ${read.reason}`;
}

function rateOf(specs: InputSpecs, spec: InputSpec, entries: Entries): number | undefined {
  const isAngled = spec.kind === 'quantity' || spec.kind === 'optional-quantity';
  const key = isAngled ? spec.angleOf : undefined;
  const rate = key === undefined ? undefined : specs[key];
  if (key === undefined || rate === undefined) return undefined;
  const read = parseEntry(rate, entries[key] ?? '');
  return read.ok ? (read.value.value as number) : undefined;
}

/** Entries that are read as something else than they were typed to mean, as sentences. */
export function misreadEntries(
  specs: InputSpecs,
  { entries, meant }: KnownEntries,
): readonly string[] {
  return Object.keys(meant).flatMap((key) => {
    const spec = specs[key];
    if (spec === undefined) return [`no input ${key}`];
    const rate = rateOf(specs, spec, entries);
    const fault = misread(spec, entries[key] ?? '', meant[key], rate);
    return fault === undefined ? [] : [`${key}: ${fault}`];
  });
}
