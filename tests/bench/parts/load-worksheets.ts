import { readdirSync } from 'node:fs';
import type { Worksheet } from '../../../src/worksheets/machine/types.ts';

/** All worksheets by id without the registry, whose glob only a bundler understands. */
export async function loadWorksheets(): Promise<ReadonlyMap<string, Worksheet>> {
  const folder = new URL('../../../src/worksheets/', import.meta.url);
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    /(?:^|[\\/])worksheet\.ts$/u.test(name),
  );
  const modules = await Promise.all(
    names.map(
      (name) =>
        import(new URL(name.replaceAll('\\', '/'), folder).href) as Promise<{
          readonly worksheet: Worksheet;
        }>,
    ),
  );
  return new Map(modules.map(({ worksheet }) => [worksheet.id, worksheet]));
}
