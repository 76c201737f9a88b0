import { requireInterval } from '../../quantity/errors.ts';
/** What is wrong with a combination of settings; the first that applies, in this order. */
export type MatchFault = 'exposure-too-long' | 'readout-too-long' | 'ripple' | 'blended';

/** One combination of what the bench can set. */
export interface Match {
  readonly filmFps: number;
  readonly cameraFps: number;
  readonly exposureSeconds: number;
  /** Ripple at exactly this film rate, %; 0 where a search left it out because the match fails anyway. */
  readonly ripplePercent: number;
  /** Largest ripple while the speed is off by as much as allowed, %. */
  readonly worstRipplePercent: number;
  /** Distance of the film rate from the native rate, % of the native rate; ≥ 0. */
  readonly gapPercent: number;
  /** Time with light in one exposure, exposure time × open fraction, s: more is better. */
  readonly lightSeconds: number;
}

/** A combination that fails, with its reason. */
export interface FailedMatch extends Match {
  readonly fault: MatchFault;
  /** How badly it fails: exposure or readout ÷ camera frame, ripple ÷ limit, or needed ÷ camera rate. */
  readonly excess: number;
}

/** Ripples that differ by less than this, %, look alike. Common practice, no source. */
export const RIPPLE_STEP_PERCENT = 0.5;

/**
 * Steps of half a percent into which ripples are sorted before anything else counts: 0 for none.
 *
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @example rippleStep(1.2) // 3
 */
export function rippleStep(ripplePercent: number): number {
  requireInterval('ripplePercent', ripplePercent, { minimum: 0, unit: '%' });
  // The small part keeps a ripple that is a whole step but for rounding in its step.
  return Math.ceil(ripplePercent / RIPPLE_STEP_PERCENT - 1e-7);
}

/** Order of two numbers that counts them as equal when they are equal to nine decimals. */
function order(a: number, b: number): number {
  const [first, second] = [Math.round(a * 1e9), Math.round(b * 1e9)];
  if (first === second) return 0;
  return first < second ? -1 : 1;
}

/**
 * Order of usable matches, the best first: less ripple (in steps), nearer to the native rate, more
 * light, slower camera (smaller files), slower film.
 */
export function compareMatches(a: Match, b: Match): number {
  return (
    rippleStep(a.worstRipplePercent) - rippleStep(b.worstRipplePercent) ||
    order(a.gapPercent, b.gapPercent) ||
    order(b.lightSeconds, a.lightSeconds) ||
    order(a.cameraFps, b.cameraFps) ||
    order(a.filmFps, b.filmFps)
  );
}

/** What the order of failed matches looks at. */
export type FailureRank = Pick<FailedMatch, 'gapPercent' | 'excess'>;

/** Order of failed matches, the most instructive first: nearest to the native rate, least off. */
export function compareFailures(a: FailureRank, b: FailureRank): number {
  return order(a.gapPercent, b.gapPercent) || order(a.excess, b.excess);
}

/**
 * Keeps the first few of many items in an order, without holding or sorting them all. Equal items keep
 * the order in which they came.
 */
export class Shortlist<Rank, Item extends Rank> {
  readonly #items: Item[] = [];
  readonly #longest: number;
  readonly #compare: (a: Rank, b: Rank) => number;

  constructor(longest: number, compare: (a: Rank, b: Rank) => number) {
    this.#longest = longest;
    this.#compare = compare;
  }

  /** True when an item of this rank would not get in, so that it need not be made. */
  refuses(rank: Rank): boolean {
    if (this.#items.length < this.#longest) return false;
    const last = this.#items[this.#longest - 1];
    return last === undefined || this.#compare(rank, last) >= 0;
  }

  add(item: Item): void {
    if (this.refuses(item)) return;
    const items = this.#items;
    const after = items.findIndex((other) => this.#compare(item, other) < 0);
    items.splice(after < 0 ? items.length : after, 0, item);
    if (items.length > this.#longest) items.pop();
  }

  get items(): readonly Item[] {
    return this.#items;
  }
}
