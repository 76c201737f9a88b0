import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from '../walls/source-files.ts';
import { makePage, type BuiltPage } from './built-site.ts';

/** Where the site is built for a folder of a host; see tests/tools/build-in-folder.mjs. */
export const folderSite = join(projectFolder, 'tests/.output/in-folder');

/** The folder of the host, and the host. */
export const FOLDER = '/gate-to-file/';
export const HOST = 'https://books.example';

/** Every file of that build, from its folder, with `/`. */
export function readFolderFiles(): readonly string[] {
  if (!existsSync(folderSite)) {
    throw new Error(`${folderSite} is not there: run "npm run build:folder" first`);
  }
  return readdirSync(folderSite, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(folderSite.length + 1)
        .replaceAll('\\', '/'),
    )
    .sort();
}

export function readFolderFile(path: string): Buffer {
  return readFileSync(join(folderSite, path));
}

export function readFolderPages(): readonly BuiltPage[] {
  return readFolderFiles()
    .filter((path) => path.endsWith('.html'))
    .map((path) => makePage(path, readFolderFile(path).toString('utf8')));
}
