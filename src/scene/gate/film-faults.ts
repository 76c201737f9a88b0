/**
 * What can be wrong with the film, its way through the gate, the lamp and the lens: one number for each
 * fault, 0 for none and 1 for plain to see unless its line says otherwise.
 */
export interface FilmFaults {
  // On the film.
  readonly dust: number;
  readonly scratch: number;
  readonly mould: number;
  /** Share of the dye that is lost by the dye that lasts worst, 0–1. */
  readonly fade: number;
  /** Light that got in at the side of the film: orange, in bursts. */
  readonly fog: number;
  /** Rings and drops where the film once dried badly. */
  readonly stain: number;
  /** Torn holes: every 24th film frame and the two after it jump. */
  readonly torn: number;
  /** Curl and buckle of film with acid decay: middle and rim out of focus in turn. */
  readonly warp: number;
  /** How strong the grain is; 1 is usual. */
  readonly grain: number;
  // How it runs.
  readonly weave: number;
  /** Jump where a splice passes; 1 is usual. */
  readonly spliceJump: number;
  /** Loop lost: the picture slides through the gate. */
  readonly slip: number;
  /** Framing: share of a frame by which the film lies too high. */
  readonly misframe: number;
  /** Film too far to one side: the holes come into the picture. */
  readonly aside: number;
  /** Light on moving film at the start and at the end of the move: length of the smear, frames. */
  readonly smearUp: number;
  readonly smearDown: number;
  /** Share of the light of the frame that falls on moving film. */
  readonly smearShare: number;
  /** 1 where the film is laced with the wrong side to the lamp. */
  readonly mirrored: number;
  /** 1 where it is laced tail first: heads down, and the motion backwards. */
  readonly tailFirst: number;
  // Gate, lamp and lens: these stay while the film runs.
  readonly hair: number;
  /** Rounded plate with its burr; 0 where a hole larger than the picture is filmed. */
  readonly plate: number;
  readonly vignette: number;
  readonly hotSpot: number;
  readonly soft: number;
  /** Soft at the right-hand side only. */
  readonly softSide: number;
}

/** Gives a film frame in the gate as RGBA, width × height × 4 bytes. */
export type FilmInGate = (filmFrame: number, faults: FilmFaults) => Uint8ClampedArray<ArrayBuffer>;

/** Tells film frames of all films apart. */
export const keyOf = (filmFrame: number, faults: FilmFaults): string =>
  `${filmFrame} ${JSON.stringify(faults)}`;

/** Dust above this comes with fibres, and hair above this hangs far into the gate. */
export const CLEAN = 0.4;

/** A good film in a good gate: a little dust, a little weave, as on any afternoon. */
export const SOUND_FILM: FilmFaults = {
  dust: 0.25,
  scratch: 0,
  mould: 0,
  fade: 0,
  fog: 0,
  stain: 0,
  torn: 0,
  warp: 0,
  grain: 0.7,
  weave: 0.25,
  spliceJump: 1,
  slip: 0,
  misframe: 0,
  aside: 0,
  smearUp: 0,
  smearDown: 0,
  smearShare: 0,
  mirrored: 0,
  tailFirst: 0,
  hair: 0.35,
  plate: 1,
  vignette: 0.18,
  hotSpot: 0,
  soft: 0,
  softSide: 0,
};
