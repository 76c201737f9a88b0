/** Digit zero of the scripts whose digits a keyboard of the trade may give; nine more follow each. */
const ZEROS: readonly number[] = [0x06_60, 0x06_f0, 0x09_66, 0x09_e6, 0x0e_50];

const VULGAR: ReadonlyMap<string, string> = new Map([
  ['½', '1/2'],
  ['⅓', '1/3'],
  ['⅔', '2/3'],
  ['¼', '1/4'],
  ['¾', '3/4'],
  ['⅕', '1/5'],
  ['⅖', '2/5'],
  ['⅗', '3/5'],
  ['⅘', '4/5'],
  ['⅙', '1/6'],
  ['⅚', '5/6'],
  ['⅐', '1/7'],
  ['⅛', '1/8'],
  ['⅜', '3/8'],
  ['⅝', '5/8'],
  ['⅞', '7/8'],
  ['⅑', '1/9'],
  ['⅒', '1/10'],
]);

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const SUBSCRIPTS = '₀₁₂₃₄₅₆₇₈₉';

// Direction marks, joiners, variation selectors, fillers, control characters, halves of a character.
const INVISIBLE = /[\p{Default_Ignorable_Code_Point}\p{Cf}\p{Cs}\u2800]/gu;
const CONTROL = /\p{Cc}+/gu;

/** What a plain keyboard gives, without accents and doubled marks: nothing in it has to be replaced. */
const PLAIN = /^(?!.*'')[ -_a-~]*$/u;

/** Longest part of an entry that a message quotes, characters. */
const LONGEST_QUOTE = 40;

/**
 * A typed text fit to be quoted in a message: on one line, without characters that cannot be seen,
 * cut where it is long.
 *
 * @returns the text to quote; empty where nothing can be seen in it
 * @example quotable('\u202e18\u202c ') // '18'
 */
export function quotable(text: string): string {
  if (text.length <= LONGEST_QUOTE && /^[!-~]*$/u.test(text)) return text;
  const line = text
    .replaceAll(INVISIBLE, '')
    .replaceAll(/[\p{Cc}\s]+/gu, ' ')
    .trim();
  const characters = [...line];
  return characters.length > LONGEST_QUOTE
    ? `${characters.slice(0, LONGEST_QUOTE).join('')}…`
    : line;
}

function latinDigit(digit: string): string {
  const code = digit.codePointAt(0) ?? 0;
  const zero = ZEROS.find((first) => code >= first && code <= first + 9);
  return zero === undefined ? digit : String(code - zero);
}

function scriptFraction(_whole: string, before: string, top: string, bottom: string): string {
  const digits = (text: string, row: string): string =>
    [...text].map((digit) => row.indexOf(digit)).join('');
  return `${before === '' ? '' : `${before} `}${digits(top, SUPERSCRIPTS)}/${digits(bottom, SUBSCRIPTS)}`;
}

/**
 * A typed or pasted text in the characters that the parsers know: digits of any script, full-width
 * forms, ready-made fractions, every kind of slash, minus, prime, quotation mark, degree sign and
 * space become the plain ones; direction marks and other characters that cannot be seen go.
 *
 * @returns the same entry in plain characters; line breaks stay, because they separate a list
 * @example plainTyping('16⅔') // '16 2/3'
 */
export function plainTyping(text: string): string {
  if (PLAIN.test(text)) return text.trim();
  return text
    .replaceAll(INVISIBLE, '')
    .replaceAll(CONTROL, (controls) => (controls.includes('\n') ? '\n' : ' '))
    .replaceAll(/[\uff01-\uff5e]/gu, (wide) =>
      String.fromCodePoint((wide.codePointAt(0) ?? 0) - 0xfe_e0),
    )
    .replaceAll(/\p{Zs}/gu, ' ')
    .replaceAll(/\p{Nd}/gu, latinDigit)
    .replaceAll(/(\d?)([⁰¹²³⁴-⁹]+)[/⁄∕]([₀-₉]+)/gu, scriptFraction)
    .replaceAll(/(\d?)⅟/gu, (_whole, before: string) => (before === '' ? '1/' : `${before} 1/`))
    .replaceAll(
      /(\d?)([½⅓⅔¼¾⅕-⅞⅐-⅒])(?=(\d?))/gu,
      (_whole, before: string, sign: string, after) => {
        const fraction = VULGAR.get(sign) ?? sign;
        return `${before === '' ? '' : `${before} `}${fraction}${after === '' ? '' : ' '}`;
      },
    )
    .replaceAll(/[⁄∕]/gu, '/')
    .replaceAll(/[−‐‑‒–﹣]/gu, '-')
    .replaceAll(/''|[”“″„‶ʺ〃]|[’‘′][’‘′]/gu, '"')
    .replaceAll(/[’‘′`´ʹʼ]/gu, "'")
    .replaceAll(/[º˚]/gu, '°')
    .replaceAll('℃', '°C')
    .replaceAll('℉', '°F')
    .replaceAll('μ', 'µ')
    .replaceAll('٪', '%')
    .replaceAll('٫', '.')
    .replaceAll('٬', ' ')
    .replaceAll('،', ',')
    .replaceAll(/[؛；]/gu, ';')
    .trim();
}
