import type { Kind } from './kinds.ts';

/** One thing that can be found, as the build writes it into the file that the page loads. */
export interface StoredRecord {
  readonly kind: Kind;
  readonly url: string;
  readonly title: string;
  /** Where in the book it stands; empty where the heading of its group says it. */
  readonly place: string;
  /** Shown under the title, and searched. */
  readonly text: string;
  /** Other words for it, searched like its title and not shown. */
  readonly words: string;
  /** Words of its full text that are in none of the above, searched last and not shown. */
  readonly body: string;
}

/** Addresses of the two files, from the root of the book; the build names them after their content. */
export interface RecordFiles {
  /** The records that the first answer needs, without full texts. */
  readonly first: string;
  /** All records; loaded behind the first answer. */
  readonly all: string;
}
