import { shutterRipplePercent } from './complete-setting.ts';
import { largestRippleShare, rippleShare } from './equal-blade-ripple.ts';
import { OutOfRangeError } from '../../quantity/errors.ts';
import { lampRipple, type Lamp } from './lamp-flicker.ts';
import { hasEqualBlades, type Shutter } from './shutter.ts';

/** Ripple of an exposure time at a film rate, as a share of the mean. */
export interface RippleRange {
  /** At the film rate itself. */
  readonly share: number;
  /** The largest while the film rate is off by as much as it may. */
  readonly worstShare: number;
}

interface RippleBench {
  readonly flashesPerFrame: number;
  readonly openFraction: number;
  readonly speedErrorPercent: number;
  readonly lamp?: Lamp | undefined;
}

/** Film rates tried beside the middle one where there is no closed form, in parts of the speed error. */
const SPEEDS_OFF = [-1, -0.75, -0.5, -0.25, 0.25, 0.5, 0.75, 1];

/** Whether the closed form for hard blades alike under a steady lamp applies. */
export function isClosedForm(bench: RippleBench, shutter: Shutter): boolean {
  return bench.lamp === undefined && isPlain(shutter);
}

const isPlain = (shutter: Shutter): boolean =>
  shutter.wipeFraction === 0 && hasEqualBlades(shutter);

/**
 * The ripples of a bench, by film rate and exposure time. Where the closed form does not apply each
 * pair is worked out once and kept, because a search asks for it again at every camera rate; and a
 * ripple that breaks the limit at the film rate itself is not followed across the speed error.
 *
 * @throws {OutOfRangeError} for `lampKind`, when the lamp flickers behind blades that differ or wipe
 */
export function makeRippleRange(
  bench: RippleBench,
  shutter: Shutter,
  limitShare: number,
): (filmFps: number, exposureSeconds: number) => RippleRange {
  const { flashesPerFrame, openFraction, lamp } = bench;
  const error = bench.speedErrorPercent / 100;
  if (isClosedForm(bench, shutter)) {
    const narrow = Math.min(openFraction, 1 - openFraction);
    return (filmFps, exposureSeconds) => {
      const flashPeriods = filmFps * flashesPerFrame * exposureSeconds;
      const [low, high] = [flashPeriods * (1 - error), flashPeriods * (1 + error)];
      return {
        share: rippleShare(flashPeriods, openFraction, narrow),
        worstShare: largestRippleShare(low, high, openFraction, narrow),
      };
    };
  }
  if (lamp !== undefined && !isPlain(shutter)) {
    throw new OutOfRangeError(
      'lampKind',
      lamp.kind,
      'a steady lamp: a flickering one behind blades that differ or wipe cannot be worked out here. Feed the lamp with smooth direct current, or judge a setting by a test recording of the empty gate',
    );
  }
  const shareAt = (filmFps: number, exposureSeconds: number): number =>
    (lamp === undefined
      ? shutterRipplePercent(shutter, filmFps, exposureSeconds)
      : lampRipple(filmFps, flashesPerFrame, openFraction, exposureSeconds, lamp).percent) / 100;
  const known = new Map<string, RippleRange>();
  return (filmFps, exposureSeconds) => {
    const key = `${filmFps} ${exposureSeconds}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const share = shareAt(filmFps, exposureSeconds);
    const isFollowed = error > 0 && share <= limitShare;
    const offs = isFollowed ? SPEEDS_OFF : [];
    const shares = offs.map((off) => shareAt(filmFps * (1 + error * off), exposureSeconds));
    const worstShare = Math.max(share, ...shares);
    const range = { share, worstShare };
    known.set(key, range);
    return range;
  };
}
