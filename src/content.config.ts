import { defineCollection } from 'astro:content';
import { glob } from 'astro/loaders';
import { z } from 'astro/zod';
import {
  orderedYamlList,
  withCheckedFrontmatter,
  yamlFolder,
  yamlList,
} from './book/content-loaders.ts';
import { benchSchema } from './schemas/bench.ts';
import { chapterSchema } from './schemas/chapter.ts';
import { editionSchema } from './schemas/edition.ts';
import { exampleFileSchema, exampleSchema } from './schemas/example.ts';
import { faultSchema } from './schemas/fault.ts';
import { glossarySchema } from './schemas/glossary.ts';
import { partSchema } from './schemas/part.ts';
import { practiceSchema } from './schemas/practice.ts';
import { searchWordsSchema } from './schemas/search-words.ts';
import { sourceSchema } from './schemas/source.ts';
import { tableSchema } from './schemas/table.ts';
import { troubleSchema } from './schemas/trouble.ts';

/** Numbers in file names order the book; ids and addresses drop them. */
const withoutNumbers = ({ entry }: { readonly entry: string }): string =>
  entry.replace(/\.mdx$/, '').replace(/(^|\/)\d+-/g, '$1');

export const collections = {
  parts: defineCollection({
    loader: yamlList('content/parts.yaml', partSchema),
    schema: partSchema,
  }),
  chapters: defineCollection({
    loader: withCheckedFrontmatter(
      'content/chapters',
      chapterSchema,
      glob({ pattern: '**/*.mdx', base: './content/chapters', generateId: withoutNumbers }),
    ),
    schema: chapterSchema,
  }),
  benches: defineCollection({
    loader: glob({ pattern: '*.yaml', base: './content/bench' }),
    schema: benchSchema,
  }),
  editions: defineCollection({
    loader: yamlList('content/editions.yaml', editionSchema),
    schema: editionSchema,
  }),
  sources: defineCollection({
    loader: yamlList('content/sources.yaml', sourceSchema),
    schema: sourceSchema,
  }),
  glossary: defineCollection({
    loader: yamlList('content/glossary.yaml', glossarySchema),
    schema: glossarySchema,
  }),
  tables: defineCollection({
    loader: yamlList('content/tables.yaml', tableSchema),
    schema: tableSchema,
  }),
  practice: defineCollection({
    loader: yamlList('content/practice.yaml', practiceSchema),
    schema: practiceSchema,
  }),
  faults: defineCollection({
    loader: orderedYamlList('content/faults.yaml', faultSchema),
    schema: faultSchema,
  }),
  troubles: defineCollection({
    loader: orderedYamlList('content/troubles.yaml', troubleSchema),
    schema: troubleSchema,
  }),
  searchWords: defineCollection({
    loader: yamlList('content/search-words.yaml', searchWordsSchema, 'page'),
    schema: searchWordsSchema,
  }),
  examples: defineCollection({
    loader: yamlFolder('content/examples', exampleFileSchema),
    schema: exampleSchema.extend({ worksheet: z.string() }),
  }),
};
