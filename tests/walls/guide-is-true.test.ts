import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'astro/zod';
import { describe, expect, it } from 'vitest';
import { projectFolder, readFiles } from './source-files.ts';

// The contributor's guide names files, folders, commands and parts of the house; each must be there.

const GUIDE = readFileSync(join(projectFolder, 'DEVELOPERS.md'), 'utf8');

/** Words in backticks outside the plan. */
const quoted = (text: string): readonly string[] =>
  [...text.replaceAll(/^```[\s\S]*?^```/gmu, '').matchAll(/`([^`\n]+)`/gu)].map(
    ([, word]) => word!,
  );

/** Names of files and folders among them; those with a place to fill in, and code, are none. */
const pathsIn = (text: string): readonly string[] =>
  quoted(text)
    .map((word) => word.replace(/:.*$/u, '').replace(/\/$/u, ''))
    .filter((word) => /^[\w.@/-]+$/u.test(word))
    .filter(
      (word) =>
        /^(?:src|tests|content)\/[\w/.-]+$/u.test(word) ||
        /\.(?:ts|tsx|mjs|astro|yaml|json)$/u.test(word),
    );

const allFiles = [
  ...readFiles('src', ['.ts', '.tsx', '.mjs', '.astro']),
  ...readFiles('tests', ['.ts', '.tsx', '.mjs', '.yaml', '.json']),
  ...readFiles('content', ['.yaml', '.mdx']),
].map(({ path }) => path);

/** Names of the guide that nothing answers to. A file may be named without the folders above it. */
const lostPaths = (text: string): readonly string[] =>
  pathsIn(text).filter(
    (path) =>
      !existsSync(join(projectFolder, path)) &&
      !allFiles.some((file) => file.endsWith(`/${path}`)) &&
      // Kept by the one who runs it.
      path !== 'last-run.json',
  );

const { scripts } = z
  .object({ scripts: z.record(z.string(), z.string()) })
  .parse(JSON.parse(readFileSync(join(projectFolder, 'package.json'), 'utf8')));
const lostCommands = (text: string): readonly string[] =>
  [...text.matchAll(/npm run ([\w:-]+)/gu)]
    .map(([, name]) => name!)
    .filter((name) => !Object.hasOwn(scripts, name));

/** Folders of `src` that a plan names: the words before the explanations. */
function foldersOf(plan: string): ReadonlySet<string> {
  const lines = plan.split('\n');
  const own = lines.slice(lines.indexOf('src/') + 1);
  return new Set(
    own
      .filter((line) => /^ {2}\S/u.test(line))
      .flatMap((line) => /^ {2}((?:[a-z./-]+ ?)+?)(?: {2}|$)/u.exec(line)?.[1]?.split(' ') ?? [])
      .filter((word) => word.endsWith('/'))
      .map((word) => word.slice(0, -1)),
  );
}

describe('the contributor’s guide', () => {
  const plan = /## House plan\n+```\n([\s\S]*?)\n```/u.exec(GUIDE)?.[1] ?? '';

  it('names only files and folders that there are', () => {
    expect(pathsIn(GUIDE).length).toBeGreaterThan(50);
    expect(lostPaths(GUIDE)).toEqual([]);
    expect(lostPaths('see `src/core/gone.ts`, `machine/answers.ts` and `gone.yaml`')).toEqual([
      'src/core/gone.ts',
      'gone.yaml',
    ]);
  });

  it('names only commands that there are', () => {
    expect([...GUIDE.matchAll(/npm run /gu)].length).toBeGreaterThan(4);
    expect(lostCommands(GUIDE)).toEqual([]);
    expect(lostCommands('`npm run nothing`')).toEqual(['nothing']);
  });

  it('draws every part of the house, and no other', () => {
    const built = readdirSync(join(projectFolder, 'src'), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => name);
    const drawn = [...foldersOf(plan)].map((name) => name.split('/')[0]!);
    expect(built.length).toBeGreaterThan(10);
    expect([...new Set(drawn)].sort()).toEqual(built.sort());
    for (const name of foldersOf(plan)) {
      expect(existsSync(join(projectFolder, 'src', name)), name).toBe(true);
    }
  });

  it('tells what each folder of tests keeps', () => {
    const kept = GUIDE.slice(GUIDE.indexOf('## What the tests keep'));
    const folders = readdirSync(join(projectFolder, 'tests'), { withFileTypes: true })
      .filter((entry) => entry.isDirectory() && !entry.name.startsWith('.'))
      .map(({ name }) => name);
    expect(folders.filter((name) => !kept.includes(`**tests/${name}**`))).toEqual([]);
  });
});
