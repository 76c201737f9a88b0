import ts from 'typescript';

/** One small change to a source file that the tests should notice. */
export interface Mutant {
  /** Path from the project folder. */
  readonly file: string;
  /** Which kind of slip it imitates. */
  readonly operator: string;
  readonly line: number;
  /** The source line it stands in, trimmed: names the mutant in the list of equivalents. */
  readonly at: string;
  readonly start: number;
  readonly end: number;
  readonly from: string;
  readonly to: string;
  /** True for a number behind `list[index] ??` or `found?.x ??`, for what is out of range. */
  readonly isFallback: boolean;
}

type Change = Pick<Mutant, 'operator' | 'start' | 'end' | 'to'>;

const { SyntaxKind } = ts;

const BINARY: ReadonlyMap<ts.SyntaxKind, readonly (readonly [string, string])[]> = new Map([
  [SyntaxKind.PlusToken, [['arithmetic', '-']]],
  [SyntaxKind.MinusToken, [['arithmetic', '+']]],
  [SyntaxKind.AsteriskToken, [['arithmetic', '/']]],
  [SyntaxKind.SlashToken, [['arithmetic', '*']]],
  [SyntaxKind.PercentToken, [['arithmetic', '*']]],
  [SyntaxKind.AsteriskAsteriskToken, [['arithmetic', '*']]],
  [
    SyntaxKind.LessThanToken,
    [
      ['boundary', '<='],
      ['comparison', '>='],
    ],
  ],
  [
    SyntaxKind.LessThanEqualsToken,
    [
      ['boundary', '<'],
      ['comparison', '>'],
    ],
  ],
  [
    SyntaxKind.GreaterThanToken,
    [
      ['boundary', '>='],
      ['comparison', '<='],
    ],
  ],
  [
    SyntaxKind.GreaterThanEqualsToken,
    [
      ['boundary', '>'],
      ['comparison', '<'],
    ],
  ],
  [SyntaxKind.EqualsEqualsEqualsToken, [['comparison', '!==']]],
  [SyntaxKind.ExclamationEqualsEqualsToken, [['comparison', '===']]],
  [SyntaxKind.AmpersandAmpersandToken, [['boolean', '||']]],
  [SyntaxKind.BarBarToken, [['boolean', '&&']]],
] as const);

const OTHER_CALL: Readonly<Record<string, string>> = {
  min: 'max',
  max: 'min',
  floor: 'ceil',
  ceil: 'floor',
  some: 'every',
  every: 'some',
};

const isText = (node: ts.Node): boolean =>
  ts.isStringLiteralLike(node) || ts.isTemplateExpression(node);

function ofBinary(node: ts.BinaryExpression): readonly Change[] {
  const { operatorToken, left, right } = node;
  const joinsTexts = [left, right].some(
    (side) => isText(side) || (ts.isBinaryExpression(side) && isText(side.right)),
  );
  if (joinsTexts && operatorToken.kind === SyntaxKind.PlusToken) return [];
  return (BINARY.get(operatorToken.kind) ?? []).map(([operator, to]) => ({
    operator,
    start: operatorToken.getStart(),
    end: operatorToken.end,
    to,
  }));
}

/** Whether a text is a name in code rather than something said: a key, a kind, a path. */
function isNameInCode(node: ts.Node): boolean {
  const { parent } = node;
  return (
    ts.isLiteralTypeNode(parent) ||
    ts.isImportDeclaration(parent) ||
    ts.isExportDeclaration(parent) ||
    ts.isExternalModuleReference(parent) ||
    (ts.isPropertyAssignment(parent) && parent.name === node) ||
    (ts.isNewExpression(parent) && parent.expression.getText() === 'Error')
  );
}

function ofNumber(node: ts.NumericLiteral): readonly Change[] {
  const value = Number(node.text);
  const place = { operator: 'number', start: node.getStart(), end: node.end };
  if (ts.isPropertyAssignment(node.parent) && node.parent.name === node) return [];
  return [
    { ...place, to: String(value + 1) },
    { ...place, to: value === 0 ? '-1' : `(${value - 1})` },
  ];
}

