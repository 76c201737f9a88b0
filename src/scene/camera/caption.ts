import { filmFrameShares, type PicturePlan } from './row-plan.ts';

/** Shares below this are not named. */
const LEAST_NAMED = 0.005;

/**
 * What a picture holds, in words: “film frame 52 (84 %) + 53 (16 %)”.
 *
 * @param plan  what the picture is made of
 */
export function contentOf(plan: PicturePlan): string {
  const shares = filmFrameShares(plan).filter(({ weight }) => weight >= LEAST_NAMED);
  if (shares.length === 0) return 'no light at all';
  const [only] = shares;
  if (shares.length === 1) return `film frame ${only?.filmFrame ?? 0}, whole`;
  const named = shares
    .toSorted((a, b) => a.filmFrame - b.filmFrame)
    .map(({ filmFrame, weight }) => `${filmFrame} (${Math.round(weight * 100)}\u00a0%)`);
  return `film frame ${named.join(' + ')}`;
}
