import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from '../walls/source-files.ts';

interface Rule {
  readonly pattern: RegExp;
  readonly headers: Readonly<Record<string, string>>;
}

function patternOf(path: string): RegExp {
  const escaped = path.replaceAll(/[.+?^${}()|[\]\\]/gu, String.raw`\$&`);
  return new RegExp(`^${escaped.replaceAll('*', '.*')}$`, 'u');
}

/** The rules of the block that begins with ```headers in a text. */
export function readRules(text: string): readonly Rule[] {
  const block = /```headers\n(.*?)```/su.exec(text)?.[1];
  if (block === undefined) throw new Error('README.md has no block of headers');
  const rules: { pattern: RegExp; headers: Record<string, string> }[] = [];
  for (const line of block.split('\n').filter((each) => each.trim() !== '')) {
    const header = /^ +([\w-]+): (.+)$/u.exec(line);
    if (line.startsWith('/')) rules.push({ pattern: patternOf(line), headers: {} });
    else if (header !== null) rules.at(-1)!.headers[header[1]!.toLowerCase()] = header[2]!;
    else throw new Error(`not a header: ${line}`);
  }
  return rules;
}

/** Headers that README.md advises for a file, by its path from the root of the site. */
export function advisedHeaders(path: string): Readonly<Record<string, string>> {
  const rules = readRules(readFileSync(join(projectFolder, 'README.md'), 'utf8'));
  return Object.assign(
    {},
    ...rules.filter(({ pattern }) => pattern.test(path)).map(({ headers }) => headers),
  ) as Record<string, string>;
}
