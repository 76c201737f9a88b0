/** How a camera turns light into code values, beside its curve. */
export interface Tone {
  /** Light by exposure: 1 as set for the scene, 2 a stop over. */
  readonly exposure: number;
  /** Balance of red, green and blue, 1 for neutral. */
  readonly balance: readonly [number, number, number];
  /** Light that the file had clipped at white before it was darkened by this factor; undefined for none. */
  readonly pulledBack?: number | undefined;
}

export const NEUTRAL: Tone = { exposure: 1, balance: [1, 1, 1] };
