import type { z } from 'astro/zod';
import { isNode, isPair, isMap, LineCounter, parseDocument, type Document, type Node } from 'yaml';

type Issue = z.core.$ZodIssue;

/** Offset of the text that an issue is about: an unknown key itself, or the entry that lacks one. */
function offsetOf(document: Document, issue: Issue): number {
  if (issue.code === 'unrecognized_keys') {
    const map: unknown = document.getIn(issue.path as unknown[], true);
    const [wanted] = issue.keys;
    const pair = isMap(map)
      ? map.items.find(
          ({ key }) => isNode(key) && String((key as { value?: unknown }).value) === wanted,
        )
      : undefined;
    if (isPair(pair) && isNode(pair.key)) return pair.key.range?.[0] ?? 0;
  }
  for (let depth = issue.path.length; depth >= 0; depth -= 1) {
    const node: unknown = document.getIn(issue.path.slice(0, depth) as unknown[], true);
    if (isNode(node)) return (node as Node).range?.[0] ?? 0;
  }
  return 0;
}

function wordsOf({ path, message }: Issue): string {
  return path.length === 0 ? message : `${path.join('.')}: ${message}`;
}

/**
 * The value of a YAML text that a schema accepts.
 *
 * @param text       the text
 * @param file       path of its file, for the messages
 * @param firstLine  line of the file on which the text begins
 * @throws {Error} naming file and line of each fault, one to a line
 */
export function readYaml<Schema extends z.ZodType>(
  text: string,
  file: string,
  schema: Schema,
  firstLine = 1,
): z.output<Schema> {
  const lineCounter = new LineCounter();
  const document = parseDocument(text, {
    lineCounter,
    prettyErrors: false,
    // Entries that share most of their fields are written once, and merged with `<<`.
    merge: true,
  });
  const lineOf = (offset: number): number => lineCounter.linePos(offset).line + firstLine - 1;
  const broken = document.errors.map(({ pos, message }) => `${file}:${lineOf(pos[0])}: ${message}`);
  if (broken.length > 0) throw new Error(broken.join('\n'));
  const result = schema.safeParse(document.toJS({ maxAliasCount: 1000 }));
  if (result.success) return result.data;
  const faults = result.error.issues.map(
    (issue) => `${file}:${lineOf(offsetOf(document, issue))}: ${wordsOf(issue)}`,
  );
  throw new Error(faults.join('\n'));
}
