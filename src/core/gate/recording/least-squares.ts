/** Share of each diagonal entry that is added to it, so that columns that look alike stay small. */
const RIDGE = 1e-6;

/**
 * Solves a symmetric positive system by Cholesky's method.
 *
 * @param matrix  size × size, row by row; only the lower half is read
 * @param right   right-hand side
 * @param ridge   share of each diagonal entry added to it
 * @returns the solution
 */
export function solveSymmetric(
  matrix: Float64Array,
  right: Float64Array,
  ridge = RIDGE,
): Float64Array {
  const size = right.length;
  const root = new Float64Array(size * size);
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      let sum = matrix[row * size + column] ?? 0;
      if (row === column) sum += ridge * sum + 1e-15;
      for (let k = 0; k < column; k += 1) {
        sum -= (root[row * size + k] ?? 0) * (root[column * size + k] ?? 0);
      }
      root[row * size + column] =
        row === column
          ? Math.sqrt(Math.max(sum, 1e-30))
          : sum / (root[column * size + column] ?? 1);
    }
  }
  const solution = Float64Array.from(right);
  for (let row = 0; row < size; row += 1) {
    let sum = solution[row] ?? 0;
    for (let k = 0; k < row; k += 1) sum -= (root[row * size + k] ?? 0) * (solution[k] ?? 0);
    solution[row] = sum / (root[row * size + row] ?? 1);
  }
  for (let row = size - 1; row >= 0; row -= 1) {
    let sum = solution[row] ?? 0;
    for (let k = row + 1; k < size; k += 1) sum -= (root[k * size + row] ?? 0) * (solution[k] ?? 0);
    solution[row] = sum / (root[row * size + row] ?? 1);
  }
  return solution;
}

export interface LinearFit {
  /** Factor of each column. */
  readonly factors: Float64Array;
  /** What the columns leave. */
  readonly residual: Float64Array;
  /** Sum of its squares. */
  readonly residualSquares: number;
}

/** Sum of the products of two series. */
export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let index = 0; index < a.length; index += 1) sum += (a[index] ?? 0) * (b[index] ?? 0);
  return sum;
}

/** Best sum of columns for a series of values, by least squares. */
export function fitColumns(columns: readonly Float64Array[], values: Float64Array): LinearFit {
  const size = columns.length;
  const gram = new Float64Array(size * size);
  const right = new Float64Array(size);
  for (const [row, column] of columns.entries()) {
    for (let other = 0; other <= row; other += 1) {
      gram[row * size + other] = dot(column, columns[other] ?? column);
    }
    right[row] = dot(column, values);
  }
  const factors = solveSymmetric(gram, right);
  const residual = Float64Array.from(values);
  for (const [index, column] of columns.entries()) {
    const factor = factors[index] ?? 0;
    for (let at = 0; at < residual.length; at += 1) {
      residual[at] = (residual[at] ?? 0) - factor * (column[at] ?? 0);
    }
  }
  return { factors, residual, residualSquares: dot(residual, residual) };
}
