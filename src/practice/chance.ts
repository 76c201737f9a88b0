/** Gives numbers from 0 (inclusive) to 1, one after another. */
export type Chance = () => number;

/** Turns a text into 32 bits, so that any seed a trainer can type gives a set of its own. */
function bitsOf(text: string): number {
  let bits = 0x811c9dc5;
  for (const letter of text) {
    bits = Math.imul(bits ^ (letter.codePointAt(0) ?? 0), 0x01000193);
  }
  return bits >>> 0;
}

/**
 * Chance that is the same for the same seed on every device: a class with one link gets one set.
 *
 * Model: a 32-bit generator with additive steps and mixed bits, started from the text. No secrets hang
 * on it.
 *
 * @param seed  any text, for instance `spring 2027`
 * @returns a function that gives numbers from 0 (inclusive) to 1
 * @source arithmetic
 */
export function seededChance(seed: string): Chance {
  let state = bitsOf(seed);
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** A whole number from `least` to `most`, both possible. */
export function drawnWhole(chance: Chance, least: number, most: number): number {
  return least + Math.floor(chance() * (most - least + 1));
}

/** One of a list; undefined for an empty one. */
export function drawnOne<Item>(chance: Chance, items: readonly Item[]): Item | undefined {
  return items[Math.floor(chance() * items.length)];
}

/** The same items in an order drawn by chance. */
export function shuffled<Item>(chance: Chance, items: readonly Item[]): readonly Item[] {
  const left = [...items];
  const order: Item[] = [];
  while (left.length > 0) order.push(...left.splice(Math.floor(chance() * left.length), 1));
  return order;
}
