import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project folder. */
export const projectFolder = fileURLToPath(new URL('../..', import.meta.url));

/** A file as the walls see it: its path from the project folder, with `/`, and its text. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

/** Every file under a folder of the project whose name ends in one of the endings, in path order. */
export function readFiles(folder: string, endings: readonly string[]): readonly SourceFile[] {
  return readdirSync(join(projectFolder, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && endings.some((ending) => entry.name.endsWith(ending)))
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => ({
      path: relative(projectFolder, path).split(sep).join('/'),
      text: readFileSync(path, 'utf8'),
    }))
    .sort((a, b) => a.path.localeCompare(b.path));
}

/** The code of the product. */
export function readSource(): readonly SourceFile[] {
  return readFiles('src', ['.ts', '.tsx', '.mts', '.js', '.mjs', '.jsx', '.astro', '.mdx']);
}

/** Chapters and other prose. */
export function readProse(): readonly SourceFile[] {
  return readFiles('content', ['.mdx', '.md']);
}
