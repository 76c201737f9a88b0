// PowerShell texts taken apart by the lexical rules of its published language specification, section
// 2.3.5.2 (strings) and 2.2.3 (comments): our own reading of those rules, none of the code under test.

/** One piece of a script. */
export type PowershellToken =
  | { readonly kind: 'text'; readonly value: string }
  | { readonly kind: 'expandable'; readonly value: string }
  | { readonly kind: 'comment'; readonly value: string }
  | { readonly kind: 'other'; readonly value: string };

/** Signs that begin and end a verbatim text: U+0027, U+2018, U+2019, U+201A, U+201B. */
const SINGLE = new Set(
  [0x27, 0x20_18, 0x20_19, 0x20_1a, 0x20_1b].map((code) => String.fromCodePoint(code)),
);
/** Signs that begin and end an expandable text: U+0022, U+201C, U+201D, U+201E. */
const DOUBLE = new Set([0x22, 0x20_1c, 0x20_1d, 0x20_1e].map((code) => String.fromCodePoint(code)));

/**
 * Takes a script apart.
 *
 * @throws {Error} for a text that never ends
 */
export function readPowershell(script: string): readonly PowershellToken[] {
  const tokens: PowershellToken[] = [];
  let at = script.startsWith('\uFEFF') ? 1 : 0;
  let other = '';
  const close = (): void => {
    if (other !== '') tokens.push({ kind: 'other', value: other });
    other = '';
  };
  const quoted = (marks: ReadonlySet<string>): string => {
    let value = '';
    at += 1;
    for (;;) {
      const sign = script[at];
      if (sign === undefined) throw new Error(`a text never ends: ${value.slice(0, 60)}`);
      if (marks.has(sign)) {
        const next = script[at + 1];
        if (next === undefined || !marks.has(next)) break;
        // A doubled mark is the second of the two.
        value += next;
        at += 2;
      } else if (sign === '`' && marks === DOUBLE) {
        value += script[at + 1] === 'n' ? '\n' : (script[at + 1] ?? '');
        at += 2;
      } else {
        value += sign;
        at += 1;
      }
    }
    at += 1;
    return value;
  };
  while (at < script.length) {
    const sign = script[at]!;
    if (sign === '@' && script[at + 1] === "'" && script[at + 2] === '\n') {
      close();
      const end = script.indexOf("\n'@", at + 2);
      if (end < 0) throw new Error('a here-string never ends');
      tokens.push({ kind: 'text', value: script.slice(at + 3, end) });
      at = end + 3;
    } else if (sign === '#' && (other === '' ? true : /[\s({;]$/u.test(other))) {
      close();
      const end = script.indexOf('\n', at);
      tokens.push({ kind: 'comment', value: script.slice(at, end) });
      at = end;
    } else if (SINGLE.has(sign)) {
      close();
      tokens.push({ kind: 'text', value: quoted(SINGLE) });
    } else if (DOUBLE.has(sign)) {
      close();
      tokens.push({ kind: 'expandable', value: quoted(DOUBLE) });
    } else {
      other += sign;
      at += 1;
    }
  }
  close();
  return tokens;
}

/** Texts in every list of words, `@('a', "b", 'c')`, in order. */
export function wordListsIn(tokens: readonly PowershellToken[]): readonly (readonly string[])[] {
  const lists: string[][] = [];
  let list: string[] | undefined;
  for (const token of tokens) {
    if (token.kind === 'comment') continue;
    if (token.kind !== 'other') {
      list?.push(token.value);
      continue;
    }
    const { value } = token;
    if (list !== undefined && value.trim() !== ',') {
      lists.push(list);
      list = undefined;
    }
    if (value.endsWith('@(')) list = [];
  }
  return lists;
}
