import { readFile, readdir } from 'node:fs/promises';
import { defineCollection } from 'astro:content';
import { file, glob } from 'astro/loaders';
import { z } from 'astro/zod';
import { parse } from 'yaml';
import { benchSchema } from './schemas/bench.ts';
import { chapterSchema } from './schemas/chapter.ts';
import { editionSchema } from './schemas/edition.ts';
import { exampleFileSchema, exampleSchema } from './schemas/example.ts';
import { glossarySchema } from './schemas/glossary.ts';
import { partSchema } from './schemas/part.ts';
import { practiceSchema } from './schemas/practice.ts';
import { searchWordsSchema } from './schemas/search-words.ts';
import { sourceSchema } from './schemas/source.ts';
import { tableSchema } from './schemas/table.ts';

/** Numbers in file names order the book; ids and addresses drop them. */
const withoutNumbers = ({ entry }: { readonly entry: string }): string =>
  entry.replace(/\.mdx$/, '').replace(/(^|\/)\d+-/g, '$1');

/** Search words by the chapter they lead to. */
async function loadSearchWords(): Promise<Record<string, Record<string, unknown>>> {
  const entries = parse(await readFile('content/search-words.yaml', 'utf8')) as { page: string }[];
  return Object.fromEntries(entries.map((entry) => [entry.page, entry]));
}

/** Examples by id, each with the worksheet its file is named after. */
async function loadExamples(): Promise<Record<string, Record<string, unknown>>> {
  const folder = 'content/examples';
  const entries: Record<string, Record<string, unknown>> = {};
  for (const name of (await readdir(folder)).sort()) {
    const worksheet = name.replace(/\.yaml$/, '');
    const text = await readFile(`${folder}/${name}`, 'utf8');
    const examples = exampleFileSchema.safeParse(parse(text));
    if (!examples.success) {
      throw new Error(`${folder}/${name}: ${z.prettifyError(examples.error)}`);
    }
    for (const example of examples.data) {
      if (entries[example.id] !== undefined) {
        throw new Error(`${folder}/${name}: example ${example.id} is there twice`);
      }
      entries[example.id] = { ...example, worksheet };
    }
  }
  return entries;
}

export const collections = {
  parts: defineCollection({ loader: file('content/parts.yaml'), schema: partSchema }),
  chapters: defineCollection({
    loader: glob({ pattern: '**/*.mdx', base: './content/chapters', generateId: withoutNumbers }),
    schema: chapterSchema,
  }),
  benches: defineCollection({
    loader: glob({ pattern: '*.yaml', base: './content/bench' }),
    schema: benchSchema,
  }),
  editions: defineCollection({ loader: file('content/editions.yaml'), schema: editionSchema }),
  sources: defineCollection({ loader: file('content/sources.yaml'), schema: sourceSchema }),
  glossary: defineCollection({ loader: file('content/glossary.yaml'), schema: glossarySchema }),
  tables: defineCollection({ loader: file('content/tables.yaml'), schema: tableSchema }),
  practice: defineCollection({ loader: file('content/practice.yaml'), schema: practiceSchema }),
  searchWords: defineCollection({ loader: loadSearchWords, schema: searchWordsSchema }),
  examples: defineCollection({
    loader: loadExamples,
    schema: exampleSchema.extend({ worksheet: z.string() }),
  }),
};