function changesOf(node: ts.Node): readonly Change[] {
  const whole = { start: node.getStart(), end: node.end };
  if (ts.isBinaryExpression(node)) return ofBinary(node);
  if (ts.isNumericLiteral(node)) return ofNumber(node);
  if (isText(node)) {
    const isEmpty = ts.isStringLiteralLike(node) && node.text === '';
    return isEmpty || isNameInCode(node) ? [] : [{ operator: 'text', ...whole, to: "''" }];
  }
  if (node.kind === SyntaxKind.TrueKeyword || node.kind === SyntaxKind.FalseKeyword) {
    if (ts.isLiteralTypeNode(node.parent)) return [];
    return [{ operator: 'boolean', ...whole, to: String(node.kind === SyntaxKind.FalseKeyword) }];
  }
  if (ts.isPrefixUnaryExpression(node)) {
    const isTurned = [SyntaxKind.ExclamationToken, SyntaxKind.MinusToken].includes(node.operator);
    if (!isTurned) return [];
    return [{ operator: 'sign', ...whole, to: node.operand.getText() }];
  }
  if (ts.isConditionalExpression(node) || ts.isIfStatement(node)) {
    const condition = ts.isIfStatement(node) ? node.expression : node.condition;
    const place = { operator: 'condition', start: condition.getStart(), end: condition.end };
    return ['true', 'false'].map((to) => ({ ...place, to }));
  }
  if (ts.isReturnStatement(node) && node.expression !== undefined) {
    if (node.expression.getText() === 'undefined') return [];
    const { expression } = node;
    const place = { start: expression.getStart(), end: expression.end };
    return [{ operator: 'return', ...place, to: 'undefined' }];
  }
  if (ts.isExpressionStatement(node) && ts.isCallExpression(node.expression)) {
    return [{ operator: 'call', ...whole, to: ';' }];
  }
  if (ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression)) {
    const { name } = node.expression;
    const to = Object.hasOwn(OTHER_CALL, name.text) ? OTHER_CALL[name.text] : undefined;
    return to === undefined
      ? []
      : [{ operator: 'method', start: name.getStart(), end: name.end, to }];
  }
  return [];
}

/** Whether a number stands for what is not in a list: the compiler asks for it, the code may never. */
function isFallback(node: ts.Node): boolean {
  const { parent } = node;
  return (
    ts.isNumericLiteral(node) &&
    ts.isBinaryExpression(parent) &&
    parent.operatorToken.kind === SyntaxKind.QuestionQuestionToken &&
    parent.right === node &&
    (ts.isElementAccessExpression(parent.left) ||
      ts.isOptionalChain(parent.left) ||
      /\.at\([^()]*\)$/u.test(parent.left.getText()))
  );
}

/** Every mutant of a source file, in the order of its text. */
export function mutantsOf(file: string, text: string): readonly Mutant[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const lines = text.split('\n');
  const mutants: Mutant[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isInterfaceDeclaration(node)) return;
    for (const change of changesOf(node)) {
      const from = text.slice(change.start, change.end);
      const { line } = source.getLineAndCharacterOfPosition(change.start);
      if (from === change.to) continue;
      mutants.push({
        file,
        ...change,
        from,
        line: line + 1,
        at: (lines[line] ?? '').trim(),
        isFallback: isFallback(node),
      });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return mutants.toSorted((a, b) => a.start - b.start || a.to.localeCompare(b.to));
}

/** The source with the change made. */
export function mutated(text: string, { start, end, to }: Mutant): string {
  return text.slice(0, start) + to + text.slice(end);
}

/** The same sample for the same seed: a generator of random numbers from 0 up to 1. */
function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A sample without repetition, the same for the same seed. */
export function sampleOf<Item>(
  items: readonly Item[],
  size: number,
  seed: number,
): readonly Item[] {
  const random = randomFrom(seed);
  return items
    .map((item) => ({ item, place: random() }))
    .toSorted((a, b) => a.place - b.place)
    .slice(0, size)
    .map(({ item }) => item);
}
