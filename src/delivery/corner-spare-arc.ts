import type { PlanShape } from './plan-shape.js';

/**
 * One smooth stretch of headings of a convex shape K = rectangle + disc in the corner of a heading: see corner-spare.ts for the theorem. Here
 * spare(alpha) is told as the largest of a few functions of which the second derivative has a known sign, so that its least value
 * over an interval is bounded below by tangents and chords, not by samples.
 *
 * Separating direction m = (cos f, sin f), f in [g - pi/2, pi/2], written as l1 n1 + l2 n2 (n1, n2 the outer walls' inward normals), l1 = m.e2 / sin g,
 * l2 = m.e1 / sin g: the corner narrowed by d still leaves K free of the inner wedge by m iff
 *   l1 (a - d - h1) + l2 (b - d - h2) >= hK(m),   h1 = hK(n1), h2 = hK(n2) the support of K,
 * so d(m) = (l1 (a - h1) + l2 (b - h2) - hK(m)) / (l1 + l2), and spare(alpha) is the largest d(m). Scaled to l1 + l2 = 1 it is concave in m, so the
 * largest is at n1, at n2, at the normal of a side of K, or (disc only) where the disc about a corner of the rectangle touches the inner corner.
 *
 * - For fixed m (n1, n2, a touching disc) supports are concave in alpha between the headings where a side is parallel or square to m: d is convex.
 * - For the side normal, with s = sin(g/2), c = cos(g/2), u = tan(f - g/2), q = 1 + u^2, half extents of the rectangle hm along m and hp across, r the disc:
 *   d / s = (a - r)(c + u s)/sin g + (b - r)(c - u s)/sin g + (k s^2 - hm - r) sqrt q - k / sqrt q - hm T,   k = 2 hp / sin g,
 *   T = sqrt q where K touches both outer walls with the two ends of one side, 2 |u| / (sqrt q sin g) where it stands on a corner of the other side.
 *   q^(5/2) d'' is then a quadratic in u: the stretch is cut at its roots, and between them d is convex or concave in u.
 */
export interface CornerSetting {
  /** Clear widths, finite. */
  readonly a: number;
  readonly b: number;
  readonly g: number;
  readonly shape: PlanShape;
  /** mm: how close the least value is to be bracketed. */
  readonly tolerance: number;
}

export interface ArcLow {
  /** The least spare(alpha) of the stretch lies between the two. */
  readonly atLeast: number;
  readonly atMost: number;
  /** Where `atMost` is taken. */
  readonly heading: number;
}

/** spare(alpha) at a heading where sides of K may be parallel to walls: the larger of the widths left over is a valid figure there. */
interface Side {
  /** f - alpha - (0 or pi): m is this far ahead of the heading, with its sign. */
  readonly along: boolean;
  readonly sign: number;
  /** Half extents of the rectangle along m and across it. */
  readonly hm: number;
  readonly hp: number;
  /** 0: T = sqrt q; else the sign of u in 2 |u| / (sqrt q sin g). */
  readonly stands: number;
}

interface Stretch {
  readonly sides: readonly Side[];
  readonly signs: readonly [number, number, number, number];
}

interface Node {
  readonly x: number;
  readonly f: number;
  readonly v1: number;
  readonly d1: number;
  readonly v2: number;
  readonly d2: number;
  readonly tangents: readonly Tangent[];
  readonly cap: Cap | null;
}

/** Value and slope of a side's d at u. */
interface Tangent {
  readonly u: number;
  readonly v: number;
  readonly d: number;
}

/** The direction in which a disc touches the inner corner. */
interface Cap {
  readonly mx: number;
  readonly my: number;
}

interface Piece {
  readonly left: Node;
  readonly right: Node;
  /** Of each side: whether d is convex in u here. */
  readonly convex: readonly boolean[];
}

const MOST_NODES = 400;
const LEAST_STEP = 1e-9;

/**
 * The least spare(alpha) over [from, to], in which no side of K is parallel to an outer wall except at the ends. Stops as soon as it is
 * surely at most `floor` (then `atLeast` is -Infinity) and does not look closer where it is surely at least `ceiling`.
 */
