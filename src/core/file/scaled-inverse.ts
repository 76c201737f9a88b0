/**
 * Inverse of a symmetric positive definite matrix S, multiplied by det(S)^(1/n) so that its own
 * determinant is 1.
 *
 * Model: Cholesky factors, S = L·Lᵀ; exact but for rounding.
 *
 * @param matrix  n × n numbers row by row
 * @param size    n; whole, at least 1
 * @returns n × n numbers row by row
 * @source arithmetic
 */
export function scaledInverse(matrix: Float64Array, size: number): Float64Array {
  const factor = new Float64Array(size * size);
  const f = (row: number, column: number): number => factor[row * size + column] ?? 0;
  let logDeterminant = 0;
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      let sum = matrix[row * size + column] ?? 0;
      for (let inner = 0; inner < column; inner += 1) sum -= f(row, inner) * f(column, inner);
      factor[row * size + column] = row === column ? Math.sqrt(sum) : sum / f(column, column);
    }
    logDeterminant += 2 * Math.log(f(row, row));
  }
  const scale = Math.exp(logDeterminant / size);
  const inverse = new Float64Array(size * size);
  const solved = new Float64Array(size);
  for (let column = 0; column < size; column += 1) {
    for (let row = 0; row < size; row += 1) {
      let sum = row === column ? 1 : 0;
      for (let inner = 0; inner < row; inner += 1) sum -= f(row, inner) * (solved[inner] ?? 0);
      solved[row] = sum / f(row, row);
    }
    for (let row = size - 1; row >= 0; row -= 1) {
      let sum = solved[row] ?? 0;
      for (let inner = row + 1; inner < size; inner += 1)
        sum -= f(inner, row) * (solved[inner] ?? 0);
      solved[row] = sum / f(row, row);
    }
    for (let row = 0; row < size; row += 1)
      inverse[row * size + column] = (solved[row] ?? 0) * scale;
  }
  return inverse;
}
