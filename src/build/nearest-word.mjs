/** Letters to put in, leave out, change or swap with their neighbour to get from one word to the other. */
export function wordDistance(one, other) {
  const rows = Array.from({ length: one.length + 1 }, (_, row) => [row]);
  for (let column = 0; column <= other.length; column += 1) rows[0][column] = column;
  for (let row = 1; row <= one.length; row += 1) {
    for (let column = 1; column <= other.length; column += 1) {
      const change = one[row - 1] === other[column - 1] ? 0 : 1;
      rows[row][column] = Math.min(
        rows[row - 1][column] + 1,
        rows[row][column - 1] + 1,
        rows[row - 1][column - 1] + change,
      );
      const isSwap = one[row - 1] === other[column - 2] && one[row - 2] === other[column - 1];
      if (row > 1 && column > 1 && isSwap) {
        rows[row][column] = Math.min(rows[row][column], rows[row - 2][column - 2] + 1);
      }
    }
  }
  return rows[one.length][other.length];
}

/** The known word that a misspelt one most likely meant; undefined where none is near. */
export function nearestWord(word, known) {
  const near = known
    .map((candidate) => ({
      candidate,
      distance: wordDistance(word.toLowerCase(), candidate.toLowerCase()),
    }))
    .filter(({ candidate, distance }) => distance <= Math.max(2, candidate.length / 3))
    .toSorted((a, b) => a.distance - b.distance);
  return near[0]?.candidate;
}
