import type { BandsData } from '../../worksheets/machine/picture-data.ts';

/**
 * Keeps the moving bands below the general flash threshold of WCAG 2.2, criterion 2.3.1: at most
 * three pairs of opposing changes in a second count, and a change counts from a tenth of the full
 * relative luminance. Where the bands would flash more often, their contrast is lowered to below
 * that tenth. Regular stripes in more than five pairs are treated in the same way, out of caution.
 */
const MOST_FLASHES_PER_SECOND = 3;
const FLASH_SWING = 0.1;
const SAFE_SWING = 0.09;
const MOST_STRIPE_PAIRS = 5;

/** Brightness given to the mean exposure when nothing needs more head room, share of white. */
const MEAN_LUMINANCE = 0.4;

/** How the picture turns exposure (mean 1) into luminance (share of white). */
export interface Tone {
  readonly meanLuminance: number;
  /** Share of the true contrast that is shown, 0…1. */
  readonly contrast: number;
}

/** Tone of the still picture: full contrast, and as dark as needed to keep the lightest row below white. */
export function stillTone(picture: BandsData): Tone {
  const brightest = Math.max(1, ...picture.exposureByPhase);
  return { meanLuminance: Math.min(MEAN_LUMINANCE, 1 / brightest), contrast: 1 };
}

/** Relative luminance shown for an exposure, 0…1. */
export function shownLuminance(tone: Tone, exposure: number): number {
  return Math.min(1, Math.max(0, tone.meanLuminance * (1 + (exposure - 1) * tone.contrast)));
}

/** Rises in one period of the pattern that reach the threshold and fall back by as much. */
function flashesPerPeriod(levels: readonly number[]): number {
  const darkest = levels.indexOf(Math.min(...levels));
  let flashes = 0;
  let isRising = false;
  let extreme = levels[darkest] ?? 0;
  // From the darkest step once round, so that no swing is cut in two.
  for (const level of [...levels.slice(darkest + 1), ...levels.slice(0, darkest + 1)]) {
    const swing = isRising ? extreme - level : level - extreme;
    if (swing >= FLASH_SWING) {
      isRising = !isRising;
      if (isRising) flashes += 1;
      extreme = level;
    } else if (swing < 0) {
      extreme = level;
    }
  }
  return flashes;
}

/**
 * Most flashes in a second that any row can show at full contrast. Frames left out by a slow screen
 * can only lower the count.
 *
 * @param speed  1 for true speed, 1/4 for slow motion
 */
export function flashesPerSecond(picture: BandsData, speed: number): number {
  const tone = stillTone(picture);
  const levels = picture.exposureByPhase.map((exposure) => shownLuminance(tone, exposure));
  const periodsPerSecond = Math.abs(picture.phaseStepPerFrame) * picture.cameraFps * speed;
  return flashesPerPeriod(levels) * periodsPerSecond;
}

/** Tone of the picture while it moves. */
export function movingTone(picture: BandsData, speed: number): Tone {
  const tone = stillTone(picture);
  const swing =
    (Math.max(...picture.exposureByPhase) - Math.min(...picture.exposureByPhase)) *
    tone.meanLuminance;
  const isCalm =
    flashesPerSecond(picture, speed) <= MOST_FLASHES_PER_SECOND &&
    picture.periodsDownPicture <= MOST_STRIPE_PAIRS;
  return isCalm || swing <= SAFE_SWING ? tone : { ...tone, contrast: SAFE_SWING / swing };
}

/** How dark a black veil over white must be to show a relative luminance, 0…1 (sRGB transfer). */
export function veilOpacity(luminance: number): number {
  const level = luminance <= 0.0031308 ? luminance * 12.92 : 1.055 * luminance ** (1 / 2.4) - 0.055;
  return Math.min(1, Math.max(0, 1 - level));
}
