import { gaussRule, normalTail } from './tape-statistics.js';

/** One end of a wall in the direction square to that wall: a * x + b * y of a corner's displacement. */
export interface WallEnd {
  /** Index of the corner. */
  readonly corner: number;
  readonly nx: number;
  readonly ny: number;
}

/** The two ends of each wall of the outline x, y, x, y, ... */
export function wallEnds(xy: Float64Array): WallEnd[] {
  const n = xy.length / 2;
  const ends: WallEnd[] = [];
  for (let i = 0; i < n; i++) {
    const next = i + 1 === n ? 0 : i + 1;
    const [dx, dy] = [xy[2 * next] - xy[2 * i], xy[2 * next + 1] - xy[2 * i + 1]];
    const length = Math.hypot(dx, dy);
    const [nx, ny] = [-dy / length, dx / length];
    ends.push({ corner: i, nx, ny }, { corner: next, nx, ny });
  }
  return ends;
}

/**
 * The covariance without the datum's share: of each corner's displacement after the true room was laid over the adjusted one
 * with the least sum of squares over all corners (an S-transformation onto the inner constraints). What a table needs does not
 * depend on where the room is put, and errors of a short first wall's direction do not grow across the room so.
 */
export function innerCovariance(xy: Float64Array, covariance: Float64Array): Float64Array {
  const size = xy.length;
  const n = size / 2;
  let [cx, cy] = [0, 0];
  for (let i = 0; i < n; i++) {
    cx += xy[2 * i] / n;
    cy += xy[2 * i + 1] / n;
  }
  // Shifts along x and y and a turn about the middle: orthonormal.
  const moves = [new Float64Array(size), new Float64Array(size), new Float64Array(size)];
  let turn = 0;
  for (let i = 0; i < n; i++) {
    const [x, y] = [xy[2 * i] - cx, xy[2 * i + 1] - cy];
    moves[0][2 * i] = 1 / Math.sqrt(n);
    moves[1][2 * i + 1] = 1 / Math.sqrt(n);
    moves[2][2 * i] = -y;
    moves[2][2 * i + 1] = x;
    turn += x * x + y * y;
  }
  for (let k = 0; k < size; k++) moves[2][k] /= Math.sqrt(turn);

  const out = Float64Array.from(covariance);
  for (const move of moves) {
    // (I - m m^T) C (I - m m^T), one move after the other.
    const product = new Float64Array(size);
    let both = 0;
    for (let i = 0; i < size; i++) {
      let sum = 0;
      for (let j = 0; j < size; j++) sum += out[i * size + j] * move[j];
      product[i] = sum;
      both += sum * move[i];
    }
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < size; j++) {
        out[i * size + j] += both * move[i] * move[j] - product[i] * move[j] - move[i] * product[j];
      }
    }
  }
  return out;
}

/** Covariance of the displacements of two ends. */
export function endCovariance(a: WallEnd, b: WallEnd, covariance: Float64Array, size: number): number {
  const at = 2 * a.corner * size + 2 * b.corner;
  return (
    a.nx * (covariance[at] * b.nx + covariance[at + 1] * b.ny) +
    a.ny * (covariance[at + size] * b.nx + covariance[at + size + 1] * b.ny)
  );
}

/**
 * The factor k for which all walls keep within k times the greater deviation of their two ends at once, with at least the
 * confidence.
 *
 * The chance that any end leaves its band is at most the sum of their chances less those of pairs along a spanning tree of all
 * ends (Hunter 1976, Worsley 1982): ends that move together are hardly counted twice. The tree takes the pairs with the greatest
 * chances, and each is taken low (one of its two signs, the correlation cut under 1), so the factor errs to the
 * safe side; for normal errors and to first order in them.
 */
export function simultaneousFactor(
  ends: readonly WallEnd[],
  deviations: Float64Array,
  covariance: Float64Array,
  size: number,
  confidence: number,
): number {
  // How many times its own deviation each end may move, over k.
  const reach = Float64Array.from(deviations, (deviation, e) => {
    const other = deviations[e ^ 1];
    return deviation > 0 ? Math.max(1, other / deviation) : Number.POSITIVE_INFINITY;
  });
  const pairs = pairTails(bestTree(ends, deviations, reach, covariance, size), reach);
  const allowed = Math.log(1 - confidence);
  // The logarithm of the chance falls and is (all but) concave in k, so Newton's steps come from the safe side.
  let k = FIRST_FACTOR;
  for (let step = 0; step < MOST_STEPS; step++) {
    const { chance, slope } = failing(k, reach, pairs);
    if (!(chance > 0)) break;
    const change = (chance * (allowed - Math.log(chance))) / slope;
    k = Math.max(k + change, LEAST_FACTOR);
    if (Math.abs(change) < FACTOR_GAP) break;
  }
  // Always one step on, so that it does not hang on last bits whether the end is safe already.
  do k += FACTOR_GAP;
  while (failing(k, reach, pairs).chance > 1 - confidence);
  return k;
}

const FIRST_FACTOR = 3;
const LEAST_FACTOR = 1;
const MOST_STEPS = 60;
const FACTOR_GAP = 1e-5;
/** Correlations are cut to this, which takes the chance of a pair low. */
const MOST_CORRELATION = 1 - 1e-9;