export function arcLow(
  setting: CornerSetting,
  from: number,
  to: number,
  floor: number,
  ceiling: number,
): ArcLow {
  const stretch = stretchAt(setting, (from + to) / 2);
  const stack = cutPieces(setting, stretch, from, to);
  let atMost = Number.POSITIVE_INFINITY;
  let heading = from;
  const take = (node: Node): void => {
    if (node.f < atMost) {
      atMost = node.f;
      heading = node.x;
    }
  };
  for (const { left, right } of stack) {
    take(left);
    take(right);
  }
  let atLeast = Number.POSITIVE_INFINITY;
  let nodes = 0;
  for (let piece = stack.pop(); piece !== undefined; piece = stack.pop()) {
    if (atMost <= floor) return { atLeast: Number.NEGATIVE_INFINITY, atMost, heading };
    const bound = lowerBound(setting, piece);
    const { left, right, convex } = piece;
    if (
      bound.low >= Math.min(ceiling, atMost - setting.tolerance) ||
      right.x - left.x < LEAST_STEP ||
      nodes >= MOST_NODES
    ) {
      atLeast = Math.min(atLeast, bound.low);
      continue;
    }
    nodes++;
    const middle = nodeAt(setting, stretch, left.x + bound.split * (right.x - left.x));
    take(middle);
    stack.push({ left, right: middle, convex }, { left: middle, right, convex });
  }
  return { atLeast: Math.min(atLeast, atMost), atMost, heading };
}

/** spare(alpha) at one heading, mm. */
export function spareAt(setting: CornerSetting, heading: number): number {
  return nodeAt(setting, stretchAt(setting, heading), heading).f;
}

function stretchAt({ g, shape }: CornerSetting, heading: number): Stretch {
  const { halfLength: p, halfWidth: q } = shape;
  const ux = Math.cos(heading);
  const uy = Math.sin(heading);
  const vx = Math.cos(heading - g);
  const vy = Math.sin(heading - g);
  const sides: Side[] = [];
  for (const along of [false, true]) {
    const mx = along ? ux : -uy;
    const my = along ? uy : ux;
    // m.e1 and m.e2 of one sign: m or -m points into the wedge.
    const toSecond = mx * Math.cos(g) + my * Math.sin(g);
    if (mx * toSecond <= 0) continue;
    const sign = mx > 0 ? 1 : -1;
    const toNormals = [sign * my, sign * (mx * Math.sin(g) - my * Math.cos(g))] as const;
    const stands = toNormals[0] < 0 ? -1 : toNormals[1] < 0 ? 1 : 0;
    sides.push({ along, sign, hm: along ? p : q, hp: along ? q : p, stands });
  }
  return { sides, signs: [Math.sign(uy), Math.sign(ux), Math.sign(vy), Math.sign(vx)] };
}

function nodeAt(setting: CornerSetting, stretch: Stretch, x: number): Node {
  const { a, b, g, shape } = setting;
  const { halfLength: p, halfWidth: q, radius: r } = shape;
  const { signs, sides } = stretch;
  const ux = Math.cos(x);
  const uy = Math.sin(x);
  const cg = Math.cos(g);
  const sg = Math.sin(g);
  const wx = ux * cg + uy * sg;
  const wy = uy * cg - ux * sg;
  const h1 = p * signs[0] * uy + q * signs[1] * ux + r;
  const h2 = p * signs[2] * wy + q * signs[3] * wx + r;
  const v1 = a - 2 * h1;
  const v2 = b - 2 * h2;
  let f = Math.max(v1, v2);
  const c = Math.cos(g / 2);
  const s = Math.sin(g / 2);
  const tangents: Tangent[] = [];
  for (const side of sides) {
    const mx = side.sign * (side.along ? ux : -uy);
    const my = side.sign * (side.along ? uy : ux);
    const tangent = sideTangent(setting, side, mx * c + my * s, my * c - mx * s, c, s);
    if (tangent.v > f) f = tangent.v;
    tangents.push(tangent);
  }
  let cap: Cap | null = null;
  if (r > 0) {
    const touch = touchOfDisc(setting, ux, uy, h1, h2);
    if (touch !== null && touch.spare > f) {
      f = touch.spare;
      cap = touch;
    }
  }
  return {
    x,
    f,
    v1,
    d1: -2 * (p * signs[0] * ux - q * signs[1] * uy),
    v2,
    d2: -2 * (p * signs[2] * wx - q * signs[3] * wy),
    tangents,
    cap,
  };
}

