import MiniSearch, { type SearchResult } from 'minisearch';
import { excerptOf, type Stretch } from './excerpt.ts';
import { KINDS, type Kind } from './kinds.ts';
import type { StoredRecord } from './search-record.ts';
import { stem, tellingWords, wordsOf } from './words.ts';

/** One result as shown. */
export interface Hit {
  readonly url: string;
  readonly kind: Kind;
  readonly title: string;
  /** Where in the book it stands. */
  readonly place: string;
  readonly excerpt: readonly Stretch[];
}

export interface HitGroup {
  readonly kind: Kind;
  readonly total: number;
  readonly hits: readonly Hit[];
}

export interface Findings {
  /** What was looked for, when that is not what was typed. */
  readonly insteadOf?: string;
  readonly query: string;
  /** No result holds all the words; these hold some of them. */
  readonly isPartial: boolean;
  readonly total: number;
  /** The best of all kinds, best first. */
  readonly best: readonly Hit[];
  readonly groups: readonly HitGroup[];
}

export interface SearchIndex {
  /** Looks a query up; `most` is how many hits of each kind are given in full. */
  find(query: string, most: (kind: Kind) => number): Findings;
}

const MOST_BEST = 3;
/** A worksheet or a chapter is more often meant than a publication that mentions the word. */
const KIND_WEIGHTS: Readonly<Record<Kind, number>> = {
  chapter: 1.8,
  section: 1.1,
  worksheet: 1.35,
  fault: 0.6,
  tool: 1.3,
  table: 1,
  term: 0.8,
  example: 0.75,
  source: 0.35,
};

/** Builds the index from the records of the book. */
export function makeSearchIndex(records: readonly StoredRecord[]): SearchIndex {
  const index = new MiniSearch<StoredRecord & { readonly id: number }>({
    fields: ['title', 'words', 'text', 'body'],
    tokenize: (text) => [...wordsOf(text)],
    processTerm: stem,
  });
  index.addAll(records.map((record, id) => ({ ...record, id })));

  const lookUp = (words: readonly string[], isFuzzy: boolean, combineWith: 'AND' | 'OR') =>
    index.search(words.join(' '), {
      combineWith,
      boost: { title: 4, words: 4, text: 1.4, body: 1 },
      boostDocument: (id) => KIND_WEIGHTS[records[id as number]?.kind ?? 'source'],
      // A number is never bent and has no beginning of its own.
      prefix: (term) => term.length > 2 && !/\d/u.test(term),
      fuzzy: (term) => (isFuzzy && term.length > 3 && !/\d/u.test(term) ? 0.25 : false),
      weights: { fuzzy: 0.3, prefix: 0.6 },
      // A chapter has many other words; their number must not count against each of them.
      bm25: { k: 1.2, b: 0.2, d: 0.5 },
    });

  /** All words as typed; then with slips of the pen mended; then as many of them as can be. */
  const search = (words: readonly string[]) => {
    const all = lookUp(words, false, 'AND');
    if (all.length > 0) return { results: all, isPartial: false };
    const mended = lookUp(words, true, 'AND');
    if (mended.length > 0) return { results: mended, isPartial: false };
    const known = words.filter((word) => lookUp([word], false, 'AND').length > 0);
    const some = lookUp(known.length > 0 ? known : words, known.length === 0, 'OR');
    return { results: some, isPartial: some.length > 0 && words.length > 1 };
  };

  return {
    find(query, most) {
      const words = tellingWords(query);
      const { results, isPartial } = search(words);
      const asked = answeredQuery(words, results);
      const hits = results.map((result) => hitOf(records[result.id as number], result));
      const groups = (Object.keys(KINDS) as Kind[]).flatMap((kind) => {
        const ofKind = hits.filter((hit) => hit.kind === kind);
        return ofKind.length === 0
          ? []
          : [{ kind, total: ofKind.length, hits: ofKind.slice(0, most(kind)).map(withExcerpt) }];
      });
      return {
        ...(asked === undefined ? {} : { insteadOf: query }),
        query: asked ?? query,
        isPartial,
        total: hits.length,
        best: bestOf(hits).map(withExcerpt),
        groups,
      };
    },
  };
}

/**
 * The best hits: no more than one of a page, and no more than one definition or publication among
 * them, because a reader wants places to go to.
 */
function bestOf(hits: readonly RawHit[]): readonly RawHit[] {
  const seen = new Set<string>();
  const best = hits.filter(({ kind, record }) => {
    const isReference = kind === 'term' || kind === 'source';
    const place = isReference ? 'reference' : record.url.replace(/#.*$/u, '');
    if (seen.has(place)) return false;
    seen.add(place);
    return true;
  });
  return best.slice(0, MOST_BEST);
}

interface RawHit {
  readonly kind: Kind;
  readonly record: StoredRecord;
  readonly stems: ReadonlySet<string>;
}

function hitOf(record: StoredRecord | undefined, result: SearchResult): RawHit {
  if (record === undefined) throw new Error('a result without a record');
  return { kind: record.kind, record, stems: new Set(result.terms) };
}

/** Excerpts are made for the hits that are shown only. */
function withExcerpt({ record, stems }: RawHit): Hit {
  const { kind, url, title, place, text } = record;
  return { kind, url, title, place, excerpt: excerptOf(text, stems) };
}

/** What was answered, in the words of the book, where that is not what was typed. */
function answeredQuery(
  words: readonly string[],
  results: readonly SearchResult[],
): string | undefined {
  const best = results[0];
  if (best === undefined) return undefined;
  const answered = words.flatMap((word) => {
    const root = stem(word);
    const isKnown = results.some(({ terms }) =>
      terms.some((term) => term === root || term.startsWith(root)),
    );
    if (isKnown) return [word];
    // The word of the best result that this one was taken for, if it was taken for any.
    const taken = best.queryTerms.includes(root)
      ? best.terms.find((term) => !words.some((other) => stem(other) === term))
      : undefined;
    return taken === undefined ? [] : [taken];
  });
  const isSame =
    answered.length === words.length && answered.every((word, at) => word === words[at]);
  return isSame ? undefined : answered.join(' ');
}
