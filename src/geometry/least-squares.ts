import { factorCholesky, invertCholesky, solveCholesky } from './cholesky.js';

/** The equations of a fit at one place, each divided by the standard deviation of its reading. */
export interface WeightedRows {
  /** Most unknowns in one row. */
  readonly width: number;
  /** Unknowns of each row, `width` to a row; -1 where there are fewer. */
  readonly columns: Int32Array;
  /** Derivative of the computed reading by that unknown, over the deviation. */
  readonly slopes: Float64Array;
  /** Reading less computed reading, over the deviation. */
  readonly misfits: Float64Array;
}

/** Readings as functions of unknowns. */
export interface FitModel {
  readonly unknowns: number;
  readonly readings: number;
  /** Most unknowns that one reading depends on. */
  readonly width: number;
  /** Fills the rows at the unknowns `x`. */
  linearize(x: Float64Array, rows: WeightedRows): void;
}

export interface Fit {
  readonly x: Float64Array;
  /** At `x`. */
  readonly rows: WeightedRows;
  /** Inverse of the normal matrix at `x`, row by row: the covariance of the unknowns where the deviations are right. */
  readonly cofactor: Float64Array;
  /** Sum of the squared weighted misfits. */
  readonly squareSum: number;
  readonly iterations: number;
}

/** Steps, and halvings of one step, before a fit is given up. Good starts take 3 to 8 steps; contradictory readings take tens. */
const MOST_STEPS = 200;
const MOST_HALVINGS = 30;
/**
 * How near to the end is near enough, in standard deviations of the unknowns: a millionth of what the readings can tell; of
 * what their misfits show, where these are greater than their deviations.
 */
const LAST_STEP = 1e-6;
/** A step that is all rounding. */
const NO_STEP = 1e-9;
/** The sum of squares is known to this share of it, and to this: near the end a right step changes it by less. */
const SUM_SHARE = 1e-12;
const SUM_ROUNDING = 1e-16;

/**
 * The unknowns with the least sum of squared weighted misfits, by Gauss-Newton steps from `start`, each halved until the sum
 * falls. The length of a step is measured by the normal matrix N itself: sqrt(d^T N d) standard deviations. Steps that go on
 * shrinking at the rate of the last two leave length * rate / (1 - rate) to go: the fit ends with the step after which that is
 * under a millionth of a standard deviation (or with one that is all rounding). `undetermined`: some unknown does not change any reading.
 */
export function fitLeastSquares(
  model: FitModel,
  start: Float64Array,
): Fit | 'undetermined' | 'does-not-converge' {
  const n = model.unknowns;
  let rows = emptyRows(model);
  let trialRows = emptyRows(model);
  let x = Float64Array.from(start);
  let trial = new Float64Array(n);
  const normal = new Float64Array(n * n);
  const step = new Float64Array(n);
  model.linearize(x, rows);
  let squareSum = sumOfSquares(rows.misfits);
  let lastLength = Number.POSITIVE_INFINITY;

  for (let iterations = 1; iterations <= MOST_STEPS; iterations++) {
    fillNormal(rows, model.readings, normal, step, n);
    let decrease = 0;
    const gradient = Float64Array.from(step);
    if (factorCholesky(normal, n) >= 0) return 'undetermined';
    solveCholesky(normal, n, step);
    for (let i = 0; i < n; i++) decrease += gradient[i] * step[i];
    const length = Math.sqrt(Math.max(0, decrease));
    if (!Number.isFinite(length)) return 'does-not-converge';
    const enough = LAST_STEP * Math.max(1, Math.sqrt(squareSum / model.readings));
    // Of the first step nothing is known.
    const rate = iterations === 1 ? 1 : length / lastLength;
    if (length <= NO_STEP || (rate < 1 && (length * rate) / (1 - rate) <= enough)) {
      for (let i = 0; i < n; i++) x[i] += step[i];
      model.linearize(x, rows);
      squareSum = sumOfSquares(rows.misfits);
      fillNormal(rows, model.readings, normal, step, n);
      if (factorCholesky(normal, n) >= 0) return 'undetermined';
      return { x, rows, cofactor: invertCholesky(normal, n), squareSum, iterations };
    }

    let share = 1;
    const most = squareSum * (1 + SUM_SHARE) + SUM_ROUNDING;
    let trialSum = Number.POSITIVE_INFINITY;
    for (let halvings = 0; halvings <= MOST_HALVINGS; halvings++) {
      for (let i = 0; i < n; i++) trial[i] = x[i] + share * step[i];
      model.linearize(trial, trialRows);
      trialSum = sumOfSquares(trialRows.misfits);
      if (trialSum <= most) break;
      share /= 2;
    }
    if (!(trialSum <= most)) return 'does-not-converge';
    [x, trial] = [trial, x];
    [rows, trialRows] = [trialRows, rows];
    squareSum = trialSum;
    lastLength = length;
  }
  return 'does-not-converge';
}

function emptyRows({ readings, width }: FitModel): WeightedRows {
  return {
    width,
    columns: new Int32Array(readings * width).fill(-1),
    slopes: new Float64Array(readings * width),
    misfits: new Float64Array(readings),
  };
}

function sumOfSquares(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i] * values[i];
  return sum;
}

/** Lower half of A^T A, and A^T misfits. */
function fillNormal(
  { width, columns, slopes, misfits }: WeightedRows,
  readings: number,
  normal: Float64Array,
  right: Float64Array,
  n: number,
): void {
  normal.fill(0);
  right.fill(0);
  for (let r = 0; r < readings; r++) {
    const first = r * width;
    for (let p = first; p < first + width; p++) {
      const i = columns[p];
      if (i < 0) continue;
      const slope = slopes[p];
      right[i] += slope * misfits[r];
      for (let q = first; q < first + width; q++) {
        const j = columns[q];
        if (j >= 0 && j <= i) normal[i * n + j] += slope * slopes[q];
      }
    }
  }
}
