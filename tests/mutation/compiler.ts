import { dirname, join } from 'node:path';
import ts from 'typescript';
import { projectFolder } from '../walls/source-files.ts';

/** Tells whether the compiler refuses a text in place of a file: `npm run check:types` would stop it. */
export interface Compiler {
  refuses(file: string, text: string): boolean;
}

/** The project's compiler, kept warm. */
export function warmCompiler(files: readonly string[]): Compiler {
  const configPath = join(projectFolder, 'tsconfig.json');
  const { config } = ts.readConfigFile(configPath, (path) => ts.sys.readFile(path)) as {
    config: unknown;
  };
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, dirname(configPath));
  const replaced = new Map<string, string>();
  let version = 0;
  const service = ts.createLanguageService({
    getCompilationSettings: () => ({ ...options, noEmit: true }),
    getScriptFileNames: () => files.map((file) => join(projectFolder, file)),
    getScriptVersion: (path) => (replaced.has(path) ? `changed ${version}` : 'as it is'),
    getScriptSnapshot: (path) => {
      const text = replaced.get(path) ?? ts.sys.readFile(path);
      return text === undefined ? undefined : ts.ScriptSnapshot.fromString(text);
    },
    getCurrentDirectory: () => projectFolder,
    getDefaultLibFileName: (given) => ts.getDefaultLibFilePath(given),
    fileExists: (path) => ts.sys.fileExists(path),
    readFile: (path) => ts.sys.readFile(path),
    readDirectory: (...given) => ts.sys.readDirectory(...given),
    directoryExists: (path) => ts.sys.directoryExists(path),
    getDirectories: (path) => ts.sys.getDirectories(path),
  });
  const isRefused = (path: string): boolean =>
    service.getSyntacticDiagnostics(path).length > 0 ||
    service.getSemanticDiagnostics(path).length > 0;
  return {
    refuses(file, text) {
      const path = join(projectFolder, file);
      // A fault that is there without the change says nothing about it.
      if (isRefused(path)) throw new Error(`${file} does not compile as it is`);
      replaced.set(path, text);
      version += 1;
      const refused = isRefused(path);
      replaced.delete(path);
      return refused;
    },
  };
}
