// PowerShell texts read by a grammar of others (tree-sitter-powershell), and the values of their texts
// worked out here by the rules of the published language, sections 2.3.5.2 and about_Quoting_Rules.
import { fileURLToPath } from 'node:url';
import { Language, Parser, type Node } from 'web-tree-sitter';

/** One node of a syntax tree. */
export interface TreeNode {
  readonly type: string;
  readonly text: string;
  readonly isNamed: boolean;
  readonly parent: TreeNode | undefined;
  readonly children: readonly TreeNode[];
}

/** Signs that begin and end a verbatim text, and signs that begin and end an expandable one. */
const SINGLE = String.fromCodePoint(0x27, 0x20_18, 0x20_19, 0x20_1a, 0x20_1b);
const DOUBLE = String.fromCodePoint(0x22, 0x20_1c, 0x20_1d, 0x20_1e);

let waiting: Promise<Parser> | undefined;

async function makeParser(): Promise<Parser> {
  await Parser.init();
  const grammar = fileURLToPath(
    import.meta.resolve('tree-sitter-powershell/tree-sitter-powershell.wasm'),
  );
  const parser = new Parser();
  parser.setLanguage(await Language.load(grammar));
  return parser;
}

/** What is wrong with a tree, by line. */
function faultsOf(node: Node): readonly string[] {
  const { type, text, startPosition } = node;
  return [
    ...(node.isError || node.isMissing
      ? [`line ${startPosition.row + 1}: ${type} ${text.slice(0, 120)}`]
      : []),
    ...node.children.flatMap((child) => (child.hasError ? faultsOf(child) : [])),
  ];
}

/** The same tree as plain objects, which are quicker to walk. */
function plainTree(node: Node, script: string): TreeNode {
  const cursor = node.walk();
  const take = (parent: TreeNode | undefined): TreeNode => {
    const children: TreeNode[] = [];
    const text = script.slice(cursor.startIndex, cursor.endIndex);
    const made = { type: cursor.nodeType, text, isNamed: cursor.nodeIsNamed, parent, children };
    if (cursor.gotoFirstChild()) {
      do children.push(take(made));
      while (cursor.gotoNextSibling());
      cursor.gotoParent();
    }
    return made;
  };
  const plain = take(undefined);
  cursor.delete();
  return plain;
}

/** Parses a script and takes a part of its tree. The mark of UTF-8 at its head is no part of the language. */
async function parsed(marked: string, part: (root: Node) => Node): Promise<TreeNode> {
  waiting ??= makeParser();
  const parser = await waiting;
  const script = marked.replace(/^\uFEFF/u, '');
  const tree = parser.parse(script);
  if (tree === null) throw new Error('the grammar read nothing');
  const { rootNode } = tree;
  if (rootNode.hasError)
    throw new Error(`not PowerShell: ${faultsOf(rootNode).slice(0, 3).join('; ')}`);
  const plain = plainTree(part(rootNode), script);
  tree.delete();
  return plain;
}

const trees = new Map<string, TreeNode>();

/**
 * The syntax tree of a script.
 *
 * @throws {Error} names the first places that the grammar does not take
 */
export async function powershellTree(script: string): Promise<TreeNode> {
  const tree = trees.get(script) ?? (await parsed(script, (root) => root));
  trees.set(script, tree);
  return tree;
}

/**
 * The settings at the head of a script, of which the grammar takes the rest as well.
 *
 * @throws {Error} names the first places that the grammar does not take
 */
export const settingsTree = (script: string): Promise<TreeNode> =>
  parsed(script, (root) => root.descendantsOfType('param_block')[0] ?? root);

/** A node and everything under it, in the order of the text. */
export function nodesOf(node: TreeNode): readonly TreeNode[] {
  const nodes = [node];
  const addBelow = ({ children }: TreeNode): void => {
    for (const child of children) {
      nodes.push(child);
      addBelow(child);
    }
  };
  addBelow(node);
  return nodes;
}

/** The nearest node of one type around a node. */
export function around(node: TreeNode, type: string): TreeNode | undefined {
  for (let at = node.parent; at !== undefined; at = at.parent) if (at.type === type) return at;
  return undefined;
}

/** The nodes of one type under a node, in the order of the text. */
export const ofType = (node: TreeNode, type: string): readonly TreeNode[] =>
  nodesOf(node).filter((one) => one.type === type);

/** Whether a text between two marks has a mark inside that is not doubled, so that it would end there. */
function endsEarly(inside: string, marks: string): boolean {
  for (let at = 0; at < inside.length; at += 1) {
    if (marks === DOUBLE && inside[at] === '`') {
      at += 1;
    } else if (marks.includes(inside[at]!)) {
      at += 1;
      if (at === inside.length || !marks.includes(inside[at]!)) return true;
    }
  }
  return false;
}

/** A text in which each doubled mark stands for the second of the two. */
function undoubled(inside: string, marks: string): string {
  let value = '';
  for (let at = 0; at < inside.length; at += 1) {
    if (marks.includes(inside[at]!)) at += 1;
    value += inside[at]!;
  }
  return value;
}

/**
 * What a text or a variable stands for; variables are looked up by name, without their sign.
 *
 * @throws {Error} for a node that is neither, and for a text that PowerShell would end elsewhere
 */
export function valueOf(node: TreeNode, variables: Readonly<Record<string, string>>): string {
  const { type, text } = node;
  const looked = (name: string): string => {
    const value = variables[name];
    if (value === undefined) throw new Error(`what is $${name}?`);
    return value;
  };
  if (type === 'variable') return looked(text.slice(1));
  if (type === 'verbatim_here_string_characters')
    return text.slice(text.indexOf('\n') + 1, text.lastIndexOf('\n'));
  const inside = text.slice(1, -1);
  if (type === 'verbatim_string_characters') {
    if (endsEarly(inside, SINGLE)) throw new Error(`this text ends early: ${text}`);
    return undoubled(inside, SINGLE);
  }
  if (type === 'expandable_string_literal') {
    if (endsEarly(inside, DOUBLE)) throw new Error(`this text ends early: ${text}`);
    if (/[`(]/u.test(inside)) throw new Error(`more than a variable in it: ${text}`);
    return undoubled(inside, DOUBLE).replaceAll(/\$\{?(\w+)\}?/gu, (_, name: string) =>
      looked(name),
    );
  }
  throw new Error(`no text: ${type} ${text}`);
}

/** Texts and variables directly in a list, a call or a name, whatever the grammar wraps them in. */
export function wordsIn(node: TreeNode): readonly TreeNode[] {
  const single = [
    'verbatim_string_characters',
    'expandable_string_literal',
    'verbatim_here_string_characters',
    'variable',
  ];
  const below = (one: TreeNode): readonly TreeNode[] =>
    single.includes(one.type) ? [one] : one.children.flatMap((child) => below(child));
  return below(node);
}
