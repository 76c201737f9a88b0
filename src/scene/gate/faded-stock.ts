import { freshShare, LAYERS, stockTables, type StockTables } from './stock.ts';

/** Of each layer: share of the dye that lasts when fade is 1, and the stain that it leaves. */
const DYES = [
  { lasting: 0.36, stain: 0 },
  { lasting: 0.86, stain: 0.25 },
  { lasting: 0.62, stain: 0.3 },
] as const;

const GAMMA = 2.2;

/**
 * The stock faded to magenta by degrees. Density scales with the dye that is left, so the light takes it
 * as an exponent.
 *
 * @param fade  0 fresh … 1 badly faded
 */
export function fadedStock(fade: number): StockTables {
  return stockTables((layer, share) => {
    const { lasting, stain } = DYES[layer] ?? DYES[0];
    const dyeLeft = 1 - (1 - lasting) * fade;
    const fresh = freshShare(LAYERS[layer] ?? LAYERS[0], share);
    const light = fresh ** (GAMMA * dyeLeft) * (1 - fade * stain);
    return light ** (1 / GAMMA);
  });
}
