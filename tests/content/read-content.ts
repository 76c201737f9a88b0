import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import type { z } from 'astro/zod';
import { caseKindSchema, type CaseKindEntry } from '../../src/schemas/case-kind.ts';
import { chapterSchema, type Chapter } from '../../src/schemas/chapter.ts';
import { editionSchema, type Edition } from '../../src/schemas/edition.ts';
import { exampleFileSchema, type Example } from '../../src/schemas/example.ts';
import { faultSchema, type Fault } from '../../src/schemas/fault.ts';
import { glossarySchema, type GlossaryTerm } from '../../src/schemas/glossary.ts';
import { partSchema, type Part } from '../../src/schemas/part.ts';
import { practiceSchema, type Practice } from '../../src/schemas/practice.ts';
import { sourceSchema, type Source } from '../../src/schemas/source.ts';
import { tableSchema, type LookupTable } from '../../src/schemas/table.ts';
import { troubleSchema, type Trouble } from '../../src/schemas/trouble.ts';
import { projectFolder, readFiles } from '../walls/source-files.ts';

// Read with fs and the schemas of the site: the site's own collections are empty outside a build.

/** A file of prose: where it is, its frontmatter and what follows. */
export interface ChapterFile {
  readonly path: string;
  /** `part/chapter`, without the numbers that order the files. */
  readonly id: string;
  readonly frontmatter: Chapter;
  readonly body: string;
}

function check<Schema extends z.ZodType>(
  schema: Schema,
  value: unknown,
  place: string,
): z.output<Schema> {
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  const faults = result.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`);
  throw new Error(`${place}: ${faults.join('; ')}`);
}

/** What was read, by file: many tests ask for the same, and reading it takes a second. */
const lists = new Map<string, readonly unknown[]>();

function readYamlList<Schema extends z.ZodType>(
  fileName: string,
  schema: Schema,
): readonly z.output<Schema>[] {
  const known = lists.get(fileName) ?? parseYamlList(fileName, schema);
  lists.set(fileName, known);
  return known as readonly z.output<Schema>[];
}

function parseYamlList<Schema extends z.ZodType>(
  fileName: string,
  schema: Schema,
): readonly z.output<Schema>[] {
  const text = readFileSync(join(projectFolder, 'content', fileName), 'utf8');
  const list: unknown = parse(text, { merge: true, maxAliasCount: 1000 });
  if (!Array.isArray(list)) throw new Error(`content/${fileName} is not a list`);
  return list.map((item: unknown, index) =>
    check(schema, item, `content/${fileName} entry ${index + 1}`),
  );
}

export const readSources = (): readonly Source[] => readYamlList('sources.yaml', sourceSchema);
export const readEditions = (): readonly Edition[] => readYamlList('editions.yaml', editionSchema);
export const readGlossary = (): readonly GlossaryTerm[] =>
  readYamlList('glossary.yaml', glossarySchema);
export const readParts = (): readonly Part[] => readYamlList('parts.yaml', partSchema);
export const readPractice = (): readonly Practice[] =>
  readYamlList('practice.yaml', practiceSchema);
export const readCaseKinds = (): readonly CaseKindEntry[] =>
  readYamlList('cases.yaml', caseKindSchema);
export const readFaults = (): readonly Fault[] => readYamlList('faults.yaml', faultSchema);
export const readTroubles = (): readonly Trouble[] => readYamlList('troubles.yaml', troubleSchema);
export const readTables = (): readonly LookupTable[] => readYamlList('tables.yaml', tableSchema);

let examples: ReadonlyMap<string, readonly Example[]> | undefined;

/** Worked examples by worksheet id. */
export function readExamples(): ReadonlyMap<string, readonly Example[]> {
  examples ??= parseExamples();
  return examples;
}

function parseExamples(): ReadonlyMap<string, readonly Example[]> {
  const folder = join(projectFolder, 'content/examples');
  const names = readdirSync(folder).sort();
  return new Map(
    names.map((name) => {
      const list: unknown = parse(readFileSync(join(folder, name), 'utf8'));
      const checked = check(exampleFileSchema, list, `content/examples/${name}`);
      return [name.replace(/\.yaml$/u, ''), checked];
    }),
  );
}

/** Splits a file at the fences of its frontmatter. */
export function splitFrontmatter(text: string, path: string): { yaml: string; body: string } {
  const match = /^---\r?\n([\s\S]*?)\r?\n---\r?\n?/u.exec(text);
  if (match === null) throw new Error(`${path} has no frontmatter`);
  return { yaml: match[1]!, body: text.slice(match[0].length) };
}

/** Id of a chapter from its path, as the site makes it. */
export function chapterId(path: string): string {
  return path
    .replace(/^content\/chapters\//u, '')
    .replace(/\.mdx$/u, '')
    .replaceAll(/(^|\/)\d+-/gu, '$1');
}

let chapters: readonly ChapterFile[] | undefined;

/** All chapters in the order of the book. */
export function readChapters(): readonly ChapterFile[] {
  chapters ??= parseChapters();
  return chapters;
}

function parseChapters(): readonly ChapterFile[] {
  if (!existsSync(join(projectFolder, 'content/chapters'))) return [];
  return readFiles('content/chapters', ['.mdx']).map(({ path, text }) => {
    const { yaml, body } = splitFrontmatter(text, path);
    const frontmatter = check(chapterSchema, parse(yaml), path);
    return { path, id: chapterId(path), frontmatter, body };
  });
}
