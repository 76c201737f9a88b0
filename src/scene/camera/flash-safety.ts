import { harmonicShare } from '../../core/gate/gate-light.ts';
import { exposureRipple } from '../../core/gate/ripple.ts';
import { beatHz } from '../../core/gate/beat.ts';
import { viewFps, type Shown, type View } from './views.ts';
import type { FilmFaults } from '../gate/film-faults.ts';
import type { Tone } from './tone.ts';

/**
 * Keeps what plays below the general flash threshold of WCAG 2.2, criterion 2.3.1: at most three pairs of
 * opposing changes in a second; a change counts from a tenth of the full relative luminance. Beats are
 * counted by the core from the rates, not by looking at frames, so that none is missed.
 */
const MOST_FLASHES_PER_SECOND = 3;
const SAFE_SWING = 0.09;

/** Relative luminance that nine tenths of the scene stay below, measured on its film frames. */
export const BRIGHT_LUMINANCE = 0.62;

/**
 * The red flash. By the definition of WCAG 2.2 light that swings makes none, because it changes no colour:
 * a saturated red has to change by more than 0.2 in the CIE 1976 UCS diagram. Versions 2.0 and 2.1 took
 * changes of (R − G − B) × 320 by more than 20 that touch a saturated red; that is kept as well, being
 * stricter with light. The reddest part of the scene is the child's jersey; here both are shares of white.
 */
const REDDEST = 0.5;
const SAFE_RED_SWING = 0.055;

/** Harmonics of the film rate that are looked at; those above are less than a hundredth together. */
const HARMONICS = 72;
/** A part of the swing this small, share of the mean, flashes nowhere. */
const UNSEEN = 0.004;

/** How far the light may swing while it plays. */
export interface SafePlay {
  /** Share of the true swing that is shown, 0–1. */
  readonly contrast: number;
  /** True swing of the light, brightest less darkest, share of the mean. */
  readonly swing: number;
  /** Part of it that comes more than three times a second. */
  readonly fastSwing: number;
}

/** A part of the ripple: how often it comes and how far it swings, share of the mean. */
interface Beat {
  readonly hertz: number;
  readonly swing: number;
}

function beats({ setting }: Shown, fps: number): readonly Beat[] {
  const { light, exposureSeconds } = setting;
  return Array.from({ length: HARMONICS }, (_, index): Beat => {
    const harmonic = index + 1;
    const hertz = harmonic / light.periodSeconds;
    const turns = Math.PI * hertz * exposureSeconds;
    const passed = Math.abs(Math.sin(turns) / turns);
    return {
      hertz: Math.abs(beatHz(hertz, fps)),
      swing: 4 * harmonicShare(light, harmonic) * passed,
    };
  }).filter(({ swing }) => swing > UNSEEN);
}

/**
 * Swing of the beats above three a second. What is left is slower, and a sum of waves of up to three a
 * second does not turn round more often than that.
 */
function fastPart(parts: readonly Beat[], speed: number): number {
  return parts
    .filter(({ hertz }) => hertz * speed > MOST_FLASHES_PER_SECOND)
    .reduce((sum, { swing }) => sum + swing, 0);
}

/**
 * Share of the true swing that may be shown in a view.
 *
 * Kept frames and the television copy pick camera frames, so any part of the ripple may come at any
 * rate there: all of it counts, unless so few pictures come in a second that none can flash too often.
 *
 * @param speed  1 for true speed, ¼ for slow motion
 */
export function safePlay(shown: Shown, view: View, tone: Tone, speed: number): SafePlay {
  const { light, exposureSeconds, cameraFps } = shown.setting;
  const swing = view === 'film' ? 0 : exposureRipple(light, exposureSeconds).percent / 100;
  const picturesPerSecond = viewFps(view, shown.setting, shown.file) * speed;
  const isTooSlowToFlash = picturesPerSecond / 2 <= MOST_FLASHES_PER_SECOND;
  const fast = view === 'camera' ? fastPart(beats(shown, cameraFps), speed) : swing;
  const fastSwing = isTooSlowToFlash ? 0 : Math.min(swing, fast);
  const brightest = Math.min(1, BRIGHT_LUMINANCE * tone.exposure * Math.max(...tone.balance));
  const reddest = Math.min(1, REDDEST * tone.exposure * tone.balance[0]);
  const allowed = Math.min(SAFE_SWING / brightest, SAFE_RED_SWING / reddest);
  const contrast = fastSwing <= allowed ? 1 : allowed / fastSwing;
  return { contrast, swing, fastSwing };
}

/** Slow motion. */
export const SLOW_SPEED: number = 1 / 4;

/** Weave from which edges that jump to and fro flash by themselves; measured on the scene. */
const RESTLESS_WEAVE = 1.2;

/**
 * Speed at which a side may play at most. A picture that slides or shakes flashes at every edge, and no
 * contrast of the light helps: it plays slowly.
 *
 * @returns 1, or {@link SLOW_SPEED}
 */
export function fastestSpeed({ slip, weave }: FilmFaults): number {
  return slip > 0 || weave > RESTLESS_WEAVE ? SLOW_SPEED : 1;
}
