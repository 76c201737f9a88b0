import { shelfOf } from '../../worksheets/machine/bench-fields.ts';
import type { StoredField } from '../../worksheets/machine/bench-table.ts';
import { tidyName } from './bench-schema.ts';
import {
  CURRENT,
  current,
  MOST,
  type BenchState,
  type NamedTexts,
  type Region,
  type Shelf,
} from './bench-state.ts';

// What the reader can do to the state, as plain functions from state to state.

/** Benches and reels that a link, a file or an example of the book offers. */
export interface BenchOffer {
  readonly benches: readonly NamedTexts[];
  readonly reels: readonly NamedTexts[];
  readonly region: Region;
}

const FIRST_NAME = { benches: 'My bench', reels: 'Reel on the table' } as const;

/** The name, with a number after it where it is taken. */
export function freeName(name: string, taken: readonly NamedTexts[]): string {
  const isTaken = (candidate: string): boolean => taken.some((item) => item.name === candidate);
  if (!isTaken(name)) return name;
  const stem = name.replace(/ \(\d+\)$/u, '').slice(0, MOST.nameLength - 6);
  let number = 2;
  while (isTaken(`${stem} (${number})`)) number += 1;
  return `${stem} (${number})`;
}

export function hasRoom(state: BenchState, shelf: Shelf, wanted = 1): boolean {
  return state[shelf].length + wanted <= MOST[shelf];
}

function append(state: BenchState, shelf: Shelf, items: readonly NamedTexts[]): BenchState {
  if (items.length === 0 || !hasRoom(state, shelf, items.length)) return state;
  const shelved = [...state[shelf]];
  for (const item of items) shelved.push({ ...item, name: freeName(item.name, shelved) });
  return { ...state, [shelf]: shelved, [CURRENT[shelf]]: state[shelf].length };
}

/** A new, empty bench or reel, in use at once. */
export function addEmpty(state: BenchState, shelf: Shelf): BenchState {
  return append(state, shelf, [{ name: FIRST_NAME[shelf], entries: {} }]);
}

/** A copy of the one in use, in use at once. */
export function copyCurrent(state: BenchState, shelf: Shelf): BenchState {
  const chosen = current(state, shelf);
  return chosen === undefined ? state : append(state, shelf, [chosen]);
}

export function removeCurrent(state: BenchState, shelf: Shelf): BenchState {
  const place = state[CURRENT[shelf]];
  const rest = state[shelf].filter((_, index) => index !== place);
  return {
    ...state,
    [shelf]: rest,
    [CURRENT[shelf]]: Math.max(0, Math.min(place, rest.length - 1)),
  };
}

export function choose(state: BenchState, shelf: Shelf, place: number): BenchState {
  return place in state[shelf] ? { ...state, [CURRENT[shelf]]: place } : state;
}

function changeCurrent(
  state: BenchState,
  shelf: Shelf,
  change: (item: NamedTexts) => NamedTexts,
): BenchState {
  // The first entry of an empty page makes the first bench.
  const filled = state[shelf].length === 0 ? addEmpty(state, shelf) : state;
  const place = filled[CURRENT[shelf]];
  const items = filled[shelf].map((item, index) => (index === place ? change(item) : item));
  return { ...filled, [shelf]: items };
}

export function rename(state: BenchState, shelf: Shelf, name: string): BenchState {
  return changeCurrent(state, shelf, (item) => ({
    ...item,
    name: tidyName(name, FIRST_NAME[shelf]),
  }));
}

/** Puts a text in a field of the bench or reel in use; an empty text empties the field. */
export function setText(state: BenchState, field: StoredField, text: string): BenchState {
  const shelf = shelfOf(field);
  return changeCurrent(state, shelf, (item) => {
    const others = Object.entries(item.entries).filter(([key]) => key !== field);
    const kept = text.slice(0, MOST.textLength);
    const texts = kept === '' ? others : [...others, [field, kept] as const];
    return { ...item, entries: Object.fromEntries(texts) };
  });
}

export function hasRoomFor(state: BenchState, offer: BenchOffer): boolean {
  return (
    hasRoom(state, 'benches', offer.benches.length) && hasRoom(state, 'reels', offer.reels.length)
  );
}

/** Adds what is offered beside what is there; the first of it is in use at once. */
export function takeOffer(state: BenchState, offer: BenchOffer): BenchState {
  if (!hasRoomFor(state, offer)) return state;
  const withBenches = append(state, 'benches', offer.benches);
  const added = append(withBenches, 'reels', offer.reels);
  return offer.region === '' ? added : { ...added, region: offer.region };
}
