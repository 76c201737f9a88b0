import { regionTexts, shelfOf } from '../../worksheets/machine/bench-fields.ts';
import type { BenchField, StoredField } from '../../worksheets/machine/bench-table.ts';

/** Texts as typed. A field that is absent was left empty. */
export type BenchTexts = Partial<Readonly<Record<StoredField, string>>>;

/** A described bench or reel. */
export interface NamedTexts {
  readonly name: string;
  readonly entries: BenchTexts;
}

export type Region = '' | '25/50' | '30/60';
export type Units = 'metric' | 'imperial';

/** Everything the reader said about their bench. */
export interface BenchState {
  readonly benches: readonly NamedTexts[];
  /** Place of the one in use; 0 while there is none. */
  readonly currentBench: number;
  readonly reels: readonly NamedTexts[];
  readonly currentReel: number;
  readonly region: Region;
  readonly units: Units;
}

/** The two shelves of the state. */
export type Shelf = 'benches' | 'reels';

export const CURRENT = { benches: 'currentBench', reels: 'currentReel' } as const;

/** Whether a field is kept with this shelf. */
export function isOnShelf(field: StoredField, shelf: Shelf): boolean {
  return shelfOf(field) === shelf;
}

/** How many benches and reels are kept, and how long their texts may be. */
export const MOST = { benches: 50, reels: 200, nameLength: 60, textLength: 2000 } as const;

export const EMPTY_BENCH: BenchState = {
  benches: [],
  currentBench: 0,
  reels: [],
  currentReel: 0,
  region: '',
  units: 'metric',
};

/** The bench or reel in use. */
export function current(state: BenchState, shelf: Shelf): NamedTexts | undefined {
  return state[shelf][state[CURRENT[shelf]]];
}

/**
 * Texts of the bench, reel and region in use, by field. A reel of the box that lies on the table takes
 * the place of the reel of the bench: no number of the one may be mixed with one of the other.
 */
export function currentTexts(
  state: BenchState,
  tableEntries?: BenchTexts,
): Partial<Readonly<Record<BenchField, string>>> {
  return {
    ...current(state, 'benches')?.entries,
    ...(tableEntries ?? current(state, 'reels')?.entries),
    ...(state.region === '' ? {} : regionTexts(state.region)),
  };
}
