// Which places of the code ran while something was done: V8's own count of every block.
import { Session } from 'node:inspector/promises';
import { fileURLToPath } from 'node:url';
import { relative } from 'node:path';
import ts from 'typescript';
import { projectFolder } from '../walls/source-files.ts';

/** A place in the code that was asked about and did not run. */
export interface UnreachedPlace {
  /** Path in the project. */
  readonly path: string;
  /** The code of the place, on one line. */
  readonly code: string;
}

interface CountedRange {
  readonly startOffset: number;
  readonly endOffset: number;
  readonly count: number;
}

/** Picks places that did not run. */
export type Unreached = (
  isWatched: (path: string) => boolean,
  isAsked: (node: ts.Node) => boolean,
) => Promise<{ readonly asked: number; readonly places: readonly UnreachedPlace[] }>;

export interface CodeWatch {
  /** Forgets what ran so far. */
  reset(): Promise<void>;
  /** What ran since the last reset, to be asked about; forgets it. */
  taken(): Promise<Unreached>;
}

/**
 * Starts to count. Only what is imported afterwards is counted block by block, so the code in question
 * has to be imported with `import()` after this.
 */
export async function watchCode(): Promise<CodeWatch> {
  const session = new Session();
  session.connect();
  await session.post('Profiler.enable');
  await session.post('Debugger.enable');
  await session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });
  const take = async () => (await session.post('Profiler.takePreciseCoverage')).result;
  /** Scripts that were seen; a script in which nothing ran since the reset is not reported again. */
  const scripts = new Map<string, string>();
  const sources = new Map<string, ts.SourceFile>();
  const sourceOf = async (scriptId: string, path: string): Promise<ts.SourceFile> => {
    const known = sources.get(scriptId);
    if (known !== undefined) return known;
    const { scriptSource } = await session.post('Debugger.getScriptSource', { scriptId });
    const source = ts.createSourceFile(path, scriptSource, ts.ScriptTarget.Latest, true);
    sources.set(scriptId, source);
    return source;
  };
  const note = (reported: Awaited<ReturnType<typeof take>>): void => {
    for (const { scriptId, url } of reported) scripts.set(scriptId, url);
  };
  return {
    async reset() {
      note(await take());
    },
    async taken() {
      const reported = await take();
      note(reported);
      const counted = new Map(reported.map(({ scriptId, functions }) => [scriptId, functions]));
      return async (isWatched, isAsked) => {
        const places: UnreachedPlace[] = [];
        let asked = 0;
        for (const [scriptId, url] of scripts) {
          if (!url.startsWith('file:')) continue;
          const path = relative(projectFolder, fileURLToPath(url));
          if (!isWatched(path)) continue;
          const source = await sourceOf(scriptId, path);
          const functions = (counted.get(scriptId) ?? []).map(({ ranges }) => ranges);
          const visit = (node: ts.Node): void => {
            if (isAsked(node)) {
              asked += 1;
              if (!didRun(node, functions, source)) {
                places.push({ path, code: node.getText(source).replaceAll(/\s+/gu, ' ') });
              }
            }
            ts.forEachChild(node, visit);
          };
          visit(source);
        }
        return { asked, places };
      };
    },
  };
}

/** The function that a place stands in; none where it runs as the module is loaded. */
function functionAround(node: ts.Node): ts.FunctionLikeDeclaration | undefined {
  let found: ts.FunctionLikeDeclaration | undefined;
  let depth = 0;
  for (let around = node.parent; !ts.isSourceFile(around); around = around.parent) {
    if (!ts.isFunctionLike(around) || !('body' in around)) continue;
    found ??= around as ts.FunctionLikeDeclaration;
    depth += 1;
  }
  // The outermost function is the wrapper that the test runner puts round every module.
  return depth > 1 ? found : undefined;
}

function didRun(
  node: ts.Node,
  functions: readonly (readonly CountedRange[])[],
  source: ts.SourceFile,
): boolean {
  const around = functionAround(node);
  if (around?.body === undefined) return true;
  const [from, to] = [around.getStart(source), around.body.getStart(source)];
  const own = functions.filter(([whole]) => whole!.startOffset >= from && whole!.startOffset <= to);
  const place = node.getStart(source);
  const size = ({ startOffset, endOffset }: CountedRange): number => endOffset - startOffset;
  const [narrowest] = own
    .flat()
    .filter(({ startOffset, endOffset }) => startOffset <= place && place < endOffset)
    .sort((one, two) => size(one) - size(two));
  return narrowest !== undefined && narrowest.count > 0;
}
