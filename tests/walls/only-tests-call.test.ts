import ts from 'typescript';
import { afterAll, describe, expect, it } from 'vitest';
import { readFiles, type SourceFile } from './source-files.ts';

// What only a test calls is tested for nobody: it gets a reader, or it moves into the tests.

interface Exported {
  readonly path: string;
  readonly name: string;
}

/** Trees by the text: a file is asked for what it exports and for what it reads. */
const trees = new Map<string, ts.SourceFile>();
afterAll(() => {
  trees.clear();
});

function parse({ path, text }: SourceFile): ts.SourceFile {
  const kind = path.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  const tree =
    trees.get(text) ?? ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true, kind);
  trees.set(text, tree);
  return tree;
}

const isExported = (node: ts.Node): boolean =>
  ts.canHaveModifiers(node) &&
  (ts.getModifiers(node) ?? []).some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword);

/** Functions, classes and values that a file exports; types vanish and are left out. */
function exportsOf(file: SourceFile): readonly Exported[] {
  const names: string[] = [];
  for (const statement of parse(file).statements) {
    if (!isExported(statement)) continue;
    if (ts.isFunctionDeclaration(statement) || ts.isClassDeclaration(statement)) {
      if (statement.name !== undefined) names.push(statement.name.text);
    }
    if (ts.isVariableStatement(statement)) {
      for (const { name } of statement.declarationList.declarations) {
        if (ts.isIdentifier(name)) names.push(name.text);
      }
    }
  }
  return names.map((name) => ({ path: file.path, name }));
}

/** Whether an identifier is the name that a declaration gives. */
function isNameOf(declaration: ts.Node, name: ts.Identifier): boolean {
  return (
    (ts.isFunctionDeclaration(declaration) ||
      ts.isVariableDeclaration(declaration) ||
      ts.isClassDeclaration(declaration)) &&
    declaration.name === name
  );
}

/** Names that a file reads: every identifier but those that it declares or imports. */
function readsOf(file: SourceFile): ReadonlySet<string> {
  if (!/\.tsx?$/u.test(file.path)) return new Set(file.text.match(/[A-Za-z_$][\w$]*/gu) ?? []);
  const names = new Set<string>();
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) return;
    if (ts.isIdentifier(node) && !isNameOf(node.parent, node)) names.add(node.text);
    ts.forEachChild(node, visit);
  };
  visit(parse(file));
  return names;
}

/** Exports that nothing in these files reads. */
function unreadIn(
  exporting: readonly SourceFile[],
  reading: readonly SourceFile[],
): readonly Exported[] {
  const read = new Set(reading.flatMap((file) => [...readsOf(file)]));
  return exporting.flatMap(exportsOf).filter(({ name }) => !read.has(name));
}

/** What only a test reads so far; each waits for a sheet or a page to use it. */
const WAITING_FOR_A_SHEET: readonly string[] = [
  'src/core/file/band-motion.ts bandMotionOfPictures',
];

/** Asked for by the site builder. */
const isForTheBuilder = ({ path, name }: Exported): boolean =>
  (path.startsWith('src/pages/') && name === 'GET') || path === 'src/content.config.ts';

/** Commands of the core that the chapters print; the test of their words holds them to the core. */
function namesForChapters(): ReadonlySet<string> {
  const { text } = readFiles('tests/content', ['commands.test.ts'])[0]!;
  const imported = [...text.matchAll(/import \{([^}]*)\} from '[^']*\/src\/core\/file\/[^']*'/gu)];
  return new Set(imported.flatMap(([, names = '']) => names.split(',').map((name) => name.trim())));
}

describe('what src exports', () => {
  const source = readFiles('src', ['.ts', '.tsx']);
  const readers = readFiles('src', ['.ts', '.tsx', '.astro', '.mjs', '.js']);

  it('is read by src itself, not by tests alone', () => {
    const forChapters = namesForChapters();
    expect(source.length).toBeGreaterThan(200);
    expect(forChapters.size).toBeGreaterThan(5);
    const unread = unreadIn(source, readers)
      .filter((each) => !isForTheBuilder(each) && !forChapters.has(each.name))
      .map(({ path, name }) => `${path} ${name}`);
    expect(unread.sort()).toEqual([...WAITING_FOR_A_SHEET].sort());
  });

  it('is told apart from what is read', () => {
    const file = (path: string, text: string): SourceFile => ({ path, text });
    const one = file(
      'src/one.ts',
      'export function used() { return 1; }\nexport function lonely() { return used(); }\nexport const size = 2;',
    );
    const two = file(
      'src/two.ts',
      "import { lonely, size } from './one.ts';\nexport const far = size;",
    );
    const names = unreadIn([one, two], [one, two]).map(({ name }) => name);
    expect(names).toEqual(['lonely', 'far']);
  });
});
