import { getCollection } from 'astro:content';
import type { Edition } from '../schemas/edition.ts';

/** All editions of the book, the newest first. */
export async function editionsNewestFirst(): Promise<readonly Edition[]> {
  const entries = await getCollection('editions');
  return entries.map(({ data }) => data).toSorted((a, b) => b.id.localeCompare(a.id));
}
