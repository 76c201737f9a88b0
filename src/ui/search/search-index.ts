import { KINDS, type Kind } from './kinds.ts';
import { readQuery, wordsOf, type Vocabulary } from './near-terms.ts';

/** A stretch of text; `marked` where it matches the query. */
export interface Stretch {
  readonly text: string;
  readonly marked: boolean;
}

/** One result as shown. */
export interface Hit {
  readonly url: string;
  readonly title: string;
  /** Where in the book it stands. */
  readonly place: string;
  readonly excerpt: readonly Stretch[];
  /** Sections of a chapter that match. */
  readonly sections: readonly { readonly url: string; readonly title: string }[];
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
  readonly total: number;
  readonly groups: readonly HitGroup[];
}

/** The part of pagefind's browser interface that is used here. */
interface PagefindResult {
  readonly score: number;
  data(): Promise<{
    readonly url: string;
    readonly excerpt: string;
    readonly meta: Readonly<Record<string, string>>;
    readonly sub_results: readonly { readonly url: string; readonly title: string }[];
  }>;
}
interface Pagefind {
  options(options: object): Promise<void>;
  init(): Promise<void>;
  search(
    query: string | null,
    options?: { readonly filters?: object },
  ): Promise<{ readonly results: readonly PagefindResult[] }>;
}

export interface SearchIndex {
  /** Looks a query up; `most` is how many hits of each kind are read in full. */
  find(query: string, most: (kind: Kind) => number): Promise<Findings>;
}

const PAGEFIND = '/pagefind/pagefind.js';
const VOCABULARY = '/pagefind/vocabulary.json';
/** Sections of one chapter that are worth listing under it. */
const MOST_SECTIONS = 3;

/** Loads the index that the build made; nothing of it is asked for before this. */
export async function openSearchIndex(): Promise<SearchIndex> {
  // Made after the bundle, so no bundler may look for it.
  const [pagefind, vocabulary] = await Promise.all([
    import(/* @vite-ignore */ PAGEFIND) as Promise<Pagefind>,
    fetch(VOCABULARY).then((response) => response.json() as Promise<Vocabulary>),
  ]);
  await pagefind.options({
    excerptLength: 24,
    excerptEllipsis: '…',
    ranking: { pageLength: 0.4, metaWeights: { title: 6, words: 5, kind: 0, place: 0 } },
  });
  await pagefind.init();
  return {
    async find(query, most) {
      const read = readQuery(query, vocabulary);
      const { asked, groups } = await findMost(read, (words) => findGroups(pagefind, words, most));
      return {
        ...(asked === query ? {} : { insteadOf: query }),
        query: asked,
        total: groups.reduce((sum, group) => sum + group.total, 0),
        groups,
      };
    },
  };
}

type Groups = readonly HitGroup[];

/**
 * Looks for all words together. Where nothing holds them all, the word is left out without which most
 * is found, and so on: a long question still leads somewhere.
 */
async function findMost(
  query: string,
  find: (query: string) => Promise<Groups>,
): Promise<{ readonly asked: string; readonly groups: Groups }> {
  let asked = query;
  let groups: Groups = asked === '' ? [] : await find(asked);
  for (let words = wordsOf(asked); groups.length === 0 && words.length > 1;) {
    const fewer = words.map((_, left) => words.filter((_word, index) => index !== left));
    const found = await Promise.all(fewer.map((each) => find(each.join(' '))));
    const count = (at: number): number =>
      (found[at] ?? []).reduce((sum, { total }) => sum + total, 0);
    const best = fewer.reduce((most, _, at) => (count(at) > count(most) ? at : most), 0);
    words = fewer[best] ?? [];
    asked = words.join(' ');
    groups = found[best] ?? [];
  }
  return { asked, groups };
}

async function findGroups(
  pagefind: Pagefind,
  query: string,
  most: (kind: Kind) => number,
): Promise<Groups> {
  const groups = await Promise.all(
    (Object.keys(KINDS) as Kind[]).map(async (kind) => {
      const { results } = await pagefind.search(query, { filters: { kind } });
      const hits = await Promise.all(results.slice(0, most(kind)).map(readHit));
      return { kind, total: results.length, hits };
    }),
  );
  return groups.filter((group) => group.total > 0);
}

async function readHit(result: PagefindResult): Promise<Hit> {
  const { url, meta, excerpt, sub_results: sections } = await result.data();
  return {
    url,
    title: meta['title'] ?? url,
    place: meta['place'] ?? '',
    excerpt: stretchesOf(excerpt),
    sections: sections
      .filter((section) => section.url.includes('#') && section.url !== url)
      .slice(0, MOST_SECTIONS)
      .map((section) => ({ url: section.url, title: section.title })),
  };
}

/** Splits pagefind's excerpt at its marks, so that it is shown as text and never as markup. */
export function stretchesOf(excerpt: string): readonly Stretch[] {
  return excerpt.split('<mark>').flatMap((part, index) => {
    if (index === 0) return plain(part);
    const [marked = '', rest = ''] = part.split('</mark>');
    return [{ text: decoded(marked), marked: true }, ...plain(rest)];
  });
}

function plain(text: string): readonly Stretch[] {
  return text === '' ? [] : [{ text: decoded(text), marked: false }];
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&lt;': '<',
  '&gt;': '>',
  '&quot;': '"',
  '&#39;': "'",
  '&amp;': '&',
};

function decoded(text: string): string {
  return text.replaceAll(/&(?:lt|gt|quot|#39|amp);/gu, (entity) => ENTITIES[entity] ?? entity);
}
