import { describe, expect, it } from 'vitest';
import { readSource } from './source-files.ts';

/** Index files that hide where a name comes from. Pages are exempt: there index is an address. */
function barrels(paths: readonly string[]): readonly string[] {
  return paths.filter(
    (path) =>
      /(?:^|\/)index\.(?:ts|tsx|mts|js|mjs|jsx)$/u.test(path) && !path.startsWith('src/pages/'),
  );
}

describe('the source', () => {
  it('has no barrel files', () => {
    const paths = readSource().map(({ path }) => path);
    expect(paths.length).toBeGreaterThan(10);
    expect(barrels(paths)).toEqual([]);
  });

  it('would be caught with one', () => {
    expect(barrels(['src/core/index.ts', 'src/ui/fields/index.tsx', 'src/core/a.ts'])).toEqual([
      'src/core/index.ts',
      'src/ui/fields/index.tsx',
    ]);
    expect(barrels(['src/pages/index.astro', 'src/pages/search/index.ts'])).toEqual([]);
  });
});
