import { CASE_LEVELS, type CaseKind, type CaseLevel } from './case-kind.ts';
import { drawnOne, seededChance, shuffled } from './chance.ts';
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

/** So many of a list in an order by chance, each once while there are enough. */
function drawnOf<Item>(
  chance: () => number,
  items: readonly Item[],
  count: number,
): readonly Item[] {
  const drawn: Item[] = [];
  while (items.length > 0 && drawn.length < count) {
    drawn.push(...shuffled(chance, items).slice(0, count - drawn.length));
  }
  return drawn;
}

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
  const chance = seededChance(`session/${level}/${seed}`);
  const cases = drawnOf(chance, stock.cases, SESSION_CASES).map(({ id }, place): SessionItem => {
    const drawnLevel = level === 'all' ? (drawnOne(chance, CASE_LEVELS) ?? 1) : level;
    return { type: 'case', id, level: drawnLevel, seed: `${seed} ${place + 1}` };
  });
  const sums = drawnOf(chance, stock.sums, SESSION_LENGTH - SESSION_CASES).map(
    ({ id }, place): SessionItem => ({ type: 'sum', id, seed: `${seed} ${place + 1}` }),
  );
  const back = due
    .flatMap((key) => itemOfKey(key, stock, `${seed} again`) ?? [])
    .slice(0, MOST_DUE);
  const keys = new Set(back.map(keyOf));
  const fresh = shuffled(chance, [...cases, ...sums]).filter((item) => !keys.has(keyOf(item)));
  return [...back, ...fresh].slice(0, SESSION_LENGTH);
}

/** Questions of a trainer's sheet: the chosen kinds in turn until there are enough. */
export function sheetItems(
  stock: Stock,
  ids: readonly string[],
  level: SessionLevel,
  count: number,
  seed: string,
): readonly SessionItem[] {
  const chance = seededChance(`sheet/${level}/${seed}`);
  const chosen = ids.filter((id) => [...stock.cases, ...stock.sums].some((kind) => kind.id === id));
  return drawnOf(chance, chosen, count).map((id, place): SessionItem => {
    const own = `${seed} ${place + 1}`;
    if (stock.sums.some((sum) => sum.id === id)) return { type: 'sum', id, seed: own };
    const drawnLevel = level === 'all' ? (drawnOne(chance, CASE_LEVELS) ?? 1) : level;
    return { type: 'case', id, level: drawnLevel, seed: own };
  });
}
