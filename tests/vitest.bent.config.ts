import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vitest/config';

// Runs the checks against published figures with a core whose every result is a little wrong, to see
// that they notice. tests/tools/published-can-fail.mjs reads the outcome.

/** What each exported function of the core is wrapped in: numbers grow by 7 % and a thousandth. */
const BEND = `
const bend = (value) => {
  if (typeof value === 'number') return value * 1.07 + 0.001;
  if (typeof value === 'bigint') return value + 1n;
  if (Array.isArray(value)) return value.map(bend);
  if (value?.constructor?.name === 'Fraction') return value.mul(107).div(100);
  if (value?.constructor !== Object) return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, bend(part)]));
};
const bent = (item) =>
  typeof item === 'function' ? (...given) => bend(item(...given)) : item;
`;
const MARK = '\0bent:';

const bentCore: Plugin = {
  name: 'bent-core',
  enforce: 'pre',
  resolveId(source, importer) {
    if (importer?.includes('/tests/published/') !== true) return undefined;
    return /\/src\/(?:core|quantity)\//u.test(source)
      ? MARK + resolve(dirname(importer), source)
      : undefined;
  },
  load(id) {
    if (!id.startsWith(MARK)) return undefined;
    const file = id.slice(MARK.length);
    const names = [
      ...readFileSync(file, 'utf8').matchAll(/^export (?:function|const|class) (\w+)/gmu),
    ].map(([, name]) => name!);
    return [
      `import * as core from ${JSON.stringify(file)};`,
      BEND,
      ...names.map((name) => `export const ${name} = bent(core.${name});`),
    ].join('\n');
  },
};

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  plugins: [bentCore],
  test: { include: ['tests/published/*.test.ts'], isolate: false },
});
