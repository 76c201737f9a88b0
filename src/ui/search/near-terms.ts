/** The words of the book: `terms` may stand in for a mistyped word, `words` are known as they are. */
export interface Vocabulary {
  /** Words of titles, glossary and search keywords. */
  readonly terms: readonly string[];
  /** Every word of the index, in the order of `sort()`. */
  readonly words: readonly string[];
}

/** Endings that an index by word stems treats as the same word. */
const ENDINGS = ['s', 'es', 'd', 'ed', 'r', 'er', 'ing', 'ly'];

/** Words of a query or a text: lower case, split at everything that is neither letter nor digit. */
export function wordsOf(text: string): readonly string[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}

/**
 * Fewest single-letter changes that turn one word into the other: a letter put in, left out, changed,
 * or two neighbours swapped.
 *
 * @returns the number of changes, or `limit + 1` as soon as it must be more than `limit`
 */
export function editDistance(from: string, to: string, limit: number): number {
  if (Math.abs(from.length - to.length) > limit) return limit + 1;
  let twoBack: readonly number[] = [];
  let before: readonly number[] = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= to.length; column += 1) {
      const same = from[row - 1] === to[column - 1];
      let best = Math.min(
        (before[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (before[column - 1] ?? 0) + (same ? 0 : 1),
      );
      const swapped = from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      if (row > 1 && column > 1 && swapped) best = Math.min(best, (twoBack[column - 2] ?? 0) + 1);
      current.push(best);
    }
    if (Math.min(...current) > limit) return limit + 1;
    twoBack = before;
    before = current;
  }
  return Math.min(before[to.length] ?? 0, limit + 1);
}

/** Changes that a mistyped word of this length may need; short words have too many neighbours. */
function allowedEdits(word: string): number {
  if (word.length < 4) return 0;
  return word.length < 6 ? 1 : 2;
}

/** Whether some word begins like this; by halving, since a reader waits. */
function isBeginning(start: string, words: readonly string[]): boolean {
  let low = 0;
  let high = words.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((words[middle] ?? '') < start) low = middle + 1;
    else high = middle;
  }
  return words[low]?.startsWith(start) ?? false;
}

function isKnown(word: string, { words }: Vocabulary): boolean {
  if (isBeginning(word, words)) return true;
  return ENDINGS.some((ending) => {
    if (!word.endsWith(ending)) return false;
    const stem = word.slice(0, -ending.length);
    return stem.length > 1 && isBeginning(stem, words) && words.includes(stem);
  });
}

/** The term nearest to a word, or undefined when none is near enough. */
export function nearestTerm(word: string, vocabulary: Vocabulary): string | undefined {
  const limit = allowedEdits(word);
  let nearest: { readonly term: string; readonly rank: number } | undefined;
  for (const term of vocabulary.terms) {
    const distance = editDistance(word, term, limit);
    if (distance > limit) continue;
    // People seldom miss the first letter.
    const rank = distance * 2 + (term[0] === word[0] ? 0 : 1);
    if (nearest === undefined || rank < nearest.rank) nearest = { term, rank };
  }
  return nearest?.term;
}

/**
 * The query as the book can answer it. A word that the book does not know gives way to the nearest
 * term, and is left out where none is near. A number is never bent: with one that the book does not
 * know there is nothing to find.
 *
 * @returns the query as typed where every word is known; empty where nothing can be found
 */
export function readQuery(query: string, vocabulary: Vocabulary): string {
  const words = wordsOf(query);
  const unknown = new Set(words.filter((word) => !isKnown(word, vocabulary)));
  if (unknown.size === 0) return query;
  if ([...unknown].some((word) => /\d/u.test(word))) return '';
  return words
    .flatMap((word) => (unknown.has(word) ? (nearestTerm(word, vocabulary) ?? []) : word))
    .join(' ');
}
