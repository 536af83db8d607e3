import type { FeatureRows } from './feature-rows.js';

/**
 * The linear program of one box: the greatest t with tau_i t <= a_i + b_i.s for all rows and |s_j| <= 1. Any multipliers
 * l >= 0 with sum tau l = 1 prove t <= sum l a + sum_j |sum l b_j| (weak duality), whatever the arithmetic that found them,
 * so the bound is always recomputed from its multipliers.
 */
export interface BoxLp {
  /** Upper bound of t. -Infinity: no pose of the box meets the frame's rows. */
  bound: number;
  /** The best point that the program knows, in the box. */
  s0: number;
  s1: number;
  s2: number;
  /** t at that point, if the program was solved to its end. */
  t: number;
  /** Inverse of the 4 x 4 basis, row by row; its solution; what is in it; the entering column. */
  readonly inverse: Float64Array;
  readonly solution: Float64Array;
  readonly basis: Int32Array;
  readonly column: Float64Array;
}

const MOST_PIVOTS = 40;
/** Rows violated by less than this (mm) do not enter; nor does |s_j| <= 1 when passed by less than this share. */
const ROW_VIOLATION = 1e-7;
const SIDE_VIOLATION = 1e-9;
/** Weight (mm) of a violation of |s_j| <= 1 against one of a row. */
const SIDE_WEIGHT = 1e3;
/** Smallest element to divide by. */
const LEAST_PIVOT = 1e-11;
/** Share by which a proof of emptiness must succeed. */
const RAY_MARGIN = 1e-9;
const NONE = 0x7fffffff;

export function createBoxLp(): BoxLp {
  return {
    bound: 0.5,
    s0: 0.5,
    s1: 0.5,
    s2: 0.5,
    t: 0.5,
    inverse: new Float64Array(16),
    solution: new Float64Array(4),
    basis: new Int32Array(4),
    column: new Float64Array(4),
  };
}

/**
 * Revised simplex on the dual: rows (sum tau l = 1) and (-b_j.l + p_j - m_j = 0). It starts from the best single row, so its
 * value only falls, and it may stop at any pivot; it does once the value is at most `enough`. In the basis: i >= 0 row i,
 * -1 - j the multiplier of s_j <= 1, -4 - j that of s_j >= -1.
 */
export function solveBoxLp(lp: BoxLp, rows: FeatureRows, enough: number): void {
  const { a, b0, b1, b2, tau, count } = rows;
  const { inverse, solution, basis, column } = lp;
  let first = -1;
  let single = Number.POSITIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    const most = a[i] + Math.abs(b0[i]) + Math.abs(b1[i]) + Math.abs(b2[i]);
    if (tau[i] === 1 && most < single) {
      single = most;
      first = i;
    }
  }
  lp.bound = single;
  lp.t = single;
  lp.s0 = 0;
  lp.s1 = 0;
  lp.s2 = 0;
  if (first < 0) return;

  inverse.fill(0);
  basis[0] = first;
  solution[0] = 1;
  inverse[0] = 1;
  for (let j = 0; j < 3; j++) {
    const b = j === 0 ? b0[first] : j === 1 ? b1[first] : b2[first];
    const r = j + 1;
    basis[r] = b >= 0 ? -1 - j : -4 - j;
    solution[r] = Math.abs(b);
    inverse[4 * r] = Math.abs(b);
    inverse[4 * r + r] = b >= 0 ? 1 : -1;
  }

  let t = 0;
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  for (let pivot = 0; pivot < MOST_PIVOTS; pivot++) {
    t = 0;
    s0 = 0;
    s1 = 0;
    s2 = 0;
    let value = 0;
    for (let r = 0; r < 4; r++) {
      const cost = basis[r] >= 0 ? a[basis[r]] : 1;
      t += cost * inverse[4 * r];
      s0 += cost * inverse[4 * r + 1];
      s1 += cost * inverse[4 * r + 2];
      s2 += cost * inverse[4 * r + 3];
      value += cost * solution[r];
    }
    if (value <= enough) break;

    // Entering: what the point (t, s) violates most.
    let worst = -ROW_VIOLATION;
    let entering = NONE;
    for (let i = 0; i < count; i++) {
      const spare = a[i] + b0[i] * s0 + b1[i] * s1 + b2[i] * s2 - (tau[i] === 1 ? t : 0);
      if (spare < worst) {
        worst = spare;
        entering = i;
      }
    }
    for (let j = 0; j < 3; j++) {
      const s = j === 0 ? s0 : j === 1 ? s1 : s2;
      const spare = 1 - Math.abs(s);
      if (spare < -SIDE_VIOLATION && spare * SIDE_WEIGHT < worst) {
        worst = spare * SIDE_WEIGHT;
        entering = s > 0 ? -1 - j : -4 - j;
      }
    }
    if (entering === NONE) break;

    let c0 = 0;
    let c1 = 0;
    let c2 = 0;
    let c3 = 0;
    if (entering >= 0) {
      c0 = tau[entering];
      c1 = -b0[entering];
      c2 = -b1[entering];
      c3 = -b2[entering];
    } else {
      const sign = entering >= -3 ? 1 : -1;
      const j = entering >= -3 ? -1 - entering : -4 - entering;
      if (j === 0) c1 = sign;
      else if (j === 1) c2 = sign;
      else c3 = sign;
    }
    let step = Number.POSITIVE_INFINITY;
    let leaving = -1;
    for (let r = 0; r < 4; r++) {
      const d =
        inverse[4 * r] * c0 + inverse[4 * r + 1] * c1 + inverse[4 * r + 2] * c2 + inverse[4 * r + 3] * c3;
      column[r] = d;
      if (d > LEAST_PIVOT && solution[r] < step * d) {
        step = solution[r] / d;
        leaving = r;
      }
    }
    if (leaving < 0) {
      if (rayProvesEmpty(lp, rows, entering)) {
        lp.bound = Number.NEGATIVE_INFINITY;
        return;
      }
      break;
    }
    exchange(lp, leaving, entering, step);
  }

  lp.bound = Math.min(single, multipliersBound(lp, rows));
  lp.t = t;
  lp.s0 = Math.max(-1, Math.min(1, s0));
  lp.s1 = Math.max(-1, Math.min(1, s1));
  lp.s2 = Math.max(-1, Math.min(1, s2));
}

