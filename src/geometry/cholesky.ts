/**
 * A pivot that lost all but this share of its diagonal entry was lost to rounding: 1e-12 leaves four digits above the
 * roundings of doubles, and is far below what any sound net of distances loses (its condition is under 1e9).
 */
const LEAST_PIVOT_SHARE = 1e-12;

/**
 * Factors the symmetric matrix (row by row, its lower half is read) into L L^T in place: L stands in the lower half. Returns
 * -1, or the first row whose pivot is not positive beyond rounding: that unknown is not determined by those before it.
 */
export function factorCholesky(matrix: Float64Array, n: number): number {
  for (let i = 0; i < n; i++) {
    const rowI = i * n;
    for (let j = 0; j < i; j++) {
      const rowJ = j * n;
      let sum = matrix[rowI + j];
      for (let k = 0; k < j; k++) sum -= matrix[rowI + k] * matrix[rowJ + k];
      matrix[rowI + j] = sum / matrix[rowJ + j];
    }
    const diagonal = matrix[rowI + i];
    let pivot = diagonal;
    for (let k = 0; k < i; k++) pivot -= matrix[rowI + k] * matrix[rowI + k];
    if (!(pivot > LEAST_PIVOT_SHARE * diagonal)) return i;
    matrix[rowI + i] = Math.sqrt(pivot);
  }
  return -1;
}

/** Solves L L^T x = b in place. */
export function solveCholesky(factor: Float64Array, n: number, b: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let sum = b[i];
    for (let k = 0; k < i; k++) sum -= factor[i * n + k] * b[k];
    b[i] = sum / factor[i * n + i];
  }
  for (let i = n - 1; i >= 0; i--) {
    const x = b[i] / factor[i * n + i];
    b[i] = x;
    for (let k = 0; k < i; k++) b[k] -= factor[i * n + k] * x;
  }
}

/** (L L^T)^-1, both halves filled, as a new matrix row by row. */
export function invertCholesky(factor: Float64Array, n: number): Float64Array {
  // Row j of `rows` is column j of L^-1, which begins at j: all products below run along rows.
  const rows = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    const row = j * n;
    rows[row + j] = 1 / factor[j * n + j];
    for (let i = j + 1; i < n; i++) {
      let sum = 0;
      for (let k = j; k < i; k++) sum -= factor[i * n + k] * rows[row + k];
      rows[row + i] = sum / factor[i * n + i];
    }
  }
  const inverse = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = i; k < n; k++) sum += rows[i * n + k] * rows[j * n + k];
      inverse[i * n + j] = sum;
      inverse[j * n + i] = sum;
    }
  }
  return inverse;
}
