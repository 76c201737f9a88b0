import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createServer } from 'vite';
import { ESModulesEvaluator, ModuleRunner, type FetchResult } from 'vite/module-runner';
import { projectFolder } from '../walls/source-files.ts';

/** The project's modules, loaded once and kept; one file at a time can be replaced. */
export interface WarmModules {
  /** Loads a module, or gives it as it was loaded; the path is from the project folder. */
  load(path: string): Promise<unknown>;
  /** Puts a text in place of a file; whatever depends on it is loaded afresh when asked for. */
  replace(path: string, text: string): Promise<void>;
  /** Puts the file itself back. */
  restore(path: string): void;
  close(): Promise<void>;
}

const COLLECTOR = pathToFileURL(join(projectFolder, 'tests/mutation/collected-tests.ts')).href;

/**
 * Starts the module loader that the tests themselves run with. Tests declare themselves to
 * collected-tests.ts.
 *
 * @param rewritten  gives another text for a source file, for instance with probes in it
 */
export async function warmModules(
  rewritten: (path: string, text: string) => string = (_path, text) => text,
): Promise<WarmModules> {
  const replaced = new Map<string, string>();
  const pathOf = (id: string): string => id.split('?')[0]!.slice(projectFolder.length);
  const server = await createServer({
    configFile: false,
    root: projectFolder,
    logLevel: 'silent',
    appType: 'custom',
    cacheDir: join(projectFolder, 'tests/.output/mutation/vite'),
    server: { middlewareMode: true, hmr: false, ws: false, watch: null },
    optimizeDeps: { noDiscovery: true, include: [] },
    plugins: [
      {
        name: 'replaced-source',
        enforce: 'pre',
        transform(text, id) {
          if (!id.startsWith(projectFolder)) return undefined;
          const path = pathOf(id);
          if (!path.startsWith('src/') || !/\.tsx?$/u.test(path)) return undefined;
          return { code: replaced.get(path) ?? rewritten(path, text), map: null };
        },
      },
    ],
  });
  const environment = server.environments.ssr;
  const fetched = new Map<string, FetchResult>();
  const fetch = async (url: string, importer?: string): Promise<FetchResult> => {
    if (url === 'vitest') return { externalize: COLLECTOR, type: 'module' };
    const known = fetched.get(url);
    if (known !== undefined) return known;
    const result = await environment.fetchModule(url, importer);
    // Whether a module is stale is decided here, by `forget`.
    const kept = 'code' in result ? { ...result, invalidate: false } : result;
    fetched.set(url, kept);
    return kept;
  };
  const runner = new ModuleRunner(
    {
      hmr: false,
      sourcemapInterceptor: false,
      transport: {
        async invoke(payload) {
          const { name, data } = (payload as { data: { name: string; data: unknown[] } }).data;
          try {
            if (name === 'getBuiltins') return { result: [] as never };
            const [url, importer, { cached }] = data as [string, string, { cached: boolean }];
            if (cached) return { result: { cache: true } as never };
            return { result: (await fetch(url, importer)) as never };
          } catch (error) {
            return { error: error as Error };
          }
        },
      },
    },
    new ESModulesEvaluator(),
  );

  /** Forgets what a module and all that depend on it were evaluated to. */
  const forget = (path: string): void => {
    const stale = [...(runner.evaluatedModules.getModulesByFile(join(projectFolder, path)) ?? [])];
    const seen = new Set(stale);
    for (let node = stale.pop(); node !== undefined; node = stale.pop()) {
      for (const importerId of node.importers) {
        const importer = runner.evaluatedModules.getModuleById(importerId);
        if (importer === undefined || seen.has(importer)) continue;
        seen.add(importer);
        stale.push(importer);
      }
    }
    for (const node of seen) runner.evaluatedModules.invalidateModule(node);
  };
  const clean = new Map<string, FetchResult>();
  return {
    load: (path) => runner.import(`/${path}`),
    async replace(path, text) {
      const url = `/${path}`;
      const original = await fetch(url);
      clean.set(path, original);
      replaced.set(path, text);
      for (const module of environment.moduleGraph.getModulesByFile(join(projectFolder, path)) ??
        []) {
        environment.moduleGraph.invalidateModule(module);
      }
      fetched.delete(url);
      try {
        await fetch(url);
      } finally {
        replaced.delete(path);
      }
      forget(path);
    },
    restore(path) {
      const original = clean.get(path);
      if (original !== undefined) fetched.set(`/${path}`, original);
      forget(path);
    },
    async close() {
      await runner.close();
      await server.close();
    },
  };
}
