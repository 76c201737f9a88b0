import type { MakeSheet } from '../drawing/sheet.ts';
import type { FilmInGate } from './film-faults.ts';
import { makeFilmInGate } from './film-in-gate.ts';
import { rareFaults } from './rare-faults.ts';

/** Film in the gate with every fault at hand. */
export function makeAnyFilmInGate(makeSheet: MakeSheet, width: number): FilmInGate {
  return makeFilmInGate(makeSheet, width, () => rareFaults);
}
