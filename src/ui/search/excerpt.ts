import { stem, wordsOf } from './words.ts';

/** A stretch of text; `marked` where it matches the query. */
export interface Stretch {
  readonly text: string;
  readonly marked: boolean;
}

const LONGEST = 190;

/** The text from a little before the first match, cut at words. */
function windowOf(text: string, at: number): string {
  if (text.length <= LONGEST) return text;
  const start = at < LONGEST - 40 ? 0 : text.lastIndexOf(' ', at - 60) + 1;
  const cut = text.slice(start, start + LONGEST);
  const isWhole = start + LONGEST >= text.length;
  const shown = isWhole ? cut : cut.slice(0, Math.max(cut.lastIndexOf(' '), 1));
  return `${start > 0 ? '…' : ''}${shown}${isWhole ? '' : '…'}`;
}

/** The part of a text to show under a result, with the words that were found marked. */
export function excerptOf(text: string, foundStems: ReadonlySet<string>): readonly Stretch[] {
  const isFound = (word: string): boolean => {
    const [first = ''] = wordsOf(word);
    const root = stem(first);
    return [...foundStems].some(
      (found) => root === found || (found.length > 3 && root.startsWith(found)),
    );
  };
  const pieces = (whole: string): readonly string[] => whole.split(/(\d+\/\d+|[\p{L}\p{M}\d]+)/u);
  let at = 0;
  for (const piece of pieces(text)) {
    if (isFound(piece)) break;
    at += piece.length;
  }
  const stretches: Stretch[] = [];
  for (const piece of pieces(windowOf(text, at >= text.length ? 0 : at))) {
    if (piece === '') continue;
    const marked = isFound(piece);
    const last = stretches.at(-1);
    if (last !== undefined && !last.marked && !marked) {
      stretches[stretches.length - 1] = { text: last.text + piece, marked };
    } else {
      stretches.push({ text: piece, marked });
    }
  }
  return stretches;
}
