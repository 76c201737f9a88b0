// The reel: its size, its length and its splices.

/** The picture in page units. */
export const PAGE = { width: 640, height: 480 } as const;

/** The reel is a loop of 6 s at 18 frames/s; its seam is a splice like the other one. */
export const REEL = { filmFrames: 108, splice: 72 } as const;

/** Film frame of the loop for any film frame of the reel. */
export function inLoop(filmFrame: number): number {
  const { filmFrames } = REEL;
  return ((filmFrame % filmFrames) + filmFrames) % filmFrames;
}

/** Film frames since the last splice. */
export function sinceSplice(filmFrame: number): number {
  const frame = inLoop(filmFrame);
  return frame < REEL.splice ? frame : frame - REEL.splice;
}
