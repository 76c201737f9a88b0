import { damageOnFilm, holeBeside } from './damage-on-film.ts';
import { focus } from './focus.ts';
import { travelSmear } from './travel-smear.ts';
import type { RareFaults } from './film-in-gate.ts';

/** Everything that a good film in a good gate does without; loaded when a fault first asks for it. */
export const rareFaults: RareFaults = { damageOnFilm, holeBeside, focus, travelSmear };
