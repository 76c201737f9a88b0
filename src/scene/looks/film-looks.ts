import { travelGhost } from '../../core/gate/travel-ghost.ts';
import type { FilmFaults } from '../gate/film-faults.ts';
import type { Look } from './look.ts';

/** Smear of a shutter whose blade is too small, or too late or early, from the core. */
function smear(bladeDegrees: number, lagDegrees: number): Partial<FilmFaults> {
  const ghost = travelGhost(60, bladeDegrees, lagDegrees, 0.5, 'even');
  return {
    smearUp: ghost.smearUpShare,
    smearDown: ghost.smearDownShare,
    smearShare: ghost.movingLightShare,
  };
}

/** Gains of light that make the whites of half-faded film white again; its shadows stay off. */
const HALF_FADED_BALANCE = [0.877, 1.104, 1.012] as const;

/** Faults that lie on the film. */
export const FILM_LOOKS = {
  dust: { name: 'Dust', film: { dust: 2.2 } },
  scratches: { name: 'Scratches', film: { scratch: 1 } },
  mould: { name: 'Mould', film: { mould: 1 } },
  'drying-marks': { name: 'Drying marks', film: { stain: 1 } },
  fog: { name: 'Light has got in at the side', film: { fog: 1 }, filmFrame: 41 },
  faded: { name: 'Faded dye', film: { fade: 1 } },
  'half-faded': { name: 'Dye half faded', film: { fade: 0.5 } },
  rebalanced: {
    name: 'Dye half faded, colours balanced afterwards',
    film: { fade: 0.5 },
    tone: { balance: HALF_FADED_BALANCE },
  },
  coarse: { name: 'Coarse grain', film: { grain: 2 } },
  splice: { name: 'Splice jumps', film: { spliceJump: 2.4 }, filmFrame: 66, wants: 'strips' },
  'torn-holes': { name: 'Torn holes', film: { torn: 1 }, filmFrame: 50 },
  warped: { name: 'Warped by acid', film: { warp: 1.2, weave: 0.8 }, filmFrame: 59 },
} as const satisfies Record<string, Look>;

/** Faults of the way the film runs and is framed. */
export const RUNNING_LOOKS = {
  weave: { name: 'Unsteady', film: { weave: 3 }, filmFrame: 40, wants: 'strips' },
  'lost-loop': { name: 'Lost loop', film: { slip: 1 }, filmFrame: 63 },
  misframed: { name: 'Framed too high', film: { misframe: 0.16 } },
  aside: { name: 'Holes in the picture', film: { aside: 1 } },
  'smear-up': {
    name: 'Smear upwards',
    film: smear(60, 30),
    filmFrame: 90,
    wants: 'loupe',
    loupeAt: { x: 0.66, y: 0.72 },
  },
  'smear-down': {
    name: 'Smear downwards',
    film: smear(60, -30),
    filmFrame: 90,
    wants: 'loupe',
    loupeAt: { x: 0.66, y: 0.72 },
  },
  'smear-both': {
    name: 'Smear both ways',
    film: smear(12, 0),
    filmFrame: 90,
    wants: 'loupe',
    loupeAt: { x: 0.66, y: 0.72 },
  },
  mirrored: { name: 'Left and right changed', film: { mirrored: 1 } },
  'tail-first': { name: 'Tail first', film: { tailFirst: 1 } },
} as const satisfies Record<string, Look>;

/** Faults of gate, lamp and lens. */
export const LENS_LOOKS = {
  hair: { name: 'Hair in the gate', film: { hair: 1.3 } },
  vignette: { name: 'Dark corners', film: { vignette: 0.8 } },
  'hot-spot': { name: 'Hot spot', film: { hotSpot: 1 } },
  soft: { name: 'Soft all over', film: { soft: 0.4 } },
  'soft-side': { name: 'Soft at one side', film: { softSide: 1 } },
  'grain-lost': {
    name: 'Grain not sharp',
    film: { soft: 0.16 },
    wants: 'loupe',
    loupeAt: { x: 0.6, y: 0.4 },
  },
} as const satisfies Record<string, Look>;
