import { describe, expect, it } from 'vitest';
import { edgesOf } from './imports.ts';
import { findCycles, forbiddenEdges } from './layers.ts';
import { readProse, readSource, type SourceFile } from './source-files.ts';

const file = (path: string, text: string): SourceFile => ({ path, text });
const crossings = (...files: readonly SourceFile[]): readonly string[] =>
  forbiddenEdges(edgesOf(files));

describe('the walls between the layers', () => {
  const edges = edgesOf([...readSource(), ...readProse()]);

  it('are crossed by no import of the project', () => {
    expect(edges.length).toBeGreaterThan(10);
    expect(forbiddenEdges(edges)).toEqual([]);
  });

  it('hold no circle', () => {
    expect(findCycles(edges)).toEqual([]);
  });
});

describe('the wall test', () => {
  it.each([
    [
      'core importing a worksheet',
      'src/core/gate/a.ts',
      "import { x } from '../../worksheets/b.ts';",
    ],
    [
      'core importing a type only',
      'src/core/gate/a.ts',
      "import type { X } from '../../ui/b.tsx';",
    ],
    ['the gate leaning on the file', 'src/core/gate/a.ts', "import { x } from '../file/b.ts';"],
    [
      'a worksheet of the reel using one of the gate',
      'src/worksheets/reel/a.ts',
      "import { x } from '../gate/b.ts';",
    ],
    ['core importing a package', 'src/core/gate/a.ts', "import { h } from 'preact';"],
    ['a dynamic import', 'src/core/gate/a.ts', "export const b = () => import('../../ui/b.tsx');"],
    ['an import type', 'src/core/gate/a.ts', "export type B = import('../../ui/b.tsx').B;"],
    ['a re-export', 'src/core/gate/a.ts', "export { b } from '../../ui/b.tsx';"],
    ['a re-exported type', 'src/core/gate/a.ts', "export type { B } from '../../ui/b.tsx';"],
    ['a glob', 'src/core/gate/a.ts', "export const all = import.meta.glob('../../ui/*.tsx');"],
    [
      'a list of globs',
      'src/core/gate/a.ts',
      "const all = import.meta.glob(['./*.ts', '../../ui/*.tsx']);",
    ],
    ['a worker', 'src/core/gate/a.ts', "new Worker(new URL('../../ui/b.ts', import.meta.url));"],
    ['a picture computing', 'src/pictures/a.tsx', "import { x } from '../core/b.ts';"],
    ['ui calling the core', 'src/ui/a.tsx', "import { x } from '../core/flash-rate.ts';"],
    ['ui loading the reader at once', 'src/ui/a.tsx', "import { x } from '../clip/b.ts';"],
    ['clip leaning on ui', 'src/clip/a.ts', "import { x } from '../ui/b.ts';"],
    ['ui reading content', 'src/ui/a.tsx', "import { getCollection } from 'astro:content';"],
    [
      'a component reading a page',
      'src/components/A.astro',
      "---\nimport B from '../pages/b.ts';\n---\n",
    ],
    ['a layout knowing physics', 'src/layouts/A.astro', '<script src="../ui/b.ts"></script>'],
    ['a script element', 'src/layouts/A.astro', "<script>import { b } from '../ui/b.ts';</script>"],
    ['an expression', 'src/layouts/A.astro', "<p>{(await import('../core/b.ts')).b}</p>"],
    [
      'a page calling the core',
      'src/pages/a.astro',
      "---\nimport { b } from '../core/b.ts';\n---\n",
    ],
    ['a schema importing zod itself', 'src/schemas/a.ts', "import { z } from 'zod';"],
    [
      'a chapter importing',
      'content/chapters/a.mdx',
      "import B from '../../src/ui/b.tsx';\n\nText.",
    ],
    ['a layer that is not listed', 'src/helpers/a.ts', "import { x } from './b.ts';"],
    [
      'product code importing a test',
      'src/core/gate/a.ts',
      "import { x } from '../../../tests/b.ts';",
    ],
  ])('catches %s', (_what, path, text) => {
    const found = crossings(file(path, text));
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(`${path}:`);
  });

  it.each([
    ['core using core', 'src/core/gate/a.ts', "import { x } from '../../quantity/b.ts';"],
    [
      'a worksheet using core',
      'src/worksheets/gate/a.ts',
      "import { x } from '../../core/gate/b.ts';",
    ],
    ['a picture using types', 'src/pictures/a.tsx', "import type { X } from '../core/b.ts';"],
    ['the reader on a press', 'src/ui/a.tsx', "const b = await import('../clip/b.ts');"],
    ['types of the reader', 'src/ui/a.tsx', "import type { X } from '../clip/b.ts';"],
    ['named type imports', 'src/pictures/a.tsx', "import { type X } from '../core/b.ts';"],
    ['a subpath of a package', 'src/ui/a.tsx', "import { useState } from 'preact/hooks';"],
    [
      'words in a comment',
      'src/core/gate/a.ts',
      "// import { x } from '../ui/b.ts';\nexport const a = 1;",
    ],
    ['prose about imports', 'content/chapters/a.mdx', 'The import duty on film was high.'],
  ])('lets %s pass', (_what, path, text) => {
    expect(crossings(file(path, text))).toEqual([]);
  });

  it('names the file behind a glob', () => {
    const found = crossings(
      file('src/core/gate/a.ts', "import.meta.glob('../../ui/**/*.tsx');"),
      file('src/ui/deep/b.tsx', ''),
      file('src/ui/c.tsx', ''),
    );
    expect(found).toHaveLength(2);
    expect(found[0]).toContain('src/ui/deep/b.tsx');
  });

  it('finds a circle, also one made of types', () => {
    const circle = [
      file('src/core/gate/a.ts', "import { b } from './b.ts';"),
      file('src/core/gate/b.ts', "import type { C } from './c.ts';"),
      file('src/core/gate/c.ts', "import { a } from './a';"),
      file('src/core/d.ts', "import { a } from './a.ts';"),
    ];
    expect(findCycles(edgesOf(circle))).toEqual([
      'src/core/gate/a.ts → src/core/gate/b.ts → src/core/gate/c.ts → src/core/gate/a.ts',
    ]);
  });
});
