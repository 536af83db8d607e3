import fc from 'fast-check';
import { CholeskyDecomposition, inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { factorCholesky, invertCholesky, solveCholesky } from '../../src/geometry/cholesky.js';
import { type FitModel, fitLeastSquares } from '../../src/geometry/least-squares.js';
import { randomNumbers } from '../placement/rooms.js';

const SEED = 1910;

/** A positive definite matrix out of a hat: B B^T and something on the diagonal. */
function definite(n: number, seed: number): Matrix {
  const random = randomNumbers(seed);
  const root = Matrix.zeros(n, n);
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) root.set(i, j, 2 * random() - 1);
  return root.mmul(root.transpose()).add(Matrix.eye(n).mul(0.05));
}

describe('Cholesky', () => {
  it('factors, solves and inverts as ml-matrix does', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 25 }), fc.integer({ min: 1, max: 1e6 }), (n, seed) => {
        const matrix = definite(n, seed);
        const factor = Float64Array.from(matrix.to1DArray());
        expect(factorCholesky(factor, n)).toBe(-1);
        const lower = new CholeskyDecomposition(matrix).lowerTriangularMatrix;
        for (let i = 0; i < n; i++) {
          for (let j = 0; j <= i; j++) expect(factor[i * n + j]).toBeCloseTo(lower.get(i, j), 9);
        }
        const b = Float64Array.from({ length: n }, (_, i) => Math.sin(i + seed));
        const x = Float64Array.from(b);
        solveCholesky(factor, n, x);
        const back = matrix.mmul(Matrix.columnVector(x)).to1DArray();
        const expected = inverse(matrix);
        const ours = invertCholesky(factor, n);
        const size = Math.max(...expected.to1DArray().map(Math.abs));
        for (let i = 0; i < n; i++) {
          expect(back[i]).toBeCloseTo(b[i], 8);
          for (let j = 0; j < n; j++) {
            expect(Math.abs(ours[i * n + j] - expected.get(i, j))).toBeLessThan(1e-9 * size);
            expect(ours[i * n + j]).toBe(ours[j * n + i]);
          }
        }
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it('names the first unknown that those before it do not leave free', () => {
    // Third row = first + second.
    const singular = Float64Array.from([2, 0, 2, 0, 0, 3, 3, 0, 2, 3, 5, 0, 0, 0, 0, 1]);
    expect(factorCholesky(singular, 4)).toBe(2);
    expect(factorCholesky(Float64Array.from([0]), 1)).toBe(0);
    expect(factorCholesky(Float64Array.from([1, 2, 2, 1]), 2)).toBe(1);
    expect(factorCholesky(Float64Array.from([Number.NaN]), 1)).toBe(0);
  });
});

/** Readings y = a exp(b t), the unknowns a and b. */
function growth(times: readonly number[], values: readonly number[]): FitModel {
  return {
    unknowns: 2,
    readings: times.length,
    width: 2,
    linearize([a, b], { columns, slopes, misfits }) {
      times.forEach((t, i) => {
        columns.set([0, 1], 2 * i);
        slopes.set([Math.exp(b * t), a * t * Math.exp(b * t)], 2 * i);
        misfits[i] = values[i] - a * Math.exp(b * t);
      });
    },
  };
}

describe('least squares', () => {
  it('finds a curve again from a far start, where whole steps overshoot', () => {
    const times = [0, 1, 2, 3, 4, 5];
    const values = times.map((t) => 3 * Math.exp(0.5 * t));
    const fit = fitLeastSquares(growth(times, values), Float64Array.from([1, 1.5]));
    if (typeof fit === 'string') throw new Error(fit);
    expect(fit.x[0]).toBeCloseTo(3, 6);
    expect(fit.x[1]).toBeCloseTo(0.5, 6);
    expect(fit.squareSum).toBeLessThan(1e-10);
  });

  it('ends where the gradient does, for readings that no curve meets', () => {
    const times = [0, 1, 2, 3, 4];
    const values = [1, 2.5, 2, 6, 7];
    const model = growth(times, values);
    const fit = fitLeastSquares(model, Float64Array.from([1, 0.3]));
    if (typeof fit === 'string') throw new Error(fit);
    const cost = (a: number, b: number): number =>
      times.reduce((sum, t, i) => sum + (values[i] - a * Math.exp(b * t)) ** 2, 0);
    const [a, b] = fit.x;
    expect(fit.squareSum).toBeCloseTo(cost(a, b), 9);
    for (const [da, db] of [
      [1e-3, 0],
      [-1e-3, 0],
      [0, 1e-3],
      [0, -1e-3],
    ]) {
      expect(cost(a + da, b + db)).toBeGreaterThan(fit.squareSum);
    }
  });

  it('says when an unknown changes no reading', () => {
    expect(fitLeastSquares(growth([0, 0, 0], [1, 2, 3]), Float64Array.from([1, 0]))).toBe('undetermined');
  });

  it('says when there is nowhere to end', () => {
    // Slopes that are not those of the readings: no step, however short, makes the sum smaller.
    const model: FitModel = {
      unknowns: 1,
      readings: 1,
      width: 1,
      linearize([x], { columns, slopes, misfits }) {
        columns[0] = 0;
        slopes[0] = -1;
        misfits[0] = 5 - x;
      },
    };
    expect(fitLeastSquares(model, Float64Array.from([1]))).toBe('does-not-converge');
    const broken: FitModel = {
      ...model,
      linearize: (_, { columns, slopes, misfits }) => {
        columns[0] = 0;
        slopes[0] = 1;
        misfits[0] = Number.NaN;
      },
    };
    expect(fitLeastSquares(broken, Float64Array.from([1]))).toBe('does-not-converge');
  });
});
