/** An interval of one quantity, or of page units. */
export interface Extent {
  readonly from: number;
  readonly to: number;
}

/** Round values along an axis, and the decimals that tell them apart. */
export interface Ticks {
  readonly values: readonly number[];
  readonly step: number;
  readonly decimals: number;
}

const MANTISSAS = [1, 2, 5] as const;

/**
 * Extent of the finite numbers among those given; a single value is widened so that it can be drawn,
 * and no value at all gives 0 to 1.
 */
export function extentOf(values: readonly number[]): Extent {
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    from = Math.min(from, value);
    to = Math.max(to, value);
  }
  return from > to ? { from: 0, to: 1 } : widened({ from, to });
}

/** A flat extent cannot be scaled, so it is opened by a tenth of its size on both sides. */
function widened({ from, to }: Extent): Extent {
  const size = Math.max(Math.abs(from), Math.abs(to));
  if (to - from > size * 1e-9) return { from, to };
  const margin = size === 0 ? 1 : size / 10;
  return { from: from - margin, to: to + margin };
}

function stepText(mantissa: number, exponent: number): number {
  return Number(`${mantissa}e${exponent}`);
}

/**
 * Ticks at 1, 2 or 5 times a power of ten that lie in the extent: as many as fit below `most`, and
 * exact decimals rather than sums of a rounded step.
 *
 * @param most  most ticks to place; whole, at least 2
 */
export function roundTicks(extent: Extent, most: number): Ticks {
  const { from, to } = widened(extent);
  let exponent = Math.floor(Math.log10((to - from) / Math.max(2, most)));
  for (let tries = 0; tries < 6; tries += 1, exponent += 1) {
    for (const mantissa of MANTISSAS) {
      const step = stepText(mantissa, exponent);
      const slack = step * 1e-9;
      const first = Math.ceil((from - slack) / step);
      const last = Math.floor((to + slack) / step);
      if (last - first + 1 > Math.max(2, most)) continue;
      const values: number[] = [];
      for (let index = first; index <= last; index += 1) {
        values.push(stepText(index * mantissa, exponent));
      }
      return { values, step, decimals: Math.max(0, -exponent) };
    }
  }
  return { values: [from, to], step: to - from, decimals: 0 };
}

/** The extent rounded outwards to whole ticks, so that an axis starts and ends on a printed value. */
export function roundedOutwards(extent: Extent, most: number): Extent {
  const { from, to } = widened(extent);
  const { step } = roundTicks({ from, to }, Math.max(2, most - 1));
  const slack = 1e-9;
  return {
    from: Math.floor(from / step + slack) * step,
    to: Math.ceil(to / step - slack) * step,
  };
}

/** A tick as printed: fixed decimals, true minus sign, long whole parts grouped in threes. */
export function tickText(value: number, decimals: number): string {
  const size = Math.abs(value);
  if (size !== 0 && (size >= 1e9 || decimals > 6)) {
    return value.toExponential(1).replace('-', '−').replace('e+', 'e');
  }
  const [whole = '0', rest] = size.toFixed(decimals).split('.');
  const grouped = whole.length > 4 ? whole.replaceAll(/\B(?=(?:\d{3})+$)/gu, '\u202f') : whole;
  const digits = rest === undefined ? grouped : `${grouped}.${rest}`;
  return value < 0 ? `−${digits}` : digits;
}

/** Straight mapping from a quantity to page units; a flat quantity lands on the start. */
export function linearScale(quantity: Extent, page: Extent): (value: number) => number {
  const span = quantity.to - quantity.from;
  const perUnit = span === 0 ? 0 : (page.to - page.from) / span;
  return (value) => page.from + (value - quantity.from) * perUnit;
}
