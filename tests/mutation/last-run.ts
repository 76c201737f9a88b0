import { fileURLToPath } from 'node:url';

/** What became of one change to the source. */
export type Outcome = 'killed' | 'survived' | 'unreached' | 'refused' | 'equivalent';

/**
 * How many changes ended how. `unreached`: stands for an index out of range, as the compiler asks, and no
 * test ever met one; `refused`: survived the tests, but does not compile.
 */
export type Counts = Readonly<Record<Outcome, number>>;

/** What a room of the house came to. */
export interface RoomRun {
  readonly date: string;
  readonly commit: string;
  /** Of the sample; left out where all changes were tried. */
  readonly seed?: number | undefined;
  /** Changes there are; `counts` are of those drawn from them. */
  readonly changes: number;
  readonly counts: Counts;
  /** The same by parts of the room. */
  readonly parts: Readonly<Record<string, Counts>>;
  readonly survivors: readonly Survivor[];
}

/** The outcome of the last mutation run of each room, as it is kept. */
export type LastRun = Readonly<Record<string, RoomRun>>;

/** A change that no test noticed. */
export interface Survivor {
  readonly place: string;
  readonly operator: string;
  readonly at: string;
  readonly from: string;
  readonly to: string;
}

/** Where the outcome is kept. */
export const LAST_RUN = fileURLToPath(new URL('last-run.json', import.meta.url));

export const NOTHING: Counts = {
  killed: 0,
  survived: 0,
  unreached: 0,
  refused: 0,
  equivalent: 0,
};

/** `core/gate` for a file of that room. */
export function partOf(file: string): string {
  return file.split('/').slice(1, 3).join('/').replace(/\.ts$/u, '');
}

/** 97.5 % of a normal distribution lie below this many standard deviations. */
const DEVIATIONS = 1.959964;

/**
 * Wilson's interval: where the true share lies, with 95 % confidence, when a sample drawn at random has
 * `hits` of `size`.
 */
export function wilson(hits: number, size: number): readonly [number, number] {
  if (size === 0) return [0, 1];
  const share = hits / size;
  const squared = DEVIATIONS ** 2 / size;
  const centre = (share + squared / 2) / (1 + squared);
  const half = (DEVIATIONS / (1 + squared)) * Math.sqrt((share * (1 - share) + squared / 4) / size);
  return [centre - half, centre + half];
}

/** The share of the changes that change something and compile which the tests noticed. */
export function noticed({ killed, survived }: Counts): string {
  const size = killed + survived;
  if (size === 0) return '–';
  const percent = (share: number): string => (100 * share).toFixed(1);
  const [low, high] = wilson(killed, size);
  return `${percent(killed / size)} % (${percent(low)} to ${percent(high)})`;
}

/** The table of the runs. */
export function readable(rooms: LastRun): string {
  const columns = ['killed', 'survived', 'unreached', 'refused', 'equivalent'] as const;
  const line = (first: string, counts: Counts): string =>
    [
      first.padEnd(26),
      ...columns.map((column) => String(counts[column]).padStart(11)),
      '  ',
      noticed(counts),
    ].join('');
  const drawn = (counts: Counts): number =>
    columns.reduce((sum, column) => sum + counts[column], 0);
  const headings = columns.map((column) => column.padStart(11)).join('');
  return [
    'small changes to the source, and whether the tests notice',
    `${'room'.padEnd(26)}${headings}  noticed (95 %)`,
    ...Object.entries(rooms).flatMap(([room, { changes, counts, parts, date, commit, seed }]) => [
      ...Object.entries(parts).map(([part, of]) => line(`  ${part}`, of)),
      line(room, counts),
      [
        `  ${drawn(counts)} of ${changes}, ${date}, commit ${commit}`,
        ...(seed === undefined ? [] : [`, seed ${seed}`]),
        '; unreached counted as survived: ',
        noticed({ ...counts, survived: counts.survived + counts.unreached }),
      ].join(''),
    ]),
    'unreached: stands for an index out of range, which no test ever met; refused: does not compile;',
    'equivalent: changes nothing (equivalents.yaml).',
  ].join('\n');
}
