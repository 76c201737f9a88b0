// The settings that work and those that fail, each with its reason.
import { formatExposure, formatNumber, formatQuantity } from '../../../quantity/format.ts';
import type { ResultTable, VerdictLevel } from '../../machine/types.ts';
import { DARK_ROWS } from '../dark-rows-words.ts';
import { rateWords } from '../rate-words.ts';
import type { BestSetting, Findings, NearMiss } from './findings.ts';
import type { FinderEntries } from './inputs.ts';

const percent = (value: number): string => formatQuantity(value, 'percent', 2);

const neededWords = (cameraFps: number): string =>
  `whole frames need ${formatNumber(cameraFps, 3)} camera frames/s`;

/** Why a usable setting stands where it stands. */
function rankWords(match: BestSetting, { speedErrorPercent, nativeFps }: FinderEntries): string {
  const worst =
    speedErrorPercent > 0
      ? `, at most ${percent(match.worstRipplePercent)} with the speed ${percent(speedErrorPercent)} off`
      : '';
  const gap =
    match.gapPercent < 1e-6
      ? 'native rate'
      : `${percent(match.gapPercent)} ${match.filmFps > nativeFps ? 'faster' : 'slower'} than native`;
  return `ripple ${percent(match.ripplePercent)}${worst}; ${gap}; ${neededWords(match.neededCameraFps)}`;
}

/** Why a setting fails. */
function faultWords(miss: NearMiss, entries: FinderEntries): string {
  const { speedErrorPercent, rippleLimitPercent } = entries;
  switch (miss.fault) {
    case 'exposure-too-long':
    case 'readout-too-long': {
      const what = miss.fault === 'exposure-too-long' ? 'exposure' : 'readout';
      const times = formatNumber(miss.excess, 3);
      return times === '1'
        ? `the ${what} is a little longer than a camera frame`
        : `the ${what} is ${times} times as long as a camera frame`;
    }
    case 'ripple': {
      const ripple =
        speedErrorPercent > 0
          ? `up to ${percent(miss.worstRipplePercent)} with the speed ${percent(speedErrorPercent)} off, ${percent(miss.ripplePercent)} without`
          : percent(miss.ripplePercent);
      const dark = miss.canStayDark ? `; ${DARK_ROWS}` : '';
      return `ripple ${ripple}; the limit is ${percent(rippleLimitPercent)}${dark}`;
    }
    case 'blended':
      if (miss.canStayDark) return DARK_ROWS;
      return Number.isFinite(miss.excess)
        ? neededWords(miss.excess * miss.cameraFps)
        : 'no camera rate gives whole frames: exposure and readout together outlast the film frame';
  }
}

function tableOf<Setting extends BestSetting | NearMiss>(
  caption: string,
  settings: readonly Setting[],
  reasonColumn: string,
  reason: (setting: Setting) => string,
  level: VerdictLevel,
): readonly ResultTable[] {
  if (settings.length === 0) return [];
  return [
    {
      caption,
      columns: ['Film rate', 'Camera rate', 'Exposure', reasonColumn],
      rows: settings.map((setting) => ({
        cells: [
          rateWords(setting.filmFps),
          rateWords(setting.cameraFps),
          formatExposure(setting.exposureSeconds),
          reason(setting),
        ],
        level,
      })),
    },
  ];
}

/** What works and what fails; a table without rows is left out. */
export function settingTables(
  { best, usable, nearMisses }: Findings,
  entries: FinderEntries,
): readonly ResultTable[] {
  const caption =
    usable > best.length
      ? `The best ${best.length} of ${formatNumber(usable)} settings that work`
      : 'Settings that work, the best first';
  return [
    ...tableOf(caption, best, 'Why here', (match) => rankWords(match, entries), 'good'),
    ...tableOf(
      'Typical settings that fail',
      nearMisses,
      'Why not',
      (miss) => faultWords(miss, entries),
      'stop',
    ),
  ];
}
