/** Code in, code out, for red, green and blue. */
export type StockTables = readonly [Uint8ClampedArray, Uint8ClampedArray, Uint8ClampedArray];

/** Each layer: its darkest, its lightest, how steep its middle is, dye that lasts when fade is 1, stain. */
const LAYERS = [
  { black: 0.03, white: 1, steepness: 0.42, lasting: 0.36, stain: 0 },
  { black: 0.035, white: 0.965, steepness: 0.38, lasting: 0.86, stain: 0.25 },
  { black: 0.055, white: 0.86, steepness: 0.26, lasting: 0.62, stain: 0.3 },
] as const;

const GAMMA = 2.2;

type Layer = (typeof LAYERS)[number];

function layerTable(layer: Layer, fade: number): Uint8ClampedArray {
  const dyeLeft = 1 - (1 - layer.lasting) * fade;
  return Uint8ClampedArray.from({ length: 256 }, (_, code) => {
    const share = code / 255;
    const bent = share * share * (3 - 2 * share);
    const curve = (1 - layer.steepness) * share + layer.steepness * bent;
    const fresh = layer.black + (layer.white - layer.black) * curve;
    if (fade === 0) return 255 * fresh;
    // The density scales with the dye that is left, so the light takes it as an exponent.
    const light = fresh ** (GAMMA * dyeLeft) * (1 - fade * layer.stain);
    return 255 * light ** (1 / GAMMA);
  });
}

/**
 * A reversal colour stock: warm whites, cool shadows, a steep middle; faded to magenta by degrees.
 *
 * @param fade  0 fresh … 1 badly faded
 */
export function stockTables(fade: number): StockTables {
  const [red, green, blue] = LAYERS;
  return [layerTable(red, fade), layerTable(green, fade), layerTable(blue, fade)];
}
