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

/** The book in order: parts as listed in content/parts.yaml, chapters by file path. */
export async function bookInOrder(): Promise<readonly PlacedPart[]> {
  const [parts, entries] = await Promise.all([getCollection('parts'), getCollection('chapters')]);
  const sorted = entries.toSorted((a, b) => (a.filePath ?? '').localeCompare(b.filePath ?? ''));
  let number = 0;
  const listed = parts.toSorted((a, b) => partOrder(sorted, a.id) - partOrder(sorted, b.id));
  return listed.map(({ data }, index) => ({
    ...data,
    number: index + 1,
    chapters: sorted
      .filter((entry) => entry.id.startsWith(`${data.id}/`))
      .map((entry) => ({ entry, number: ++number, href: `/${entry.id}/` })),
  }));
}

function partOrder(sorted: readonly CollectionEntry<'chapters'>[], part: string): number {
  const at = sorted.findIndex((entry) => entry.id.startsWith(`${part}/`));
  return at < 0 ? sorted.length : at;
}
