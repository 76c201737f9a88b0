import { readdir, readFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Loader, LoaderContext } from 'astro/loaders';
import { z } from 'astro/zod';
import { readYaml } from './read-yaml.ts';

// Loaders of the site's collections. A fault names file and line and stops the build; while `npm run dev`
// runs it is said, the entries stay as they were, and a file that is saved again is read again.

/** An entry with its id, and the file that it is from, from the project's folder. */
interface Entry {
  readonly id: string;
  readonly data: Record<string, unknown>;
  readonly file: string;
}

/** Reads a whole collection, given the folder of the project. */
type ReadAll = (root: string) => Promise<readonly Entry[]>;

async function fill(readAll: ReadAll, { store, parseData, config }: LoaderContext): Promise<void> {
  const root = fileURLToPath(config.root);
  const entries = await readAll(root);
  const twice = entries.find(
    ({ id }, index) => entries.findIndex((each) => each.id === id) < index,
  );
  if (twice !== undefined) throw new Error(`${twice.file}: “${twice.id}” is there twice`);
  const parsed = await Promise.all(
    entries.map(async ({ id, data, file }) => ({
      id,
      data: await parseData({ id, data, filePath: join(root, file) }),
      filePath: file,
    })),
  );
  store.clear();
  for (const entry of parsed) store.set(entry);
}

/** A loader of everything under one path, which watches it while the development server runs. */
function watching(name: string, path: string, readAll: ReadAll): Loader {
  return {
    name,
    async load(context) {
      await fill(readAll, context);
      const { watcher, logger, config } = context;
      const root = fileURLToPath(config.root);
      watcher?.add(join(root, path));
      watcher?.on('all', (_event, changed) => {
        const place = relative(root, changed).replaceAll('\\', '/');
        if (place !== path && !place.startsWith(`${path}/`)) return;
        fill(readAll, context).then(
          () => {
            logger.info(`${place} is read again`);
          },
          (error: unknown) => {
            logger.error(error instanceof Error ? error.message : String(error));
          },
        );
      });
    },
  };
}

/** A collection in one file that is a list, each entry under its `id` or the key named. */
export function yamlList(file: string, schema: z.ZodType, key = 'id'): Loader {
  return watching('yaml-list', file, async (root) => {
    const list = readYaml(await readFile(join(root, file), 'utf8'), file, z.array(schema));
    return (list as readonly Record<string, unknown>[]).map((data) => ({
      id: String(data[key]),
      data,
      file,
    }));
  });
}

/** A list whose order is part of what it says: each entry is told its `place`, from 0. */
export function orderedYamlList(file: string, schema: z.ZodType): Loader {
  return watching('ordered-yaml-list', file, async (root) => {
    const list = readYaml(await readFile(join(root, file), 'utf8'), file, z.array(schema));
    return (list as readonly Record<string, unknown>[]).map((data, place) => ({
      id: String(data['id']),
      data: { ...data, place },
      file,
    }));
  });
}

/** A collection in a folder of lists; each entry also says, as `worksheet`, what its file is named after. */
export function yamlFolder(folder: string, schema: z.ZodType): Loader {
  return watching('yaml-folder', folder, async (root) => {
    const names = (await readdir(join(root, folder))).filter((name) => name.endsWith('.yaml'));
    const lists = await Promise.all(
      names.sort().map(async (name) => {
        const file = `${folder}/${name}`;
        const list = readYaml(await readFile(join(root, file), 'utf8'), file, schema);
        return (list as readonly Record<string, unknown>[]).map((example) => ({
          id: String(example['id']),
          data: { ...example, worksheet: name.replace(/\.yaml$/u, '') },
          file,
        }));
      }),
    );
    return lists.flat();
  });
}

/** The loader, after the frontmatter of every chapter is read: a fault in it names its line. */
export function withCheckedFrontmatter(folder: string, schema: z.ZodType, loader: Loader): Loader {
  return {
    ...loader,
    async load(context) {
      const root = fileURLToPath(context.config.root);
      const names = await readdir(join(root, folder), { recursive: true });
      for (const name of names.filter((each) => each.endsWith('.mdx')).sort()) {
        const file = `${folder}/${name.replaceAll('\\', '/')}`;
        const text = await readFile(join(root, file), 'utf8');
        const yaml = /^---\r?\n([\s\S]*?)\r?\n---/u.exec(text)?.[1];
        if (yaml === undefined)
          throw new Error(`${file}:1: no frontmatter between two lines of ---`);
        readYaml(yaml, file, schema, 2);
      }
      await loader.load(context);
    },
  };
}