/** d and its slope in u, for a side whose normal is (co, si) seen from the middle of the wedge: u = si / co. */
function sideTangent(
  { a, b, shape: { radius } }: CornerSetting,
  { hm, hp, stands }: Side,
  co: number,
  si: number,
  c: number,
  s: number,
): Tangent {
  const sg = 2 * s * c;
  const k = (2 * hp) / sg;
  const a1 = a - radius;
  const b1 = b - radius;
  const top =
    (a1 * (c * co + s * si) + b1 * (c * co - s * si)) / sg -
    hm -
    radius -
    k * (co * co - s * s) -
    (stands === 0 ? hm : (2 * hm * stands * si * co) / sg);
  const weight = hm + radius + (stands === 0 ? hm : 0);
  const slope =
    (a1 - b1) / (2 * c) +
    (k * s * s - weight) * si +
    k * si * co * co -
    (stands === 0 ? 0 : (2 * hm * stands * co * co * co) / sg);
  return { u: si / co, v: (s * top) / co, d: s * slope };
}

/** Where the disc about a corner of the rectangle comes to touch the inner corner as the passage narrows, and by how much it has narrowed then. */
function touchOfDisc(
  { a, b, g, shape }: CornerSetting,
  ux: number,
  uy: number,
  h1: number,
  h2: number,
): (Cap & { readonly spare: number }) | null {
  const { halfLength: p, halfWidth: q, radius: r } = shape;
  const cg = Math.cos(g);
  const sg = Math.sin(g);
  // From the centre of K to the inner corner, which draws back along (vx, 1) by 1 in each width.
  const ix = (b - h2 + (a - h1) * cg) / sg;
  const iy = a - h1;
  const vx = (1 + cg) / sg;
  const vv = vx * vx + 1;
  let best: (Cap & { readonly spare: number }) | null = null;
  for (let corner = 0; corner < 4; corner++) {
    const atEnd = (corner & 1) === 0 ? 1 : -1;
    const atSide = (corner & 2) === 0 ? 1 : -1;
    const dx = ix - p * atEnd * ux + q * atSide * uy;
    const dy = iy - p * atEnd * uy - q * atSide * ux;
    const dv = dx * vx + dy;
    const root = dv * dv - vv * (dx * dx + dy * dy - r * r);
    if (root < 0) continue;
    const spare = (dv - Math.sqrt(root)) / vv;
    const mx = (dx - spare * vx) / r;
    const my = (dy - spare) / r;
    if (mx < 0 || mx * cg + my * sg < 0) continue;
    if (p > 0 && atEnd * (mx * ux + my * uy) < 0) continue;
    if (q > 0 && atSide * (my * ux - mx * uy) < 0) continue;
    if (best === null || spare > best.spare) best = { mx, my, spare };
  }
  return best;
}

/** [from, to] cut where a side's d changes from convex to concave in u. */
function cutPieces(setting: CornerSetting, stretch: Stretch, from: number, to: number): Piece[] {
  const { g, shape } = setting;
  const s = Math.sin(g / 2);
  const sg = Math.sin(g);
  const cuts = [from, to];
  const signOf: ((u: number) => number)[] = [];
  const left = nodeAt(setting, stretch, from);
  const right = nodeAt(setting, stretch, to);
  for (const [i, { hm, hp, stands }] of stretch.sides.entries()) {
    const k = (2 * hp) / sg;
    const weight = hm + shape.radius + (stands === 0 ? hm : 0);
    const c0 = k * (1 + s * s) - weight;
    const c1 = stands === 0 ? 0 : (6 * hm * stands) / sg;
    const c2 = k * (s * s - 2) - weight;
    signOf.push((u) => c0 + u * (c1 + u * c2));
    const start = left.tangents[i];
    const root = c1 * c1 - 4 * c0 * c2;
    if (start === undefined || root <= 0) continue;
    for (const sign of [-1, 1]) {
      const cut = from + Math.atan((-c1 + sign * Math.sqrt(root)) / (2 * c2)) - Math.atan(start.u);
      if (cut > from + LEAST_STEP && cut < to - LEAST_STEP) cuts.push(cut);
    }
  }
  cuts.sort((x, y) => x - y);
  const pieces: Piece[] = [];
  let before = left;
  for (let i = 1; i < cuts.length; i++) {
    const at = cuts[i] ?? to;
    const node = i === cuts.length - 1 ? right : nodeAt(setting, stretch, at);
    const convex = signOf.map((sign, k) => {
      const u0 = before.tangents[k]?.u ?? 0;
      const u1 = node.tangents[k]?.u ?? 0;
      return sign((u0 + u1) / 2) >= 0;
    });
    pieces.push({ left: before, right: node, convex });
    before = node;
  }
  return pieces;
}

