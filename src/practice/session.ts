import { CASE_LEVELS, type CaseKind, type CaseLevel } from './case-kind.ts';
import { drawnOne, seededChance } from './chance.ts';
import { itemKey } from './path.ts';

/** Questions in a session. */
export const SESSION_LENGTH = 10;
/** Of these so many are cases; the others are sums. */
const SESSION_CASES = 6;
/** What comes back takes at most so many places. */
const MOST_DUE = 6;

/** One question of a session or a sheet, still to be drawn. */
export type SessionItem =
  | { readonly type: 'case'; readonly id: string; readonly level: CaseLevel; readonly seed: string }
  | { readonly type: 'sum'; readonly id: string; readonly seed: string };

/** Level of a session: one of the three, or all of them. */
export type SessionLevel = CaseLevel | 'all';

interface Stock {
  readonly cases: readonly Pick<CaseKind, 'id'>[];
  readonly sums: readonly { readonly id: string }[];
}

export const keyOf = (item: SessionItem): string =>
  itemKey(item.id, item.type === 'case' ? item.level : undefined);

/** The item that a key of the record means; undefined where the book has no such kind now. */
function itemOfKey(key: string, { cases, sums }: Stock, seed: string): SessionItem | undefined {
  const [id = '', level] = key.split(':');
  if (level === undefined) {
    return sums.some((sum) => sum.id === id) ? { type: 'sum', id, seed } : undefined;
  }
  const known = CASE_LEVELS.find((each) => String(each) === level);
  if (known === undefined || !cases.some((each) => each.id === id)) return undefined;
  return { type: 'case', id, level: known, seed };
}

/**
 * So many of the kinds, those first whose own number for this seed is least. A kind that is added to the
 * book later takes at most one place from the others, so a link of last spring still gives (nearly) the
 * same set.
 */
function drawnKinds<Kind extends { readonly id: string }>(
  seed: string,
  kinds: readonly Kind[],
  count: number,
): readonly Kind[] {
  return kinds
    .map((kind) => ({ kind, number: seededChance(`${seed}/${kind.id}`)() }))
    .toSorted((a, b) => a.number - b.number)
    .slice(0, count)
    .map(({ kind }) => kind);
}

/** Level of a case of a set; mixed ones get their own. */
const levelOf = (seed: string, id: string, level: SessionLevel): CaseLevel =>
  level === 'all' ? (drawnOne(seededChance(`${seed}/level/${id}`), CASE_LEVELS) ?? 1) : level;

/**
 * The ten questions of a session: what is due first, then cases and sums of other kinds. Without due
 * items the same seed and level give the same ten to everybody.
 *
 * @param due  keys of the record that come back today, the longest overdue first
 */
export function sessionItems(
  stock: Stock,
  seed: string,
  level: SessionLevel,
  due: readonly string[] = [],
): readonly SessionItem[] {
  const setSeed = `session/${level}/${seed}`;
  const cases = drawnKinds(setSeed, stock.cases, SESSION_CASES).map(({ id }): SessionItem => ({
    type: 'case',
    id,
    level: levelOf(setSeed, id, level),
    seed,
  }));
  const sums = drawnKinds(setSeed, stock.sums, SESSION_LENGTH - SESSION_CASES).map(
    ({ id }): SessionItem => ({ type: 'sum', id, seed }),
  );
  const back = due
    .flatMap((key) => itemOfKey(key, stock, `${seed} again`) ?? [])
    .slice(0, MOST_DUE);
  const keys = new Set(back.map(keyOf));
  // Cases and sums mixed, again by numbers of their own.
  const fresh = drawnKinds(`${setSeed}/order`, [...cases, ...sums], SESSION_LENGTH);
  return [...back, ...fresh.filter((item) => !keys.has(keyOf(item)))].slice(0, SESSION_LENGTH);
}

/** Questions of a trainer's sheet: the chosen kinds in turn until there are enough. */
export function sheetItems(
  stock: Stock,
  ids: readonly string[],
  level: SessionLevel,
  count: number,
  seed: string,
): readonly SessionItem[] {
  const setSeed = `sheet/${level}/${seed}`;
  const kinds = [...stock.cases, ...stock.sums].filter(({ id }) => ids.includes(id));
  const order = drawnKinds(setSeed, kinds, count);
  return Array.from({ length: kinds.length === 0 ? 0 : count }, (_, place): SessionItem => {
    const id = order[place % order.length]?.id ?? '';
    // A kind that is asked again gets other numbers.
    const round = Math.floor(place / order.length);
    const own = round === 0 ? seed : `${seed} ${round + 1}`;
    if (stock.sums.some((sum) => sum.id === id)) return { type: 'sum', id, seed: own };
    return { type: 'case', id, level: levelOf(`${setSeed}/${round}`, id, level), seed: own };
  });
}
