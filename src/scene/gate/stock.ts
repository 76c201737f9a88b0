/** Code in, code out, for red, green and blue. */
export type StockTables = readonly [Uint8ClampedArray, Uint8ClampedArray, Uint8ClampedArray];

/** A layer of dye: its darkest and its lightest, and how steep its middle is. */
interface Layer {
  readonly black: number;
  readonly white: number;
  readonly steepness: number;
}

/** A reversal colour stock: warm whites, cool shadows, a steep middle. */
export const LAYERS = [
  { black: 0.03, white: 1, steepness: 0.42 },
  { black: 0.035, white: 0.965, steepness: 0.38 },
  { black: 0.055, white: 0.86, steepness: 0.26 },
] as const satisfies readonly Layer[];

/** What a layer makes of a code value, both as shares of the highest. */
export function freshShare({ black, white, steepness }: Layer, share: number): number {
  const bent = share * share * (3 - 2 * share);
  return black + (white - black) * ((1 - steepness) * share + steepness * bent);
}

/**
 * Tables of a stock.
 *
 * @param shareOf  what a layer, 0–2, makes of a code value, both as shares of the highest
 */
export function stockTables(shareOf: (layer: number, share: number) => number): StockTables {
  const table = (layer: number): Uint8ClampedArray =>
    Uint8ClampedArray.from({ length: 256 }, (_, code) => 255 * shareOf(layer, code / 255));
  return [table(0), table(1), table(2)];
}

/** The stock as it came from the laboratory. */
export function freshStock(): StockTables {
  return stockTables((layer, share) => freshShare(LAYERS[layer] ?? LAYERS[0], share));
}
