import ts from 'typescript';
import type { SourceFile } from '../walls/source-files.ts';

/** An exported function and what its docstring says. */
export interface DocumentedFunction {
  readonly path: string;
  readonly name: string;
  /** True where there is a sentence above the tags. */
  readonly isDescribed: boolean;
  readonly parameters: readonly string[];
  /** True where every argument is a number, a text or a yes-or-no, so that one line can show a call. */
  readonly takesLiterals: boolean;
  readonly returnType: string;
  readonly params: readonly string[];
  readonly returns: readonly string[];
  readonly sources: readonly string[];
  readonly examples: readonly string[];
}

const PLAIN_TYPE = /^(?:number|string|boolean)$/u;

function commentText(comment: ts.JSDocTag['comment']): string {
  return (ts.getTextOfJSDocComment(comment) ?? '').trim();
}

function readFunction(
  path: string,
  name: string,
  owner: ts.Node,
  signature: ts.SignatureDeclaration,
): DocumentedFunction {
  const docs = ts.getJSDocCommentsAndTags(owner).filter(ts.isJSDoc);
  const tags = ts.getJSDocTags(owner);
  const textsOf = (tagName: string): readonly string[] =>
    tags.filter((tag) => tag.tagName.text === tagName).map((tag) => commentText(tag.comment));
  return {
    path,
    name,
    isDescribed: docs.some((doc) => commentText(doc.comment) !== ''),
    parameters: signature.parameters.map((parameter) => parameter.name.getText()),
    takesLiterals: signature.parameters.every(({ type, initializer }) =>
      type === undefined ? initializer !== undefined : PLAIN_TYPE.test(type.getText()),
    ),
    returnType: signature.type?.getText() ?? '',
    params: tags.filter(ts.isJSDocParameterTag).map((tag) => tag.name.getText()),
    returns: textsOf('returns'),
    sources: textsOf('source'),
    examples: textsOf('example'),
  };
}

function isExported(node: ts.FunctionDeclaration | ts.VariableStatement): boolean {
  return node.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) ?? false;
}

/** The exported functions of a file, declared as functions or as constants that hold one. */
export function exportedFunctions({ path, text }: SourceFile): readonly DocumentedFunction[] {
  const script = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  return script.statements.flatMap((statement) => {
    if (ts.isFunctionDeclaration(statement) && isExported(statement)) {
      return [readFunction(path, statement.name?.text ?? '', statement, statement)];
    }
    if (!ts.isVariableStatement(statement) || !isExported(statement)) return [];
    return statement.declarationList.declarations.flatMap(({ name, initializer }) =>
      initializer !== undefined &&
      (ts.isArrowFunction(initializer) || ts.isFunctionExpression(initializer))
        ? [readFunction(path, name.getText(), statement, initializer)]
        : [],
    );
  });
}

/** What is missing in a docstring, as sentences. `sourceIds`: the ids of content/sources.yaml. */
export function docstringFaults(
  documented: DocumentedFunction,
  sourceIds: ReadonlySet<string>,
): readonly string[] {
  const { isDescribed, parameters, params, returns, returnType, sources, examples } = documented;
  const faults: string[] = [];
  if (!isDescribed) faults.push('has no sentence that says what it gives');
  if (returnType === '') faults.push('has no declared return type');
  // Where the one sentence that says what it gives is the whole docstring, @returns would repeat it.
  const isInFull = params.length + sources.length > 0;
  if (isInFull && !/^(?:void|never)$/u.test(returnType) && returns.join('') === '') {
    faults.push('has no @returns');
  }
  for (const name of params) {
    if (!parameters.includes(name)) faults.push(`describes “${name}”, which is no argument`);
  }
  for (const name of params.length === 0 ? [] : parameters) {
    if (!params.includes(name)) faults.push(`does not describe its argument “${name}”`);
  }
  if (PLAIN_TYPE.test(returnType) && documented.takesLiterals && examples.length === 0) {
    faults.push('has no @example, though its result could be shown in one line');
  }
  for (const text of sources) {
    const id = /^[a-z0-9]+(?:-[a-z0-9]+)*(?=[\s,;:(]|$)/u.exec(text)?.[0];
    const isHonest = /^(?:common practice, no source|from memory, unverified)/u.test(text);
    if (!isHonest && (id === undefined || !sourceIds.has(id))) {
      faults.push(`cites “${text}”, which is not in content/sources.yaml`);
    }
  }
  return faults;
}
