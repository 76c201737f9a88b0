/**
 * Indexes of the values that a drawn line needs: between two of them it runs straight to within the
 * tolerance. Keeps the first and the last. A pattern of light has few corners, so its drawing is short.
 */
export function cornerIndexes(values: readonly number[], tolerance: number): readonly number[] {
  const last = values.length - 1;
  const corners = [0];
  let from = 0;
  while (from < last) {
    let to = from + 1;
    while (to < last && isStraight(values, from, to + 1, tolerance)) to += 1;
    corners.push(to);
    from = to;
  }
  return corners;
}

function isStraight(
  values: readonly number[],
  from: number,
  to: number,
  tolerance: number,
): boolean {
  const start = values[from] ?? 0;
  const slope = ((values[to] ?? 0) - start) / (to - from);
  for (let index = from + 1; index < to; index += 1) {
    const line = start + slope * (index - from);
    if (Math.abs((values[index] ?? 0) - line) > tolerance) return false;
  }
  return true;
}
