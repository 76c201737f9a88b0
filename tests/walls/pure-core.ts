import ts from 'typescript';
import type { SourceFile } from './source-files.ts';

/** Names of the world outside a sum; the core may not know of them. */
const OUTSIDE = new Set([
  'window',
  'document',
  'globalThis',
  'self',
  'navigator',
  'location',
  'localStorage',
  'sessionStorage',
  'performance',
  'fetch',
  'process',
  'Date',
  'crypto',
  'console',
  'setTimeout',
  'setInterval',
  'require',
]);

function isNameOnly(node: ts.Identifier): boolean {
  const { parent } = node;
  return (
    (ts.isPropertyAccessExpression(parent) && parent.name === node) ||
    (ts.isQualifiedName(parent) && parent.right === node) ||
    (ts.isPropertyAssignment(parent) && parent.name === node) ||
    ((ts.isPropertySignature(parent) || ts.isPropertyDeclaration(parent)) && parent.name === node)
  );
}

/** Names that the file itself gives to something, which then mean that and not the outside. */
function ownNames(script: ts.SourceFile): ReadonlySet<string> {
  const names = new Set<string>();
  const visit = (node: ts.Node): void => {
    if (
      (ts.isVariableDeclaration(node) || ts.isParameter(node) || ts.isBindingElement(node)) &&
      ts.isIdentifier(node.name)
    ) {
      names.add(node.name.text);
    }
    ts.forEachChild(node, visit);
  };
  visit(script);
  return names;
}

/** Uses of time, chance or the surroundings in code that should be nothing but arithmetic. */
export function impureUses(files: readonly SourceFile[]): readonly string[] {
  return files.flatMap(({ path, text }) => {
    const script = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
    const own = ownNames(script);
    const found: string[] = [];
    const report = (node: ts.Node, what: string): void => {
      const { line } = script.getLineAndCharacterOfPosition(node.getStart());
      found.push(`${path}:${line + 1} uses ${what}`);
    };
    const visit = (node: ts.Node): void => {
      if (
        ts.isIdentifier(node) &&
        OUTSIDE.has(node.text) &&
        !own.has(node.text) &&
        !isNameOnly(node)
      ) {
        report(node, node.text);
      }
      if (
        ts.isPropertyAccessExpression(node) &&
        node.name.text === 'random' &&
        ts.isIdentifier(node.expression) &&
        node.expression.text === 'Math'
      ) {
        report(node, 'Math.random');
      }
      ts.forEachChild(node, visit);
    };
    visit(script);
    return found;
  });
}
