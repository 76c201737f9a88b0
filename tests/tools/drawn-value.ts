import Fraction from 'fraction.js';

const FEW = 8;

/** How numbers and lists are shown. */
export interface Shown {
  readonly significantDigits: number;
  /** Longest list that is shown whole; a longer one by its ends, its length and its sums. */
  readonly longest?: number;
}

/**
 * Any value of ours as a line of text that a person can read: objects by their keys, long lists by their
 * ends, their length, their sum and the sum of their squares.
 */
export function drawnValue(value: unknown, shown: Shown = { significantDigits: 4 }): string {
  const { significantDigits, longest = FEW } = shown;
  const again = (part: unknown): string => drawnValue(part, shown);
  const number = (part: number): string => String(Number(part.toPrecision(significantDigits)));
  if (typeof value === 'number') return number(value);
  if (typeof value === 'string') return `“${value}”`;
  if (value instanceof Fraction) return value.toFraction();
  if (ArrayBuffer.isView(value)) return again([...(value as Float64Array)]);
  if (value instanceof Map) return again(Object.fromEntries(value as Map<string, unknown>));
  if (value instanceof Set) return again([...(value as Set<unknown>)]);
  if (Array.isArray(value)) {
    const list = value as readonly unknown[];
    if (list.length <= longest) return `[${list.map(again).join(', ')}]`;
    const ends = [...list.slice(0, 3).map(again), '…', ...list.slice(-2).map(again)].join(', ');
    const known = list.filter((each) => each !== undefined);
    const isNumeric = known.every((each) => typeof each === 'number');
    const sumOf = (power: number): number =>
      known.reduce<number>((total, each) => total + (each as number) ** power, 0);
    const unknown = known.length < list.length ? `, ${list.length - known.length} not known` : '';
    const sums = isNumeric
      ? `${unknown}, sum ${number(sumOf(1))}, of squares ${number(sumOf(2))}`
      : '';
    return `[${ends}; ${list.length} in all${sums}]`;
  }
  if (typeof value === 'object' && value !== null) {
    const parts = Object.entries(value)
      .filter(([, part]) => part !== undefined && typeof part !== 'function')
      .map(([key, part]) => `${key} ${again(part)}`);
    return `(${parts.join(', ')})`;
  }
  return String(value);
}

/** A value by its name, as the approved sums show it: to nine digits, and longer lists whole. */
export const namedToNineDigits = (name: string, value: unknown): string =>
  `${name}: ${drawnValue(value, { significantDigits: 9, longest: 14 })}`;
