/**
 * The one error that core throws for a value it cannot work with. A calculator shows it beside the
 * field whose key equals `argument`, so arguments carry the same names as worksheet inputs.
 */
export class OutOfRangeError extends RangeError {
  readonly argument: string;
  readonly given: string;
  readonly accepted: string;

  constructor(argument: string, given: number | string, accepted: string) {
    super(`${argument}: ${given} is not accepted; expected ${accepted}`);
    this.name = 'OutOfRangeError';
    this.argument = argument;
    this.given = String(given);
    this.accepted = accepted;
  }
}

/** Accepted interval of a number; bounds are inclusive unless `above` or `below` is used. */
export interface Interval {
  readonly minimum?: number;
  readonly maximum?: number;
  /** Exclusive lower bound. */
  readonly above?: number;
  /** Exclusive upper bound. */
  readonly below?: number;
  /** Only whole numbers are accepted. */
  readonly whole?: boolean;
  /** Unit for the message, for instance `s`. */
  readonly unit?: string;
}

function describe(interval: Interval): string {
  const symbol = interval.unit ?? '';
  const unit = symbol === '' || symbol === '°' ? symbol : ` ${symbol}`;
  const bounds: string[] = [];
  if (interval.minimum !== undefined) bounds.push(`at least ${interval.minimum}${unit}`);
  if (interval.above !== undefined) bounds.push(`more than ${interval.above}${unit}`);
  if (interval.maximum !== undefined) bounds.push(`at most ${interval.maximum}${unit}`);
  if (interval.below !== undefined) bounds.push(`less than ${interval.below}${unit}`);
  const kind = interval.whole === true ? 'a whole number' : 'a number';
  return bounds.length === 0 ? kind : `${kind}, ${bounds.join(' and ')}`;
}

/**
 * Gives the value back when it lies in the interval; every public core function checks its
 * arguments with it.
 *
 * @returns the value, unchanged
 * @throws {OutOfRangeError} when the value is not finite, outside the interval or not whole where
 * whole is asked for; names the argument, the value and the accepted range
 * @example requireInterval('filmFps', 18, { above: 0 }) // 18
 */
export function requireInterval(argument: string, value: number, interval: Interval): number {
  const isInside =
    Number.isFinite(value) &&
    (interval.minimum === undefined || value >= interval.minimum) &&
    (interval.above === undefined || value > interval.above) &&
    (interval.maximum === undefined || value <= interval.maximum) &&
    (interval.below === undefined || value < interval.below) &&
    (interval.whole !== true || Number.isInteger(value));
  if (!isInside) throw new OutOfRangeError(argument, value, describe(interval));
  return value;
}
