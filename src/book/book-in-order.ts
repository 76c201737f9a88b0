import { getCollection, type CollectionEntry } from 'astro:content';

/** A chapter with its place in the book. */
export interface PlacedChapter {
  readonly entry: CollectionEntry<'chapters'>;
  /** Number in the whole book, from 1. */
  readonly number: number;
  readonly href: string;
}

export interface PlacedPart {
  readonly id: string;
  /** Number from 1. */
  readonly number: number;
  readonly title: string;
  readonly question: string;
  readonly chapters: readonly PlacedChapter[];
}

/** The book in order: parts by number, chapters by file path. */
export async function bookInOrder(): Promise<readonly PlacedPart[]> {
  const [parts, entries] = await Promise.all([getCollection('parts'), getCollection('chapters')]);
  const sorted = entries.toSorted((a, b) => (a.filePath ?? '').localeCompare(b.filePath ?? ''));
  let number = 0;
  const listed = parts.map(({ data }) => data).toSorted((a, b) => a.number - b.number);
  return listed.map((part) => ({
    ...part,
    chapters: sorted
      .filter((entry) => entry.id.startsWith(`${part.id}/`))
      .map((entry) => ({ entry, number: ++number, href: `/${entry.id}/` })),
  }));
}
