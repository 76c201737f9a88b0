// The path of a trainee: what was read, tried, missed and shown. Plain functions from record to record.

/** Days after which a missed item comes back, one after the other. */
export const RETURN_DAYS: readonly number[] = [1, 3, 7];
/** Right ones in a row, on two days at least, that make a kind mastered. */
export const MASTERED_ROW = 3;

/** Tries at one item; a case of each level is an item of its own. Only first answers count. */
export interface ItemRecord {
  readonly right: number;
  readonly tried: number;
  /** Right ones in a row, up to now. */
  readonly row: number;
  /** Day on which that row began, `YYYY-MM-DD`. */
  readonly since: string;
  /** Day of the last try. */
  readonly last: string;
  /** Day from which it comes back, after it was missed. */
  readonly due?: string;
  /** How many of the returns are behind it. */
  readonly returns?: number;
}

/** A hand task that another person has seen and ticked. */
export interface HandRecord {
  readonly by: string;
  readonly day: string;
}

export interface SessionRecord {
  readonly day: string;
  readonly seed: string;
  readonly right: number;
  readonly of: number;
}

export interface PathRecord {
  readonly name: string;
  /** Day on which each chapter was ticked as read, by id. */
  readonly chapters: ReadonlyMap<string, string>;
  readonly items: ReadonlyMap<string, ItemRecord>;
  readonly hand: ReadonlyMap<string, HandRecord>;
  /** Oldest first. */
  readonly sessions: readonly SessionRecord[];
}

export const EMPTY_PATH: PathRecord = {
  name: '',
  chapters: new Map(),
  items: new Map(),
  hand: new Map(),
  sessions: [],
};

const VERSION = 1;
const MOST_ENTRIES = 400;
const MOST_SESSIONS = 200;
const LONGEST_TEXT = 80;
const DAY = /^\d{4}-\d{2}-\d{2}$/u;
const MILLISECONDS_PER_DAY = 86_400_000;

/** The day so many days later. */
export function dayAfter(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * MILLISECONDS_PER_DAY)
    .toISOString()
    .slice(0, 10);
}

/** Key of an item: a case has its level behind it, a sum has none. */
export const itemKey = (id: string, level?: number): string =>
  level === undefined ? id : `${id}:${level}`;

/**
 * Counts the first answer to an item. A missed one comes back after one day; answered right when it is
 * due, after three days, then after seven, and then it is done with. Missed again, it begins anew.
 */
export function withAnswer(
  path: PathRecord,
  key: string,
  isRight: boolean,
  day: string,
): PathRecord {
  const before = path.items.get(key);
  const tried = (before?.tried ?? 0) + 1;
  const right = (before?.right ?? 0) + (isRight ? 1 : 0);
  const row = isRight ? (before?.row ?? 0) + 1 : 0;
  const since = row > 1 ? (before?.since ?? day) : day;
  const counted = { right, tried, row, since, last: day };
  const [firstReturn = 1] = RETURN_DAYS;
  const next = ((): ItemRecord => {
    if (!isRight) return { ...counted, due: dayAfter(day, firstReturn), returns: 0 };
    const { due, returns = 0 } = before ?? {};
    if (due === undefined) return counted;
    // Practised before its day: it comes back all the same.
    if (day < due) return { ...counted, due, returns };
    const days = RETURN_DAYS[returns + 1];
    return days === undefined
      ? counted
      : { ...counted, due: dayAfter(day, days), returns: returns + 1 };
  })();
  return { ...path, items: new Map([...path.items, [key, next]]) };
}

/** Keys of what comes back on this day, the longest overdue first. */
export function dueItems({ items }: PathRecord, day: string): readonly string[] {
  return [...items]
    .flatMap(([key, { due }]) => (due !== undefined && due <= day ? [{ key, due }] : []))
    .sort((a, b) => a.due.localeCompare(b.due) || a.key.localeCompare(b.key))
    .map(({ key }) => key);
}

/** Three right in a row, on two days at least, and nothing to come back. */
export function isMastered({ row, since, last, due }: ItemRecord): boolean {
  return row >= MASTERED_ROW && since < last && due === undefined;
}

export function withSession(path: PathRecord, session: SessionRecord): PathRecord {
  return { ...path, sessions: [...path.sessions, session].slice(-MOST_SESSIONS) };
}

