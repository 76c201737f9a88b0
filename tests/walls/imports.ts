import { matchesGlob, posix } from 'node:path';
import ts from 'typescript';
import type { SourceFile } from './source-files.ts';

export type ImportKind = 'value' | 'type' | 'dynamic' | 'glob' | 'script' | 'url';

/** One import: who asks, for what, and how. */
export interface Edge {
  readonly from: string;
  /** Path from the project folder, or the bare name of a package. */
  readonly to: string;
  readonly kind: ImportKind;
  readonly line: number;
}

interface Found {
  readonly specifier: string;
  readonly kind: ImportKind;
  readonly line: number;
}

function literalTexts(node: ts.Node | undefined): readonly string[] {
  if (node === undefined) return [];
  if (ts.isStringLiteralLike(node)) return [node.text];
  if (ts.isArrayLiteralExpression(node)) return node.elements.flatMap(literalTexts);
  return [];
}

function isImportMeta(node: ts.Node, member: string): boolean {
  return (
    ts.isPropertyAccessExpression(node) &&
    node.name.text === member &&
    ts.isMetaProperty(node.expression)
  );
}

function isOnlyTypes(clause: ts.ImportClause | undefined): boolean {
  if (clause === undefined) return false;
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const bindings = clause.namedBindings;
  return (
    clause.name === undefined &&
    bindings !== undefined &&
    ts.isNamedImports(bindings) &&
    bindings.elements.length > 0 &&
    bindings.elements.every((element) => element.isTypeOnly)
  );
}

function importsOfNode(node: ts.Node): readonly Omit<Found, 'line'>[] {
  const found = (kind: ImportKind, source: ts.Node | undefined): Omit<Found, 'line'>[] =>
    literalTexts(source).map((specifier) => ({ specifier, kind }));
  if (ts.isImportDeclaration(node)) {
    return found(isOnlyTypes(node.importClause) ? 'type' : 'value', node.moduleSpecifier);
  }
  if (ts.isExportDeclaration(node)) {
    return found(node.isTypeOnly ? 'type' : 'value', node.moduleSpecifier);
  }
  if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) {
    return found('type', node.argument.literal);
  }
  if (ts.isImportEqualsDeclaration(node) && ts.isExternalModuleReference(node.moduleReference)) {
    return found('value', node.moduleReference.expression);
  }
  if (ts.isCallExpression(node)) {
    const { expression } = node;
    const isRequire = ts.isIdentifier(expression) && expression.text === 'require';
    if (expression.kind === ts.SyntaxKind.ImportKeyword || isRequire) {
      return found('dynamic', node.arguments[0]);
    }
    if (isImportMeta(expression, 'glob')) return found('glob', node.arguments[0]);
  }
  if (
    ts.isNewExpression(node) &&
    ts.isIdentifier(node.expression) &&
    node.expression.text === 'URL' &&
    node.arguments?.[1] !== undefined &&
    isImportMeta(node.arguments[1], 'url')
  ) {
    return found('url', node.arguments[0]);
  }
  return [];
}

function importsOfScript(text: string, firstLine: number, fileName: string): readonly Found[] {
  const script = ts.createSourceFile(fileName, text, ts.ScriptTarget.Latest, true);
  const found: Found[] = [];
  const visit = (node: ts.Node): void => {
    for (const each of importsOfNode(node)) {
      const line = firstLine + script.getLineAndCharacterOfPosition(node.getStart()).line;
      found.push({ ...each, line });
    }
    ts.forEachChild(node, visit);
  };
  visit(script);
  return found;
}

/** The code parts of an .astro file: the part between the fences, script elements, and braces. */
function importsOfAstro(text: string): readonly Found[] {
  const lineAt = (index: number): number => text.slice(0, index).split('\n').length;
  const found: Found[] = [];
  const fences = /^\s*---\r?\n([\s\S]*?)\r?\n---/u.exec(text);
  const code = fences?.[1] ?? '';
  found.push(...importsOfScript(code, lineAt(text.indexOf(code)), 'frontmatter.ts'));
  const bodyStart = fences === null ? 0 : fences.index + fences[0].length;
  const body = text.slice(bodyStart);
  for (const script of body.matchAll(/<script\b([^>]*)>([\s\S]*?)<\/script>/gu)) {
    const [whole, attributes = '', inside = ''] = script;
    const line = lineAt(bodyStart + script.index + whole.indexOf(inside));
    found.push(...importsOfScript(inside, line, 'script.ts'));
    const source = /\bsrc\s*=\s*["']([^"']+)["']/u.exec(attributes)?.[1];
    if (source !== undefined) {
      // An address from the root of the site is a file of src/public.
      const specifier = source.startsWith('/') ? `/src/public${source}` : source;
      found.push({ specifier, kind: 'script', line });
    }
  }
  const markup = body.replaceAll(/<script\b[\s\S]*?<\/script>/gu, (script) =>
    script.replaceAll(/[^\n]/gu, ' '),
  );
  for (const match of markup.matchAll(/\bimport\(\s*["'`]([^"'`]+)["'`]/gu)) {
    found.push({ specifier: match[1]!, kind: 'dynamic', line: lineAt(bodyStart + match.index) });
  }
  for (const match of markup.matchAll(/\bimport\.meta\.glob\w*\(\s*\[?\s*["'`]([^"'`]+)["'`]/gu)) {
    found.push({ specifier: match[1]!, kind: 'glob', line: lineAt(bodyStart + match.index) });
  }
  return found;
}

function importsOfMdx(text: string): readonly Found[] {
  return text.split('\n').flatMap((line, index) => {
    const specifier = /^(?:import|export)\b.*?["']([^"']+)["'];?\s*$/u.exec(line)?.[1];
    return specifier === undefined ? [] : [{ specifier, kind: 'value' as const, line: index + 1 }];
  });
}

function resolve(from: string, specifier: string): string {
  const plain = specifier.replace(/[?#].*$/u, '');
  if (plain.startsWith('.')) return posix.join(posix.dirname(from), plain);
  if (plain.startsWith('/')) return plain.slice(1);
  return plain;
}

/** Targets of a glob among the known files; the pattern itself when it matches none of them. */
function expandGlob(from: string, pattern: string, files: readonly SourceFile[]): string[] {
  if (pattern.startsWith('!')) return [];
  const resolved = resolve(from, pattern);
  const matches = files
    .map(({ path }) => path)
    .filter((path) => path !== from && matchesGlob(path, resolved));
  return matches.length === 0 ? [resolved] : matches;
}

/** All imports of all files, static, type, dynamic, re-exported, globbed, or named by a script tag. */
export function edgesOf(files: readonly SourceFile[]): readonly Edge[] {
  const known = new Set(files.map(({ path }) => path));
  const withEnding = (path: string): string =>
    ['', '.ts', '.tsx', '.astro', '/index.ts', '/index.tsx']
      .map((ending) => path + ending)
      .find((candidate) => known.has(candidate)) ?? path;
  return files.flatMap(({ path, text }) => {
    const found = path.endsWith('.astro')
      ? importsOfAstro(text)
      : path.endsWith('.mdx') || path.endsWith('.md')
        ? importsOfMdx(text)
        : importsOfScript(text, 1, path);
    return found.flatMap(({ specifier, kind, line }) =>
      (kind === 'glob'
        ? expandGlob(path, specifier, files)
        : [withEnding(resolve(path, specifier))]
      ).map((to) => ({ from: path, to, kind, line })),
    );
  });
}
