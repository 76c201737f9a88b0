/** A film frame with its place in a row of the repeat pattern; places are counted in slots. */
export interface PlacedFrame {
  /** Number of the film frame, from 1. */
  readonly number: number;
  readonly repeats: number;
  readonly slot: number;
  /** Slots taken: one for each repeat, and one for a lost frame so that it can be seen. */
  readonly slots: number;
}

export interface RepeatRow {
  readonly frames: readonly PlacedFrame[];
  readonly slots: number;
}

/**
 * Breaks a repeat pattern into rows of at most `mostSlots`, never inside a film frame (a frame that
 * is longer than a row gets a row of its own).
 */
export function repeatRows(repeats: readonly number[], mostSlots: number): readonly RepeatRow[] {
  const rows: RepeatRow[] = [];
  let frames: PlacedFrame[] = [];
  let slot = 0;
  for (const [index, count] of repeats.entries()) {
    const slots = Math.max(1, count);
    if (frames.length > 0 && slot + slots > mostSlots) {
      rows.push({ frames, slots: slot });
      frames = [];
      slot = 0;
    }
    frames.push({ number: index + 1, repeats: count, slot, slots });
    slot += slots;
  }
  if (frames.length > 0) rows.push({ frames, slots: slot });
  return rows;
}
