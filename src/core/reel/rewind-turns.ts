import { outerDiameterMillimetres } from './reel-length.ts';

/**
 * Turns of the reel that wind a length of film.
 *
 * Model: (D − d) ÷ 2t with D of the roll formula: each turn lies one thickness outside the last. Exact
 * for an even spiral.
 *
 * @param lengthMillimetres        length, mm; 0 to 1e7
 * @param coreDiameterMillimetres  diameter of the hub, mm; > 0, at most 2000
 * @param thicknessMillimetres     wound thickness of a turn, mm; 0.02–1
 * @returns turns; ≥ 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example windingTurns(15240, 32, 0.152) // ≈ 102.089
 */
export function windingTurns(
  lengthMillimetres: number,
  coreDiameterMillimetres: number,
  thicknessMillimetres: number,
): number {
  const outer = outerDiameterMillimetres(
    lengthMillimetres,
    coreDiameterMillimetres,
    thicknessMillimetres,
  );
  return (outer - coreDiameterMillimetres) / (2 * thicknessMillimetres);
}
