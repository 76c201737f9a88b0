import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { projectFolder } from './source-files.ts';

const ALLOWED = new Set([
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'astro.config.mjs',
  'README.md',
  'DEVELOPERS.md',
  'LICENSE',
  'content',
  'src',
  'tests',
  // Made by a command and ignored by git:
  'node_modules',
  'dist',
]);

/** Entries that do not belong beside package.json; dot-files may. */
function strangers(names: readonly string[]): readonly string[] {
  return names.filter((name) => !name.startsWith('.') && !ALLOWED.has(name));
}

describe('the top level of the project', () => {
  it('holds only the entries that the house plan names', () => {
    const names = readdirSync(projectFolder);
    expect(names).toContain('package.json');
    expect(strangers(names)).toEqual([]);
  });

  it('would be caught with another', () => {
    expect(strangers(['src', '.oxfmtrc.json', 'eslint.config.js', 'docs'])).toEqual([
      'eslint.config.js',
      'docs',
    ]);
  });
});
