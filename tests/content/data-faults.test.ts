import { EventEmitter } from 'node:events';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { z } from 'astro/zod';
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { withCheckedFrontmatter, yamlFolder, yamlList } from '../../src/book/content-loaders.ts';
import { readYaml } from '../../src/book/read-yaml.ts';

const item = z.strictObject({ id: z.string(), size: z.number().positive() });
const list = z.array(item);

describe('a fault in a data file', () => {
  const messageOf = (...lines: readonly string[]): string => {
    try {
      readYaml(lines.join('\n'), 'content/a.yaml', list);
    } catch (error) {
      return (error as Error).message;
    }
    return 'no fault';
  };

  it.each([
    [
      'broken YAML',
      ['- id: a', '  size: 1', '- id: b: c', '  size: 2'],
      /^content\/a\.yaml:3: \S/u,
    ],
    [
      'a wrong value',
      ['- id: a', '  size: 1', '- id: b', '  size: -2'],
      /^content\/a\.yaml:4: 1\.size: /u,
    ],
    [
      'an unknown key',
      ['- id: a', '  size: 1', '', '  colour: red'],
      /^content\/a\.yaml:4: .*“?"?colour/u,
    ],
    ['a missing key', ['- id: a', '  size: 1', '- id: b'], /^content\/a\.yaml:3: 1\.size: /u],
    ['no list at all', ['id: a'], /^content\/a\.yaml:1: \S/u],
  ])('names file and line: %s', (_, lines, message) => {
    expect(messageOf(...lines)).toMatch(message);
  });

  it('is named with all others, each on a line of its own', () => {
    expect(messageOf('- id: a', '  size: x', '- id: 5', '  size: 1').split('\n')).toHaveLength(2);
    expect(messageOf('- id: a', '  size: 1')).toBe('no fault');
  });
});

describe('a collection of the site', () => {
  const root = mkdtempSync(join(tmpdir(), 'collection-'));
  const write = (name: string, ...lines: readonly string[]): void => {
    writeFileSync(join(root, name), lines.join('\n'));
  };
  afterAll(() => {
    rmSync(root, { recursive: true });
  });
  beforeEach(() => {
    mkdirSync(join(root, 'examples'), { recursive: true });
    write('examples/flash-match.yaml', '- id: a', '  size: 1');
    write('examples/lens-setup.yaml', '- id: b', '  size: 2');
  });

  function context() {
    const entries = new Map<string, unknown>();
    const logger = { info: vi.fn(), error: vi.fn() };
    const watcher = Object.assign(new EventEmitter(), { add: vi.fn() });
    return {
      entries,
      logger,
      watcher,
      config: { root: pathToFileURL(`${root}/`) },
      parseData: ({ data }: { data: unknown }) => Promise.resolve(data),
      store: {
        clear: () => {
          entries.clear();
        },
        set: ({ id, data }: { id: string; data: unknown }) => entries.set(id, data),
      },
    };
  }

  it('holds the entries of every file, each with the name of its file', async () => {
    const asked = context();
    await yamlFolder('examples', list).load(asked as never);
    expect(Object.fromEntries(asked.entries)).toEqual({
      a: { id: 'a', size: 1, worksheet: 'flash-match' },
      b: { id: 'b', size: 2, worksheet: 'lens-setup' },
    });
  });

  it('is read again when a file is saved, and stays as it was while the file is wrong', async () => {
    const asked = context();
    await yamlFolder('examples', list).load(asked as never);
    expect(asked.watcher.add).toHaveBeenCalledWith(join(root, 'examples'));
    const save = (...lines: readonly string[]): void => {
      write('examples/lens-setup.yaml', ...lines);
      asked.watcher.emit('all', 'change', join(root, 'examples/lens-setup.yaml'));
    };
    save('- id: b', '  size: 3', '- id: c', '  size: 4');
    await vi.waitFor(() => {
      expect(asked.entries.get('b')).toMatchObject({ size: 3 });
    });
    expect(asked.entries.size).toBe(3);
    save('- id: b', '  size: large');
    await vi.waitFor(() => {
      expect(asked.logger.error).toHaveBeenCalledWith(
        expect.stringMatching(/^examples\/lens-setup\.yaml:2: 0\.size: /u),
      );
    });
    expect(asked.entries.size).toBe(3);
    asked.watcher.emit('all', 'change', join(root, 'elsewhere.yaml'));
    expect(asked.logger.info).toHaveBeenCalledTimes(1);
  });

  it('refuses an id that is there twice, naming the file', async () => {
    write('examples/lens-setup.yaml', '- id: a', '  size: 2');
    await expect(yamlFolder('examples', list).load(context() as never)).rejects.toThrow(
      'examples/lens-setup.yaml: “a” is there twice',
    );
  });

  it('of one file is keyed by what its entries are known by', async () => {
    write('sizes.yaml', '- id: a', '  size: 1');
    const asked = context();
    await yamlList('sizes.yaml', item, 'size').load(asked as never);
    expect([...asked.entries.keys()]).toEqual(['1']);
    write('sizes.yaml', '- id: a', '  size: [');
    await expect(yamlList('sizes.yaml', item).load(context() as never)).rejects.toThrow(
      /^sizes\.yaml:2: /u,
    );
  });

  it('of chapters names the line of a fault in a frontmatter, and is then loaded as before', async () => {
    mkdirSync(join(root, 'chapters/01-reel'), { recursive: true });
    const load = vi.fn(() => Promise.resolve());
    const loader = withCheckedFrontmatter('chapters', item, { name: 'glob', load });
    write('chapters/01-reel/01-a.mdx', '---', 'id: a', 'size: 1', '---', 'Text.');
    await loader.load(context() as never);
    expect(load).toHaveBeenCalledTimes(1);
    write('chapters/01-reel/01-a.mdx', '---', 'id: a', 'sise: 1', '---', 'Text.');
    await expect(loader.load(context() as never)).rejects.toThrow(
      /chapters\/01-reel\/01-a\.mdx:3: .*sise/u,
    );
    write('chapters/01-reel/01-a.mdx', '---', 'id: "a', 'size: 1', '---');
    await expect(loader.load(context() as never)).rejects.toThrow(/01-a\.mdx:\d+: /u);
    write('chapters/01-reel/01-a.mdx', 'Text.');
    await expect(loader.load(context() as never)).rejects.toThrow(/01-a\.mdx:1: no frontmatter/u);
    expect(load).toHaveBeenCalledTimes(1);
  });
});
