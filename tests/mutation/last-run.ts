import { fileURLToPath } from 'node:url';

/** What became of one change to the source. */
export type Outcome = 'killed' | 'survived' | 'equivalent';

/** The outcome of a mutation run, as it is kept. */
export interface LastRun {
  readonly date: string;
  readonly commit: string;
  /** Changes tried. */
  readonly changes: number;
  /** Changes there are. */
  readonly of: number;
  /** Of the sample; left out where all changes were tried. */
  readonly seed?: number | undefined;
  /** Whether survivors met all tests that reach the file, or those near it. */
  readonly tests: 'all' | 'near';
  readonly rooms: Record<string, Record<Outcome, number>>;
  readonly survivors: readonly {
    readonly place: string;
    readonly at: string;
    readonly from: string;
    readonly to: string;
  }[];
}

/** Where the outcome is kept. */
export const LAST_RUN = fileURLToPath(new URL('last-run.json', import.meta.url));

/** `core/gate` for a file of that room. */
export function roomOf(file: string): string {
  return file.split('/').slice(1, 3).join('/').replace(/\.ts$/u, '');
}

/** The table of a run, and the share that was noticed of the changes that change something. */
export function readable({ rooms, ...run }: LastRun): string {
  const rows = Object.entries(rooms);
  const sum = (outcome: Outcome): number =>
    rows.reduce((total, [, counts]) => total + counts[outcome], 0);
  const share = (killed: number, survived: number): string =>
    killed + survived === 0 ? '–' : `${((100 * killed) / (killed + survived)).toFixed(0)} %`;
  const line = (...cells: readonly (string | number)[]): string =>
    cells
      .map((cell, at) => (at === 0 ? String(cell).padEnd(24) : String(cell).padStart(12)))
      .join('');
  const total = { killed: sum('killed'), survived: sum('survived'), equivalent: sum('equivalent') };
  return [
    `${run.changes} of ${run.of} changes, ${run.date}, commit ${run.commit}` +
      `${run.seed === undefined ? '' : `, seed ${run.seed}`}, ${run.tests} tests`,
    line('room', 'killed', 'survived', 'equivalent', 'noticed'),
    ...[...rows, ['all', total] as const].map(([room, { killed, survived, equivalent }]) =>
      line(room, killed, survived, equivalent, share(killed, survived)),
    ),
  ].join('\n');
}
