// What is kept of a trainee's practice, as plain functions from tally to tally.

/** Tries at one kind of problem. Only the first readable entry for each problem counts. */
export interface KindTally {
  readonly right: number;
  readonly tried: number;
  /** Right ones in a row, up to now. */
  readonly row: number;
}

/** A finished round of mixed problems. */
export interface Round {
  readonly right: number;
  readonly of: number;
}

export interface Tally {
  readonly kinds: ReadonlyMap<string, KindTally>;
  /** The last rounds, oldest first. */
  readonly rounds: readonly Round[];
}

export const EMPTY_TALLY: Tally = { kinds: new Map(), rounds: [] };

/** Problems in a round. */
export const ROUND_LENGTH = 10;

/** Rounds that are kept. */
const MOST_ROUNDS = 20;
const MOST_KINDS = 200;
const VERSION = 1;

const isCount = (value: unknown): value is number =>
  typeof value === 'number' && Number.isInteger(value) && value >= 0 && value <= 1e6;

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function readKind(value: unknown): KindTally | undefined {
  if (!isRecord(value)) return undefined;
  const { right, tried, row } = value;
  const isSound = isCount(right) && isCount(tried) && isCount(row) && right <= tried;
  return isSound && row <= right ? { right, tried, row } : undefined;
}

function readRound(value: unknown): Round | undefined {
  if (!isRecord(value)) return undefined;
  const { right, of } = value;
  return isCount(right) && isCount(of) && of > 0 && right <= of ? { right, of } : undefined;
}

/**
 * Contract of the stored tally, version 1, under the key `practice` in localStorage:
 * `{"version":1,"kinds":{"beat":{"right":2,"tried":3,"row":1}},"rounds":[{"right":8,"of":10}]}`.
 * Anything that is not as described is passed over alone. A tally of a later version reads as
 * undefined: it is left alone, and nothing is kept.
 */
export function readTally(text: string | null): Tally | undefined {
  if (text === null) return EMPTY_TALLY;
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return EMPTY_TALLY;
  }
  if (!isRecord(value)) return EMPTY_TALLY;
  const { version, kinds, rounds } = value;
  if (typeof version === 'number' && version > VERSION) return undefined;
  const read = isRecord(kinds) ? Object.entries(kinds).slice(0, MOST_KINDS) : [];
  return {
    kinds: new Map(
      read.flatMap(([id, item]) => {
        const kind = readKind(item);
        return kind === undefined ? [] : [[id, kind] as const];
      }),
    ),
    rounds: (Array.isArray(rounds) ? rounds : [])
      .flatMap((item: unknown) => readRound(item) ?? [])
      .slice(-MOST_ROUNDS),
  };
}

/** The text that is stored. */
export function tallyText({ kinds, rounds }: Tally): string {
  return JSON.stringify({ version: VERSION, kinds: Object.fromEntries(kinds), rounds });
}

export function kindTally(tally: Tally, id: string): KindTally {
  return tally.kinds.get(id) ?? { right: 0, tried: 0, row: 0 };
}

/** Counts the first entry for a problem. */
export function withTry(tally: Tally, id: string, isRight: boolean): Tally {
  const { right, tried, row } = kindTally(tally, id);
  const next = { right: right + (isRight ? 1 : 0), tried: tried + 1, row: isRight ? row + 1 : 0 };
  return { ...tally, kinds: new Map([...tally.kinds, [id, next]]) };
}

/** Adds a finished round; the oldest goes when there are too many. */
export function withRound(tally: Tally, right: number, of: number): Tally {
  return { ...tally, rounds: [...tally.rounds, { right, of }].slice(-MOST_ROUNDS) };
}

/** `11 right of 14 at the first try, the last 3 in a row`, or nothing before the first try. */
export function kindWords({ right, tried, row }: KindTally): string {
  if (tried === 0) return '';
  const start = `${right} right of ${tried} at the first try`;
  return row > 1 ? `${start}, the last ${row} in a row` : start;
}

/** How the rounds went up to now; nothing before the first. */
export function roundsWords(rounds: readonly Round[]): string {
  if (rounds.length === 0) return '';
  const best = rounds.reduce((a, b) => (b.right / b.of > a.right / a.of ? b : a));
  const list = rounds.slice(-5).map(({ right, of }) => `${right} of ${of}`);
  return `Your last rounds: ${list.join(', ')}. The best: ${best.right} of ${best.of}.`;
}