export function withChapter(path: PathRecord, id: string, day: string | undefined): PathRecord {
  const chapters = new Map(path.chapters);
  if (day === undefined) chapters.delete(id);
  else chapters.set(id, day);
  return { ...path, chapters };
}

/** Ticks a hand task by another person's name, or takes the tick away. */
export function withHand(path: PathRecord, id: string, record: HandRecord | undefined): PathRecord {
  const hand = new Map(path.hand);
  if (record === undefined) hand.delete(id);
  else hand.set(id, { ...record, by: record.by.trim().slice(0, LONGEST_TEXT) });
  return { ...path, hand };
}

export const withName = (path: PathRecord, name: string): PathRecord => ({
  ...path,
  name: name.slice(0, LONGEST_TEXT),
});

/** The text that is stored and written to a file. */
export function pathText({ name, chapters, items, hand, sessions }: PathRecord): string {
  return JSON.stringify({
    kind: 'practice-record',
    version: VERSION,
    name,
    chapters: Object.fromEntries(chapters),
    items: Object.fromEntries(items),
    hand: Object.fromEntries(hand),
    sessions,
  });
}

type Unknown = Readonly<Record<string, unknown>>;

const isRecord = (value: unknown): value is Unknown =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isDay = (value: unknown): value is string =>
  typeof value === 'string' && DAY.test(value) && !Number.isNaN(Date.parse(value));
const isCount = (value: unknown): value is number =>
  typeof value === 'number' && Number.isInteger(value) && value >= 0 && value <= 1e6;
const isText = (value: unknown): value is string =>
  typeof value === 'string' && value.length <= LONGEST_TEXT;

function readItem(value: unknown): ItemRecord | undefined {
  if (!isRecord(value)) return undefined;
  const { right, tried, row, since, last, due, returns } = value;
  if (!isCount(right) || !isCount(tried) || !isCount(row)) return undefined;
  if (right > tried || row > right || !isDay(since) || !isDay(last)) return undefined;
  const plain = { right, tried, row, since, last };
  if (due === undefined) return plain;
  if (!isDay(due) || !isCount(returns) || returns >= RETURN_DAYS.length) return undefined;
  return { ...plain, due, returns };
}

function readHand(value: unknown): HandRecord | undefined {
  if (!isRecord(value)) return undefined;
  const { by, day } = value;
  return isText(by) && by !== '' && isDay(day) ? { by, day } : undefined;
}

function readSession(value: unknown): SessionRecord | undefined {
  if (!isRecord(value)) return undefined;
  const { day, seed, right, of } = value;
  if (!isDay(day) || !isText(seed) || !isCount(right) || !isCount(of)) return undefined;
  return right <= of && of > 0 ? { day, seed, right, of } : undefined;
}

function readMap<Value>(
  value: unknown,
  read: (item: unknown) => Value | undefined,
): ReadonlyMap<string, Value> {
  if (!isRecord(value)) return new Map();
  return new Map(
    Object.entries(value)
      .slice(0, MOST_ENTRIES)
      .flatMap(([key, item]) => {
        const found = read(item);
        return found === undefined ? [] : [[key, found] as const];
      }),
  );
}

/**
 * Contract of the record, version 1, in localStorage under `practice-path` and in the file that a
 * trainee saves: `{"kind":"practice-record","version":1,"name":"…","chapters":{"reel/gauges":
 * "2026-11-27"},"items":{"may-it-run:1":{"right":3,"tried":4,"row":1,"since":"…","last":"…","due":"…",
 * "returns":0}},"hand":{"stop-in-time":{"by":"…","day":"…"}},"sessions":[…]}`. Entries that are not as
 * described are passed over alone. A text of a later version, or of something else, reads as undefined.
 */
export function readPath(text: string | null): PathRecord | undefined {
  if (text === null) return EMPTY_PATH;
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (!isRecord(value) || value['kind'] !== 'practice-record' || value['version'] !== VERSION) {
    return undefined;
  }
  const { name, chapters, items, hand, sessions } = value;
  return {
    name: isText(name) ? name : '',
    chapters: readMap(chapters, (day) => (isDay(day) ? day : undefined)),
    items: readMap(items, readItem),
    hand: readMap(hand, readHand),
    sessions: (Array.isArray(sessions) ? sessions : [])
      .flatMap((item: unknown) => readSession(item) ?? [])
      .slice(-MOST_SESSIONS),
  };
}
