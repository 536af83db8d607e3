import type { CornerNode, CornerSetting } from './corner-spare-node.js';

/** A stretch of headings over which d of each side is convex in u, or concave in u, throughout. */
export interface Piece {
  readonly left: CornerNode;
  readonly right: CornerNode;
}

/** What is surely reached all over a piece, and at which share of it to look next. */
export interface Bound {
  low: number;
  split: number;
}

/** A bound from below for spare(alpha) all over a piece: the best of those of the single functions (corner-spare-node.ts). */
export function lowerBound(setting: CornerSetting, { left, right }: Piece, bound: Bound): void {
  const width = right.x - left.x;
  bound.low = Number.NEGATIVE_INFINITY;
  bound.split = 0.5;
  raise(bound, left.v1, left.d1, right.v1, right.d1, width);
  raise(bound, left.v2, left.d2, right.v2, right.d2, width);
  raise(bound, left.vA, left.dA, right.vA, right.dA, right.uA - left.uA);
  raise(bound, left.vB, left.dB, right.vB, right.dB, right.uB - left.uB);
  if (left.mx !== 0 || left.my !== 0) raiseByDisc(setting, bound, left.mx, left.my, left, right);
  if (right.mx !== 0 || right.my !== 0) raiseByDisc(setting, bound, right.mx, right.my, left, right);
  // No bottom of one function in sight: two functions that cross, perhaps.
  if (bound.split === 0.5) bound.split = crossingOf(left, right);
}

/**
 * By one function that is convex or concave, by its values and slopes at both ends. If it falls at first and rises at last it is convex and lies above the two
 * tangents; otherwise it is monotone or concave and nowhere lower than at its lower end.
 */
function raise(bound: Bound, v0: number, d0: number, v1: number, d1: number, width: number): void {
  const dips = d0 < 0 && d1 > 0;
  const low = dips ? v0 + (d0 * (v1 - v0 - d1 * width)) / (d0 - d1) : Math.min(v0, v1);
  if (low <= bound.low) return;
  bound.low = low;
  bound.split = dips ? Math.min(0.9, Math.max(0.1, d0 / (d0 - d1))) : 0.5;
}

/** d(m) for the fixed m of a disc that touches at one end of the piece; convex if no side of K turns through m on the way. */
function raiseByDisc(
  { a, b, p, q, r, cg, sg }: CornerSetting,
  bound: Bound,
  mx: number,
  my: number,
  left: CornerNode,
  right: CornerNode,
): void {
  const ux0 = Math.cos(left.x);
  const uy0 = Math.sin(left.x);
  const ux1 = Math.cos(right.x);
  const uy1 = Math.sin(right.x);
  const end0 = mx * ux0 + my * uy0;
  const end1 = mx * ux1 + my * uy1;
  const side0 = my * ux0 - mx * uy0;
  const side1 = my * ux1 - mx * uy1;
  if (p > 0 && end0 * end1 <= 0) return;
  if (q > 0 && side0 * side1 <= 0) return;
  const l1 = (mx * cg + my * sg) / sg;
  const l2 = mx / sg;
  const pe = p * Math.sign(end0);
  const qs = q * Math.sign(side0);
  const all = l1 + l2;
  raise(
    bound,
    ((l1 * (a + left.v1) + l2 * (b + left.v2)) / 2 - pe * end0 - qs * side0 - r) / all,
    ((l1 * left.d1 + l2 * left.d2) / 2 - pe * side0 + qs * end0) / all,
    ((l1 * (a + right.v1) + l2 * (b + right.v2)) / 2 - pe * end1 - qs * side1 - r) / all,
    ((l1 * right.d1 + l2 * right.d2) / 2 - pe * side1 + qs * end1) / all,
    right.x - left.x,
  );
}

/** Where the chords of the two functions that lead at either end meet, as a share of the piece. */
function crossingOf(left: CornerNode, right: CornerNode): number {
  const leads = leader(left);
  const trails = leader(right);
  if (leads === trails) return 0.5;
  const ahead = figure(left, leads) - figure(left, trails);
  const behind = figure(right, trails) - figure(right, leads);
  const share = ahead / (ahead + behind);
  return share > 0.1 ? Math.min(0.9, share) : 0.1;
}

function figure(node: CornerNode, i: number): number {
  return i === 0 ? node.v1 : i === 1 ? node.v2 : i === 2 ? node.vA : node.vB;
}

function leader(node: CornerNode): number {
  let best = 0;
  for (let i = 1; i < 4; i++) if (figure(node, i) > figure(node, best)) best = i;
  return best;
}
