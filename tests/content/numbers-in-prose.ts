import { UNITS } from '../../src/quantity/units.ts';
import { componentUses, proseBlocks } from './mdx-blocks.ts';

/** A number with a unit in running text that nothing vouches for. */
export interface UnsourcedNumber {
  readonly line: number;
  readonly number: string;
  readonly text: string;
}

const words = [
  'frames per second',
  'per cent',
  'percent',
  'seconds?',
  'minutes?',
  'hours?',
  'days?',
  'weeks?',
  'years?',
  'frames?',
  'feet',
  'foot',
  'inch(?:es)?',
  'metres?',
  'millimetres?',
  'micrometres?',
  'stops?',
  'semitones?',
  'degrees?',
  'pixels?',
  'lines?',
  'lux',
  'lumens?',
  'watts?',
  'volts?',
  'ppm',
  'fps',
  'rpm',
  'kW',
  'W',
  'V',
  'kg',
  'g',
  'nm',
  'ml',
  'l',
];
const escaped = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\/]/gu, String.raw`\$&`);
const symbols = Object.values(UNITS)
  .map(({ symbol }) => symbol)
  .filter((symbol) => symbol !== '' && symbol !== 'D')
  .map(escaped);
const unitPattern = [...words, ...symbols].sort((a, b) => b.length - a.length).join('|');
// 18 · 16 2/3 · 16⅔ · 1/54 · 30000/1001 · 4.17 · 1,5 · 12 345 · −3
const one = String.raw`\d{1,3}(?:[ \u00a0\u202f]\d{3})+|\d+[ \u00a0]\d+\/\d+|\d+(?:[.,]\d+)?(?:\/\d+(?:[.,]\d+)?)?[½⅓⅔¼¾]?`;
const several = String.raw`(?<![\w.,/])(?:${one})(?:\s*(?:–|-|to|or|and|×)\s*(?:${one}))*`;
// A single letter is a unit only after a space: “1024s” and “the 1960s” are plurals.
const NUMBER_WITH_UNIT = new RegExp(
  String.raw`${several}(?:[ \u00a0\u202f](?:${unitPattern})|-?(?!\p{L}(?!\p{L}))(?:${unitPattern}))(?![\p{L}\d])`,
  'gu',
);

/** Every number with a unit in a text, as written, white space made ordinary. */
export function numbersWithUnits(text: string): readonly string[] {
  return [...text.matchAll(NUMBER_WITH_UNIT)].map(([number]) => number.replaceAll(/\s/gu, ' '));
}

const visibleAttributes = ['caption', 'about', 'label', 'title'];

/**
 * Numbers with units in a chapter's prose that neither a source in the same paragraph, list item or
 * table, nor the allowed list vouches for. Numbers in a caption must be those of the entries that the
 * component itself computes from.
 */
export function unsourcedNumbers(
  body: string,
  isAllowed: (number: string) => boolean,
): readonly UnsourcedNumber[] {
  const inProse = proseBlocks(body)
    .filter(({ hasSource }) => !hasSource)
    .flatMap(({ line, text }) =>
      numbersWithUnits(text)
        .filter((number) => !isAllowed(number))
        .map((number) => ({ line, number, text })),
    );
  const inAttributes = componentUses(body).flatMap(({ name, attributes, line }) =>
    visibleAttributes.flatMap((key) => {
      const text = attributes[key] ?? '';
      const entries = attributes['entries'] ?? '';
      return numbersWithUnits(text)
        .filter((number) => !isAllowed(number) && !isAmong(number, entries))
        .map((number) => ({ line, number, text: `${name} ${key}: ${text}` }));
    }),
  );
  return [...inProse, ...inAttributes];
}

function isAmong(number: string, entries: string): boolean {
  const digits = /^[\d ,./½⅓⅔¼¾]*[\d½⅓⅔¼¾]/u.exec(number)?.[0] ?? '';
  return (
    digits !== '' && new RegExp(`(?<![\\d./,])${escaped(digits)}(?![\\d./,])`, 'u').test(entries)
  );
}
