import { canStayDark, neededCameraFps, type FinderBench } from '../../../core/gate/match-finder.ts';
import type { FailedMatch, Match } from '../../../core/gate/match-ranking.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { DARK_ROWS } from '../dark-rows-words.ts';

function percent(value: number): string {
  return formatQuantity(value, 'percent', 2);
}

/** Why a usable setting stands where it stands. */
export function rankWords(match: Match, bench: FinderBench): string {
  const needed = neededCameraFps(match.filmFps, match.exposureSeconds, bench);
  const ripple =
    bench.speedErrorPercent > 0
      ? `ripple ${percent(match.ripplePercent)}, at most ${percent(match.worstRipplePercent)} with the speed ${percent(bench.speedErrorPercent)} off`
      : `ripple ${percent(match.ripplePercent)}`;
  const gap =
    match.gapPercent < 1e-6
      ? 'native rate'
      : `${percent(match.gapPercent)} ${match.filmFps > bench.nativeFps ? 'faster' : 'slower'} than native`;
  return `${ripple}; ${gap}; whole frames need ${formatNumber(needed, 3)} camera frames/s`;
}

/** Why a setting fails. */
export function faultWords(miss: FailedMatch, bench: FinderBench): string {
  switch (miss.fault) {
    case 'exposure-too-long':
      return `the exposure is ${formatNumber(miss.excess, 3)} times as long as a camera frame`;
    case 'readout-too-long':
      return `the readout is ${formatNumber(miss.excess, 3)} times as long as a camera frame`;
    case 'ripple': {
      const ripple =
        bench.speedErrorPercent > 0
          ? `ripple up to ${percent(miss.worstRipplePercent)} with the speed ${percent(bench.speedErrorPercent)} off, ${percent(miss.ripplePercent)} without; the limit is ${percent(bench.rippleLimitPercent)}`
          : `ripple ${percent(miss.ripplePercent)}; the limit is ${percent(bench.rippleLimitPercent)}`;
      const isDark = canStayDark(miss.filmFps, miss.exposureSeconds, bench);
      return isDark ? `${ripple}; ${DARK_ROWS}` : ripple;
    }
    case 'blended': {
      if (canStayDark(miss.filmFps, miss.exposureSeconds, bench)) return DARK_ROWS;
      const needed = neededCameraFps(miss.filmFps, miss.exposureSeconds, bench);
      return Number.isFinite(needed)
        ? `whole frames need ${formatNumber(needed, 3)} camera frames/s`
        : 'no camera rate gives whole frames: exposure and readout together outlast the film frame';
    }
  }
}
