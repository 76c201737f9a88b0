import ts from 'typescript';

// A probe tells that a place in the code ran: at the start of every function, and in each arm of a choice.

/** Where a probe stands, and the stretch of code that runs only when it does. */
export interface Probe {
  readonly start: number;
  readonly end: number;
}

interface Insertion {
  readonly at: number;
  readonly text: string;
  /** Of two at the same place the outer one opens first and closes last. */
  readonly order: number;
}

/** What probes call. */
export const HIT = '__mutationHit';

function guardedParts(node: ts.Node): readonly ts.Node[] {
  if (ts.isFunctionLike(node) && 'body' in node && node.body !== undefined) return [node.body];
  if (ts.isConditionalExpression(node)) return [node.whenTrue, node.whenFalse];
  if (ts.isIfStatement(node)) {
    return [node.thenStatement, ...(node.elseStatement === undefined ? [] : [node.elseStatement])];
  }
  return [];
}

/** The probes of a source file, outer ones first. */
export function probesOf(text: string): readonly Probe[] {
  const source = ts.createSourceFile('probed.ts', text, ts.ScriptTarget.Latest, true);
  const probes: Probe[] = [];
  const visit = (node: ts.Node): void => {
    for (const part of guardedParts(node)) probes.push({ start: part.getStart(), end: part.end });
    ts.forEachChild(node, visit);
  };
  visit(source);
  return probes;
}

/** The source with its probes put in, numbered from `first`. */
export function withProbes(text: string, first: number): string {
  const source = ts.createSourceFile('probed.ts', text, ts.ScriptTarget.Latest, true);
  const insertions: Insertion[] = [];
  let number = first;
  let depth = 0;
  const visit = (node: ts.Node): void => {
    depth += 1;
    for (const part of guardedParts(node)) {
      const hit = `${HIT}(${number})`;
      number += 1;
      const [start, end] = [part.getStart(), part.end];
      if (ts.isBlock(part)) {
        insertions.push({ at: start + 1, text: `${hit};`, order: depth });
      } else if (ts.isStatement(part)) {
        insertions.push({ at: start, text: `{${hit};`, order: depth });
        insertions.push({ at: end, text: '}', order: -depth });
      } else {
        insertions.push({ at: start, text: `(${hit},`, order: depth });
        insertions.push({ at: end, text: ')', order: -depth });
      }
    }
    ts.forEachChild(node, visit);
    depth -= 1;
  };
  visit(source);
  return insertions
    .toSorted((a, b) => a.at - b.at || a.order - b.order)
    .reduceRight(
      (changed, { at, text: inserted }) => changed.slice(0, at) + inserted + changed.slice(at),
      text,
    );
}

/** Index of the innermost probe round a place; undefined where the code runs as the file is loaded. */
export function probeAt(probes: readonly Probe[], place: number): number | undefined {
  let found: number | undefined;
  probes.forEach(({ start, end }, index) => {
    if (place < start || place >= end) return;
    const size = found === undefined ? Infinity : probes[found]!.end - probes[found]!.start;
    if (end - start <= size) found = index;
  });
  return found;
}
