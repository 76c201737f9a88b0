import type { BestPath } from './best-path.ts';

/**
 * Why a piece of the recording does not tell the film position: nothing in its pictures changes from
 * film frame to film frame, another blade explains it nearly as well, or two halves of the picture say
 * different things.
 */
export type UntoldReason = 'nothing-to-see' | 'two-answers' | 'witnesses-differ';

/** What the witnesses say of each piece. */
export interface ToldPieces {
  /** Reason for each piece; undefined where the position is told. */
  readonly reasons: readonly (UntoldReason | undefined)[];
  /** How far the witnesses lie apart at each knot, film frames; up to ½. */
  readonly knotDisagreements: Float64Array;
}

/** Least evidence of a piece, nats a camera frame. */
const LEAST_NATS = 0.5;
/** Least by which a piece must beat a picture that never changes, nats a camera frame. */
const LEAST_CHANGE = 3;
/** Least by which the path must beat the same path behind another blade, nats a camera frame. */
const LEAST_LEAD = 1;
/** Farthest that two witnesses may lie apart, film frames. */
const LARGEST_DISAGREEMENT = 0.1;

/** A long stretch without change reaches into the pieces beside it. */
const LONG_STRETCH = 4;

function withEdges(
  reasons: readonly (UntoldReason | undefined)[],
): readonly (UntoldReason | undefined)[] {
  const isUntold = (piece: number): boolean => reasons[piece] !== undefined;
  const isLong = (from: number, step: number): boolean =>
    Array.from({ length: LONG_STRETCH }, (_, at) => from + at * step).every(isUntold);
  return reasons.map((reason, piece) =>
    reason === undefined && (isLong(piece + 1, 1) || isLong(piece - 1, -1))
      ? 'nothing-to-see'
      : reason,
  );
}

/**
 * Judges each piece of a recording by its evidence and by two witnesses, the even and the odd bands.
 *
 * Model: a piece is told when its evidence reaches ½ nat a camera frame, film that changes explains it
 * better than a picture that only flickers by 3 nats, and the witnesses agree at both
 * its ends to a tenth of a film frame, without one having gained a film frame on the other in between,
 * and no other blade explains it nearly as well.
 *
 * @param path       path that all bands tell
 * @param witnesses  paths of two halves of the bands
 * @param leads      lead of the path on its strongest rival, nats a camera frame
 * @param phases     phase steps of a film frame
 * @returns reasons and disagreements
 */
export function toldPieces(
  path: BestPath,
  witnesses: readonly BestPath[],
  leads: Float64Array,
  phases: number,
): ToldPieces {
  const pieces = path.pieceNats.length;
  const knotDisagreements = new Float64Array(pieces + 1);
  /** Whole film frames by which each witness is ahead of the path at a knot. */
  const aheadAt = (witness: BestPath, knot: number): number =>
    ((witness.knotSteps[knot] ?? 0) - (path.knotSteps[knot] ?? 0)) / phases;
  for (let knot = 0; knot <= pieces; knot += 1) {
    const aheads = witnesses.map((witness) => aheadAt(witness, knot));
    const rests = aheads.map((ahead) => ahead - Math.round(ahead));
    const apart = Math.abs((rests[0] ?? 0) - (rests[1] ?? 0));
    knotDisagreements[knot] = Math.max(
      Math.min(apart, 1 - apart),
      ...rests.map((rest) => Math.abs(rest)),
    );
  }
  const reasons = Array.from({ length: pieces }, (_, piece): UntoldReason | undefined => {
    if ((path.pieceNats[piece] ?? 0) < LEAST_NATS) return 'nothing-to-see';
    if ((path.changeNats[piece] ?? 0) < LEAST_CHANGE) return 'nothing-to-see';
    if ((leads[piece] ?? 0) < LEAST_LEAD) return 'two-answers';
    const isApart = [piece, piece + 1].some(
      (knot) => (knotDisagreements[knot] ?? 0) > LARGEST_DISAGREEMENT,
    );
    const gains = witnesses.some(
      (witness) => Math.round(aheadAt(witness, piece)) !== Math.round(aheadAt(witness, piece + 1)),
    );
    return isApart || gains ? 'witnesses-differ' : undefined;
  });
  return { reasons: withEdges(reasons), knotDisagreements };
}
