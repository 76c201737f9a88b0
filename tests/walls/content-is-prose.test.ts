import { describe, expect, it } from 'vitest';
import { readProse, type SourceFile } from './source-files.ts';

/** Lines of code in prose: an import or export statement, or a brace that would run as JavaScript. */
function codeLines(files: readonly SourceFile[]): readonly string[] {
  return files.flatMap(({ path, text }) => {
    let isFenced = false;
    return text.split('\n').flatMap((line, index) => {
      if (/^\s*(?:```|~~~)/u.test(line)) isFenced = !isFenced;
      if (isFenced) return [];
      const isModuleLine =
        /^import\s+(?:["'{*]|type\s|\w+\s+from\s|\w+\s*,)/u.test(line) ||
        /^export\s+(?:default|const|let|var|function|class|async|type|interface|\{|\*)/u.test(line);
      return isModuleLine ? [`${path}:${index + 1} ${line.trim()}`] : [];
    });
  });
}

describe('content', () => {
  it('holds no import and no export', () => {
    expect(codeLines(readProse())).toEqual([]);
  });

  it('would be caught with one', () => {
    const text = [
      "import A from './a.astro';",
      "import { b } from './b.ts';",
      "import './c.css';",
      'export const d = 1;',
      'export default function e() {}',
    ].join('\n');
    expect(codeLines([{ path: 'content/a.mdx', text }])).toHaveLength(5);
  });

  it('may speak of imports and show them as code', () => {
    const text = "import duties rose;\nexport of film fell.\n```\nimport a from 'b';\n```\n";
    expect(codeLines([{ path: 'content/a.mdx', text }])).toEqual([]);
  });
});
