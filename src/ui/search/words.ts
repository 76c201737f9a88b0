// How a text becomes the words that are indexed and looked for; the same for both.

/** Vulgar fractions as people type or paste them; the index holds `2/3`. */
function withPlainFractions(text: string): string {
  return text.replaceAll(/[\u00BC-\u00BE\u2150-\u215E]/gu, (sign) => ` ${sign.normalize('NFKD')} `);
}

/** Letters without their accents, so that `défilement` and `defilement` are one word. */
function withoutAccents(text: string): string {
  return text.normalize('NFD').replaceAll(/\p{M}/gu, '').replaceAll('ß', 'ss');
}

/** Spellings of two countries that differ in more than an ending. */
const SPELLINGS: Readonly<Record<string, string>> = {
  color: 'colour',
  colored: 'coloured',
  mold: 'mould',
  moldy: 'mouldy',
  gray: 'grey',
  meter: 'metre',
  center: 'centre',
  fiber: 'fibre',
  analog: 'analogue',
  program: 'programme',
  judgment: 'judgement',
  labor: 'labour',
  aluminum: 'aluminium',
  inch: 'in',
  feet: 'ft',
  foot: 'ft',
};

const ENDINGS = ['ings', 'ing', 'ies', 'ed', 'es', 's', 'y', 'e'];
/** What is left of a word when an ending goes must still tell it from others. */
const SHORTEST_STEM = 4;

/** The word without its ending, so that a question in the plural finds the singular. */
export function stem(word: string): string {
  if (/\d/u.test(word)) return word;
  const spelt = SPELLINGS[word] ?? word.replace(/is(e|ed|es|ing|ation)$/u, 'iz$1');
  const ending = ENDINGS.find(
    (each) => spelt.endsWith(each) && spelt.length - each.length >= SHORTEST_STEM,
  );
  return ending === undefined ? spelt : spelt.slice(0, -ending.length);
}

/**
 * Words of a text or a query: lower case, letters and digits apart (`18fps` is `18` and `fps`), a
 * fraction such as `1/54` whole.
 */
export function wordsOf(text: string): readonly string[] {
  const plain = withoutAccents(withPlainFractions(text).toLowerCase()).replaceAll('\u2044', '/');
  return plain.match(/\d+\/\d+|\d+(?:[.,]\d+)?|\p{L}+/gu) ?? [];
}

/** Words that ask but do not tell; left out of a query that holds others. */
const SMALL_WORDS: ReadonlySet<string> = new Set(
  'a an and are as at be can do does for from get has have how i if in into is it its long may me much my of on or out should that the there these they this to too up was what when where which why will with you your'.split(
    ' ',
  ),
);

/** The words of a query that say something; all of them where none does. */
export function tellingWords(query: string): readonly string[] {
  const words = wordsOf(query);
  const telling = words.filter((word) => !SMALL_WORDS.has(word));
  return telling.length === 0 ? words : telling;
}
