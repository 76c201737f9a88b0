import { requireInterval } from '../../quantity/errors.ts';
import { darkGaps, type GateLight } from './gate-light.ts';

/** Starts of exposures, s from the middle of the pulldown blade. */
export interface StartRange {
  readonly fromSeconds: number;
  readonly toSeconds: number;
}

const EXPOSURE = { above: 0, maximum: 60, unit: 's' };

/** Light of a neighbour below this share is rounding. */
const ROUNDING = 1e-9;

/**
 * Starts at which an exposure sees only the dark, in one cycle; a touch of rounding counts as dark.
 *
 * @param light            gate light
 * @param exposureSeconds  exposure time, s; > 0, at most 60
 * @returns ranges of starts; none where the exposure is longer than every dark gap
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 */
export function darkStarts(light: GateLight, exposureSeconds: number): readonly StartRange[] {
  requireInterval('exposureSeconds', exposureSeconds, EXPOSURE);
  const slack = ROUNDING * light.periodSeconds;
  return darkGaps(light)
    .map(({ startSeconds, endSeconds }) => ({
      fromSeconds: startSeconds - slack,
      toSeconds: endSeconds - exposureSeconds + slack,
    }))
    .filter(({ fromSeconds, toSeconds }) => toSeconds > fromSeconds);
}

/**
 * Starts of the first row at which a camera frame is whole: every row sees light, and of film frame 0
 * only.
 *
 * Model: a film frame offers starts over P + c − T − R, from where the pulldown blade has closed on the
 * frame before; those at which a row would see only the dark, behind any blade, are taken off. Exact.
 *
 * @param light            gate light
 * @param exposureSeconds  exposure time T, s; > 0, at most 60
 * @param readoutSeconds   readout time R, s; 0–60
 * @returns ranges in order, s from the middle of the pulldown blade before the film frame; none where
 *          no camera frame can be whole
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 */
export function wholeStarts(
  light: GateLight,
  exposureSeconds: number,
  readoutSeconds: number,
): readonly StartRange[] {
  requireInterval('exposureSeconds', exposureSeconds, EXPOSURE);
  requireInterval('readoutSeconds', readoutSeconds, { minimum: 0, maximum: 60, unit: 's' });
  const period = light.periodSeconds;
  const pulldown = darkGaps(light).find(({ startSeconds }) => startSeconds < 0);
  const from = pulldown?.startSeconds ?? 0;
  const to = period + (pulldown?.endSeconds ?? 0) - exposureSeconds - readoutSeconds;
  if (to <= from) return [];
  const blocked = darkStarts(light, exposureSeconds)
    .flatMap((starts) =>
      [-1, 0, 1].map((cycle) => ({
        from: Math.max(from, starts.fromSeconds - readoutSeconds + cycle * period),
        to: Math.min(to, starts.toSeconds + cycle * period),
      })),
    )
    .filter((starts) => starts.to > starts.from)
    .sort((a, b) => a.from - b.from);
  const ranges: StartRange[] = [];
  let reached = from;
  for (const gap of [...blocked, { from: to, to }]) {
    if (gap.from > reached) ranges.push({ fromSeconds: reached, toSeconds: gap.from });
    reached = Math.max(reached, gap.to);
  }
  return ranges;
}
