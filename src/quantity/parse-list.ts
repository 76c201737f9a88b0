import type { Parsed } from './parse-number.ts';
import { parseQuantity, type Quantity, type QuantityReading } from './parse-quantity.ts';
import { plainTyping, quotable } from './typed-text.ts';

/** Most entries that a list is read to; a field may allow fewer. */
const MOST_ENTRIES = 500;

/**
 * The entries of a list as typed: separated by semicolons, line breaks, or commas followed by a space
 * (a comma without a space is a decimal comma). Empty places are passed over.
 *
 * @returns the texts of the entries in plain characters, in the order typed
 */
export function listParts(text: string): readonly string[] {
  return plainTyping(text)
    .split(/;|\n|,\s+/u)
    .map((part) => part.trim())
    .filter((part) => part !== '');
}

/** `24,25` alone could be one entry with a decimal comma, or two entries. */
function twoFromOne(part: string, reading: QuantityReading): string | undefined {
  const [, left, right] = /^([1-9]\d*),([1-9]\d*)$/u.exec(part) ?? [];
  if (left === undefined || right === undefined) return undefined;
  const { minimum = -Infinity, maximum = Infinity } = reading;
  const isEntry = (text: string): boolean => {
    const parsed = parseQuantity(text, reading);
    return parsed.ok && parsed.value.value >= minimum && parsed.value.value <= maximum;
  };
  const areAllEntries = isEntry(left) && isEntry(right) && isEntry(`${left}.${right}0`);
  return areAllEntries
    ? `“${part}” could mean ${left}.${right} or the two entries ${left}; ${right}: write it as one of these`
    : undefined;
}

/**
 * Reads a list of quantities separated by semicolons, line breaks, or commas followed by a space.
 * Never throws.
 *
 * @returns the quantities in the order typed, or the reason why the first bad entry has none
 * @example parseQuantityList('24; 25', { unit: 'fps' }) // { ok: true, value: [{ value: 24 }, { value: 25 }] }
 */
export function parseQuantityList(
  text: string,
  reading: QuantityReading,
): Parsed<readonly Quantity[]> {
  const parts = listParts(text);
  if (parts.length === 0) return { ok: false, reason: 'Nothing is entered' };
  if (parts.length > MOST_ENTRIES) {
    return { ok: false, reason: `That list has more than ${MOST_ENTRIES} entries` };
  }
  const [only = ''] = parts;
  const unclear = parts.length === 1 ? twoFromOne(only, reading) : undefined;
  if (unclear !== undefined) return { ok: false, reason: unclear };
  const values: Quantity[] = [];
  for (const part of parts) {
    if (/^\d+(?:\/\d+)?(?:,\d+(?:\/\d+)?){2,}$/u.test(part)) {
      const reason = `“${quotable(part)}” cannot be read as one entry: separate several by semicolons`;
      return { ok: false, reason };
    }
    const parsed = parseQuantity(part, reading);
    if (!parsed.ok) {
      const place = parts.length === 1 ? '' : ` (entry ${values.length + 1})`;
      return { ok: false, reason: `${parsed.reason}${place}` };
    }
    values.push(parsed.value);
  }
  return { ok: true, value: values };
}
