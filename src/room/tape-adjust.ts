import { type FitModel, fitLeastSquares, type WeightedRows } from '../geometry/least-squares.js';
import type { Network } from './tape-network.js';
import { fillRows, OBSERVATION_WIDTH } from './tape-observations.js';

/** The corners that agree best with all readings, and how surely. */
export interface Adjustment {
  /** x, y, x, y, ... */
  readonly xy: Float64Array;
  /** Covariance of the coordinates as far as the deviations are right, row by row; 0 for those that are held. */
  readonly covariance: Float64Array;
  /** The weighted rows there, with all coordinates for columns. */
  readonly rows: WeightedRows;
  /** Share of a slip in each reading that shows in its residual, 0 to 1. */
  readonly redundancy: Float64Array;
  readonly squareSum: number;
  readonly degreesOfFreedom: number;
}

/** A redundancy under this is rounding: nothing checks the reading. */
const LEAST_REDUNDANCY = 1e-6;

/** Weighted least squares over all observations, the datum held. */
export function adjustNetwork({
  start,
  held,
  observations,
}: Network): Adjustment | 'undetermined' | 'does-not-converge' {
  const size = start.length;
  const columnOf = new Int32Array(size).fill(-1);
  const coordinateOf: number[] = [];
  for (let k = 0; k < size; k++) {
    if (held.includes(k)) continue;
    columnOf[k] = coordinateOf.length;
    coordinateOf.push(k);
  }
  const unknowns = coordinateOf.length;
  const readings = observations.length;
  if (readings < unknowns) return 'undetermined';

  const xy = Float64Array.from(start);
  const place = (x: Float64Array): void => {
    for (let i = 0; i < unknowns; i++) xy[coordinateOf[i]] = x[i];
  };
  const model: FitModel = {
    unknowns,
    readings,
    width: OBSERVATION_WIDTH,
    linearize(x, rows) {
      place(x);
      fillRows(observations, xy, columnOf, rows);
    },
  };
  const fit = fitLeastSquares(
    model,
    Float64Array.from(coordinateOf, (k) => start[k]),
  );
  if (typeof fit === 'string') return fit;
  place(fit.x);

  const covariance = new Float64Array(size * size);
  for (let i = 0; i < unknowns; i++) {
    for (let j = 0; j < unknowns; j++) {
      covariance[coordinateOf[i] * size + coordinateOf[j]] = fit.cofactor[i * unknowns + j];
    }
  }
  const { rows } = fit;
  // From here on with every coordinate, those that are held as well: in another datum they are not.
  fillRows(
    observations,
    xy,
    Int32Array.from({ length: size }, (_, k) => k),
    rows,
  );
  const redundancy = Float64Array.from(observations, (_, i) => {
    const share = 1 - rowCovariance(rows, i, i, covariance, size);
    return share < LEAST_REDUNDANCY ? 0 : share;
  });
  return {
    xy,
    covariance,
    rows,
    redundancy,
    squareSum: fit.squareSum,
    degreesOfFreedom: readings - unknowns,
  };
}

/** Covariance of two adjusted readings, each over its deviation as read. */
export function rowCovariance(
  { width, columns, slopes }: WeightedRows,
  i: number,
  j: number,
  covariance: Float64Array,
  size: number,
): number {
  let sum = 0;
  for (let p = i * width; p < (i + 1) * width; p++) {
    if (columns[p] < 0) continue;
    const row = columns[p] * size;
    for (let q = j * width; q < (j + 1) * width; q++) {
      if (columns[q] >= 0) sum += slopes[p] * slopes[q] * covariance[row + columns[q]];
    }
  }
  return sum;
}
