/** Digit zero of the scripts whose digits a keyboard of the trade may give; nine more follow each. */
const ZEROS: readonly number[] = [0x06_60, 0x06_f0, 0x09_66, 0x09_e6, 0x0e_50];

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const SUBSCRIPTS = '₀₁₂₃₄₅₆₇₈₉';

// Direction marks, joiners, variation selectors, fillers, control characters, halves of a character.
const INVISIBLE = /[\p{Default_Ignorable_Code_Point}\p{Cf}\p{Cs}\u2800]/gu;
const CONTROL = /\p{Cc}+/gu;

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
  // Of what a plain keyboard gives, only ' and ` may have to be replaced.
  if (/^[ -&(-_a-~]*$/u.test(text)) return text.trim();
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
        // Unicode takes ⅔ apart into 2, a slash of fractions and 3.
        const fraction = sign.normalize('NFKD');
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