function exchange(lp: BoxLp, leaving: number, entering: number, step: number): void {
  const { inverse, solution, basis, column } = lp;
  const pivot = column[leaving];
  for (let r = 0; r < 4; r++) {
    const d = column[r];
    if (r === leaving || d === 0) continue;
    solution[r] = Math.max(solution[r] - step * d, 0);
    const f = d / pivot;
    for (let c = 0; c < 4; c++) inverse[4 * r + c] -= f * inverse[4 * leaving + c];
  }
  for (let c = 0; c < 4; c++) inverse[4 * leaving + c] /= pivot;
  solution[leaving] = step;
  basis[leaving] = entering;
}

/** The bound that the multipliers in the basis prove, from the rows themselves. */
function multipliersBound(lp: BoxLp, rows: FeatureRows): number {
  const { solution, basis } = lp;
  let sum = 0;
  let a = 0;
  let g0 = 0;
  let g1 = 0;
  let g2 = 0;
  for (let r = 0; r < 4; r++) {
    const i = basis[r];
    if (i < 0) continue;
    const l = solution[r];
    sum += l * rows.tau[i];
    a += l * rows.a[i];
    g0 += l * rows.b0[i];
    g1 += l * rows.b1[i];
    g2 += l * rows.b2[i];
  }
  return sum > 0 ? (a + Math.abs(g0) + Math.abs(g1) + Math.abs(g2)) / sum : Number.POSITIVE_INFINITY;
}

/**
 * An unbounded dual ray: multipliers l >= 0 with sum l a + sum_j |sum l b_j| < 0. Then no s of the box has a_i + b_i.s >= 0 for
 * all those rows, hence none with tau_i t <= a_i + b_i.s for a t >= 0. Negative multipliers left by rounding count as 0.
 */
function rayProvesEmpty(lp: BoxLp, rows: FeatureRows, entering: number): boolean {
  const { basis, column } = lp;
  let a = 0;
  let g0 = 0;
  let g1 = 0;
  let g2 = 0;
  let size = 0;
  for (let r = -1; r < 4; r++) {
    const i = r < 0 ? entering : basis[r];
    const l = r < 0 ? 1 : Math.max(-column[r], 0);
    if (i < 0 || l === 0) continue;
    a += l * rows.a[i];
    g0 += l * rows.b0[i];
    g1 += l * rows.b1[i];
    g2 += l * rows.b2[i];
    size += l * Math.abs(rows.a[i]);
  }
  return a + Math.abs(g0) + Math.abs(g1) + Math.abs(g2) < -RAY_MARGIN * (1 + size);
}
