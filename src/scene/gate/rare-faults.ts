import { damageOnFilm, holeBeside } from './damage-on-film.ts';
import { displaced } from './displaced.ts';
import { fadedStock } from './faded-stock.ts';
import { focus } from './focus.ts';
import { longHair } from './long-hair.ts';
import { keptByColumn } from './grain-in-focus.ts';
import { makeSmeared } from './smeared.ts';

/** Everything that a good film in a good gate does without; loaded when a fault first asks for it. */
export const rareFaults = {
  damageOnFilm,
  holeBeside,
  displaced,
  focus,
  keptByColumn,
  fadedStock,
  longHair,
  makeSmeared,
} as const;

export type RareFaults = typeof rareFaults;
