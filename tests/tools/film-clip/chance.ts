/** Seeded chance for the clips: the same seed gives the same clip on every machine. */
export interface Chance {
  /** Even between two bounds. */
  readonly between: (least: number, most: number) => number;
  readonly pick: <Value>(values: readonly Value[]) => Value;
  readonly happens: (share: number) => boolean;
  /** Normal, mean 0 and spread 1. */
  readonly normal: () => number;
}

export function makeChance(seed: number): Chance {
  let state = (seed * 2654435761 + 12345) >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return {
    between: (least, most) => least + (most - least) * uniform(),
    pick: (values) => values[Math.floor(uniform() * values.length)]!,
    happens: (share) => uniform() < share,
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
  };
}