/** Chances of pairs: the product of two tails, and the sum of weight * exp(-k^2 * rate). */
interface PairTails {
  /** The other end of each end's pair, -1 for none. */
  readonly others: Int32Array;
  readonly weights: Float64Array;
  readonly rates: Float64Array;
}

type Rule = readonly (readonly [node: number, weight: number])[];

const PAIR_POINTS = 20;
const ROUGH_POINTS = 4;

/**
 * P(X > a k, Y > b k) of each pair: P(X > a k) P(Y > b k) and the integral of the density at (a k, b k) over the correlation, from
 * 0 to rho = sin t (Plackett 1954), which is smooth in t. Pairs with the one beyond its band above and the other below are left
 * out: a low estimate.
 */
function pairTails(partners: readonly Partner[], reach: Float64Array): PairTails {
  const rule = gaussRule(PAIR_POINTS);
  const hung = partners.filter(({ end }) => end >= 0).length;
  const weights = new Float64Array(hung * rule.length);
  const rates = new Float64Array(hung * rule.length);
  let at = 0;
  partners.forEach(({ end, correlation }, e) => {
    if (end < 0) return;
    const last = Math.asin(correlation);
    for (const [node, weight] of rule) {
      weights[at] = (weight * last) / (2 * Math.PI);
      rates[at] = pairRate(reach[e], reach[end], Math.sin(last * node));
      at++;
    }
  });
  return { others: Int32Array.from(partners, ({ end }) => end), weights, rates };
}

function pairRate(a: number, b: number, s: number): number {
  return (a * a + b * b - 2 * a * b * s) / (2 * (1 - s * s));
}

/** The same chance of one pair at one k, roughly: enough to choose pairs by. */
function roughPairTail(a: number, b: number, correlation: number, k: number, rule: Rule): number {
  const last = Math.asin(correlation);
  let sum = 0;
  for (let p = 0; p < rule.length; p++) {
    sum += rule[p][1] * Math.exp(-k * k * pairRate(a, b, Math.sin(last * rule[p][0])));
  }
  return sum * last;
}

/** Hunter's bound on the chance that any end goes beyond k times its reach, and its derivative by k. */
function failing(
  k: number,
  reach: Float64Array,
  { others, weights, rates }: PairTails,
): { readonly chance: number; readonly slope: number } {
  const tails = reach.map((r) => (r === Number.POSITIVE_INFINITY ? 0 : normalTail(k * r)));
  const slopes = reach.map((r) =>
    r === Number.POSITIVE_INFINITY ? 0 : -r * Math.exp((-k * k * r * r) / 2) * INVERSE_ROOT_TAU,
  );
  let chance = 0;
  let slope = 0;
  for (let e = 0; e < reach.length; e++) {
    chance += tails[e];
    slope += slopes[e];
    const other = others[e];
    if (other < 0) continue;
    chance -= tails[e] * tails[other];
    slope -= slopes[e] * tails[other] + tails[e] * slopes[other];
  }
  for (let p = 0; p < weights.length; p++) {
    const part = weights[p] * Math.exp(-k * k * rates[p]);
    chance -= part;
    slope += 2 * k * rates[p] * part;
  }
  // Above and below alike.
  return { chance: 2 * chance, slope: 2 * slope };
}

const INVERSE_ROOT_TAU = 1 / Math.sqrt(2 * Math.PI);

interface Partner {
  /** Index of the end that this one hangs on in the tree, -1 for the first. */
  readonly end: number;
  readonly correlation: number;
}

/**
 * The spanning tree of the ends whose pairs gain most, by Prim's algorithm with rough gains: any tree makes a true bound. Ends that
 * do not move are left out.
 */
function bestTree(
  ends: readonly WallEnd[],
  deviations: Float64Array,
  reach: Float64Array,
  covariance: Float64Array,
  size: number,
): Partner[] {
  const count = ends.length;
  const rule = gaussRule(ROUGH_POINTS);
  const partners: Partner[] = ends.map(() => ({ end: -1, correlation: 0 }));
  const best = new Float64Array(count).fill(-1);
  const correlations = new Float64Array(count);
  const via = new Int32Array(count).fill(-1);
  const open = Array.from({ length: count }, (_, e) => deviations[e] > 0);
  for (let round = 0; round < count; round++) {
    let next = -1;
    for (let e = 0; e < count; e++) if (open[e] && (next < 0 || best[e] > best[next])) next = e;
    if (next < 0) break;
    open[next] = false;
    if (via[next] >= 0) partners[next] = { end: via[next], correlation: correlations[next] };
    for (let e = 0; e < count; e++) {
      if (!open[e]) continue;
      const together = Math.abs(endCovariance(ends[next], ends[e], covariance, size));
      const correlation = Math.min(together / (deviations[next] * deviations[e]), MOST_CORRELATION);
      const gain = roughPairTail(reach[next], reach[e], correlation, FIRST_FACTOR, rule);
      if (gain > best[e]) {
        best[e] = gain;
        correlations[e] = correlation;
        via[e] = next;
      }
    }
  }
  return partners;
}