/** What spare(alpha) surely reaches all over a piece, and at which share of it to look next. */
function lowerBound(setting: CornerSetting, { left, right, convex }: Piece): { low: number; split: number } {
  const width = right.x - left.x;
  const best = { low: Number.NEGATIVE_INFINITY, split: 0.5 };
  raise(best, left.v1, left.d1, right.v1, right.d1, width);
  raise(best, left.v2, left.d2, right.v2, right.d2, width);
  for (let i = 0; i < left.tangents.length; i++) {
    const from = left.tangents[i];
    const to = right.tangents[i];
    if (from === undefined || to === undefined) continue;
    if (convex[i] === true) raise(best, from.v, from.d, to.v, to.d, to.u - from.u);
    else if (Math.min(from.v, to.v) > best.low) {
      best.low = Math.min(from.v, to.v);
      best.split = 0.5;
    }
  }
  for (const { cap } of [left, right]) {
    if (cap !== null) raiseByCap(setting, best, cap, left, right);
  }
  // Two functions that cross: look where the chords of the two that lead at the ends meet.
  if (best.split === 0.5) best.split = crossingOf(left, right);
  return best;
}

/** A convex function lies above the two tangents at its ends. */
function raise(
  best: { low: number; split: number },
  v0: number,
  d0: number,
  v1: number,
  d1: number,
  width: number,
): void {
  let low = Math.min(v0, v1);
  let split = 0.5;
  if (d0 < 0 && d1 > 0) {
    low = Math.min(low, v0 + (d0 * (v1 - v0 - d1 * width)) / (d0 - d1));
    split = Math.min(0.9, Math.max(0.1, d0 / (d0 - d1)));
  }
  if (low > best.low) {
    best.low = low;
    best.split = split;
  }
}

function raiseByCap(
  { a, b, g, shape }: CornerSetting,
  best: { low: number; split: number },
  { mx, my }: Cap,
  left: Node,
  right: Node,
): void {
  const { halfLength: p, halfWidth: q, radius: r } = shape;
  const l1 = (mx * Math.cos(g) + my * Math.sin(g)) / Math.sin(g);
  const l2 = mx / Math.sin(g);
  const value = (node: Node): readonly [v: number, d: number, end: number, side: number] => {
    const along = mx * Math.cos(node.x) + my * Math.sin(node.x);
    const across = my * Math.cos(node.x) - mx * Math.sin(node.x);
    const end = Math.sign(along);
    const side = Math.sign(across);
    const support = p * Math.abs(along) + q * Math.abs(across) + r;
    const v = (l1 * (a + node.v1)) / 2 + (l2 * (b + node.v2)) / 2 - support;
    const d = (l1 * node.d1) / 2 + (l2 * node.d2) / 2 - p * end * across + q * side * along;
    return [v / (l1 + l2), d / (l1 + l2), end, side];
  };
  const from = value(left);
  const to = value(right);
  if (from[2] !== to[2] || (q > 0 && from[3] !== to[3])) return;
  raise(best, from[0], from[1], to[0], to[1], right.x - left.x);
}

function crossingOf(left: Node, right: Node): number {
  const at = (node: Node, i: number): number =>
    i === 0 ? node.v1 : i === 1 ? node.v2 : (node.tangents[i - 2]?.v ?? Number.NEGATIVE_INFINITY);
  const count = 2 + left.tangents.length;
  let leads = 0;
  let trails = 0;
  for (let i = 1; i < count; i++) {
    if (at(left, i) > at(left, leads)) leads = i;
    if (at(right, i) > at(right, trails)) trails = i;
  }
  if (leads === trails) return 0.5;
  const ahead = at(left, leads) - at(left, trails);
  const behind = at(right, trails) - at(right, leads);
  return Math.min(0.9, Math.max(0.1, ahead / (ahead + behind)));
}
