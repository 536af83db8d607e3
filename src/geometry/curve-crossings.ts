/**
 * Crossings of straight pieces and circles in flat arrays: the boundary of "at least so far from these shapes" is made of
 * both, so its corners are found here.
 */

/** Straight pieces run `length` from (x, y) along the unit vector (tx, ty); a circle has its centre there and `length` -1. */
export interface Curves {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly tx: Float64Array;
  readonly ty: Float64Array;
  readonly length: Float64Array;
}

/** Curves that miss each other by no more than this (mm) are taken to touch: far over rounding, far below anything measured. */
export const TOUCH = 1e-6;

/**
 * Where curves i and j cross, all circles having the same radius: up to two points as x, y, x, y in `out`; returns how many.
 * Touching counts, parallel pieces and equal circles have no crossing.
 */
export function curveCrossings(
  curves: Curves,
  i: number,
  j: number,
  radius: number,
  out: Float64Array,
): number {
  if (curves.length[i] >= 0) return straightCrossings(curves, i, curves, j, radius, out);
  if (curves.length[j] >= 0) return straightCrossings(curves, j, curves, i, radius, out);
  return circleCrossings(curves, i, j, radius, out);
}

/** Like {@link curveCrossings}, for straight piece i of `a` with curve j of `b`. */
export function straightCrossings(
  a: Curves,
  i: number,
  b: Curves,
  j: number,
  radius: number,
  out: Float64Array,
): number {
  const tx = a.tx[i];
  const ty = a.ty[i];
  const dx = b.x[j] - a.x[i];
  const dy = b.y[j] - a.y[i];
  const along = dx * tx + dy * ty;
  const aside = tx * dy - ty * dx;
  const end = a.length[i] + TOUCH;
  if (b.length[j] >= 0) {
    const sin = tx * b.ty[j] - ty * b.tx[j];
    const s = -aside / sin; // along b; infinite or NaN where parallel, and then refused below
    if (!(s >= -TOUCH && s <= b.length[j] + TOUCH)) return 0;
    const t = along + s * (tx * b.tx[j] + ty * b.ty[j]);
    if (!(t >= -TOUCH && t <= end)) return 0;
    out[0] = a.x[i] + t * tx;
    out[1] = a.y[i] + t * ty;
    return 1;
  }
  if (Math.abs(aside) > radius + TOUCH) return 0;
  const half = Math.sqrt(Math.max(0, radius * radius - aside * aside));
  let count = 0;
  for (let t = along - half; ; t = along + half) {
    if (t >= -TOUCH && t <= end) {
      out[2 * count] = a.x[i] + t * tx;
      out[2 * count + 1] = a.y[i] + t * ty;
      count++;
    }
    if (t === along + half) return count;
  }
}

function circleCrossings(curves: Curves, i: number, j: number, radius: number, out: Float64Array): number {
  const dx = curves.x[j] - curves.x[i];
  const dy = curves.y[j] - curves.y[i];
  const half = Math.hypot(dx, dy) / 2;
  if (half < TOUCH || half > radius + TOUCH) return 0;
  const height = Math.sqrt(Math.max(0, radius * radius - half * half)) / (2 * half);
  const mx = curves.x[i] + dx / 2;
  const my = curves.y[i] + dy / 2;
  out[0] = mx - dy * height;
  out[1] = my + dx * height;
  out[2] = mx + dy * height;
  out[3] = my - dx * height;
  return 2;
}
