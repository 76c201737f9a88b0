import { readdirSync } from 'node:fs';
import type { Worksheet } from '../../../src/worksheets/types.ts';

/** All worksheets by id without the registry, whose glob only a bundler understands. */
export async function loadWorksheets(): Promise<ReadonlyMap<string, Worksheet>> {
  const folder = new URL('../../../src/worksheets/', import.meta.url);
  const names = readdirSync(folder).filter((name) => name.endsWith('.ts'));
  const modules = await Promise.all(
    names
      .filter((name) => name !== 'registry.ts')
      .map(
        (name) => import(new URL(name, folder).href) as Promise<{ readonly worksheet?: Worksheet }>,
      ),
  );
  return new Map(
    modules
      .flatMap(({ worksheet }) => (worksheet === undefined ? [] : [worksheet]))
      .map((worksheet) => [worksheet.id, worksheet]),
  );
}
