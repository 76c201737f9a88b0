// Between the code values of a picture file and light. Light adds, code values do not: a ghost of a
// tenth of the light would look like far more if code values were mixed.

/** Whole steps of light from black to white. */
export const WHITE = 16_384;

/** Light, share of white, of a code value given as a share of the highest (the sRGB curve). */
export function lightOfCode(share: number): number {
  return share <= 0.040_45 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}

/** Code value, share of the highest, of a light as a share of white. */
export function codeOfLight(light: number): number {
  return light <= 0.003_130_8 ? light * 12.92 : 1.055 * light ** (1 / 2.4) - 0.055;
}

/** Steps of light of each code value. */
export const LIGHT_OF_CODE: Float32Array = Float32Array.from(
  { length: 256 },
  (_, code) => WHITE * lightOfCode(code / 255),
);

/** Most steps of light that the table of code values knows; all above white are white. */
export const MOST_LIGHT: number = 4 * WHITE;

/** Code value of each step of light. */
export const CODE_OF_LIGHT: Uint8Array = new Uint8Array(MOST_LIGHT + 1).fill(255);
for (let step = 0; step < WHITE; step += 1) {
  CODE_OF_LIGHT[step] = Math.round(255 * codeOfLight(step / WHITE));
}
