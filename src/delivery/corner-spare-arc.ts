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
  /** Half length, half width and disc of K. */
  readonly p: number;
  readonly q: number;
  readonly r: number;
  /** mm: how close the least value is to be bracketed. */
  readonly tolerance: number;
  /** Cosine and sine of g, and of g / 2. */
  readonly cg: number;
  readonly sg: number;
  readonly c: number;
  readonly s: number;
}

export function cornerSetting(
  a: number,
  b: number,
  g: number,
  { halfLength: p, halfWidth: q, radius: r }: PlanShape,
  tolerance: number,
): CornerSetting {
  const c = Math.cos(g / 2);
  const s = Math.sin(g / 2);
  return { a, b, g, p, q, r, tolerance, cg: Math.cos(g), sg: Math.sin(g), c, s };
}

export interface ArcLow {
  /** The least spare(alpha) of the stretch lies between the two. */
  readonly atLeast: number;
  readonly atMost: number;
  /** Where `atMost` is taken. */
  readonly heading: number;
}

/** A side of K whose normal m points into the wedge all over a stretch. */
interface Side {
  /** Whether m is along the heading (an end of K) or square to it, and which way it points. */
  readonly along: boolean;
  readonly sign: number;
  /** Half extents of the rectangle along m and across it. */
  readonly hm: number;
  readonly hp: number;
  /** 0: T = sqrt q; else the sign of u in 2 |u| / (sqrt q sin g). */
  readonly stands: number;
}

interface Stretch {
  /** At most two sides of a rectangle can point into the wedge at once. */
  readonly sideA: Side | null;
  readonly sideB: Side | null;
  /** Signs of sin and cos of alpha and of alpha - g all over the stretch. */
  readonly s1: number;
  readonly c1: number;
  readonly s2: number;
  readonly c2: number;
}

/** All figures at one heading x: spare f; d(n1), d(n2) and their slopes; for each side u, d and its slope in u; where a disc touches. */
interface Node {
  readonly x: number;
  f: number;
  readonly v1: number;
  readonly d1: number;
  readonly v2: number;
  readonly d2: number;
  uA: number;
  vA: number;
  dA: number;
  uB: number;
  vB: number;
  dB: number;
  /** m of the disc that touches, where that is what decides; else 0, 0. */
  mx: number;
  my: number;
}

interface Piece {
  readonly left: Node;
  readonly right: Node;
  /** Of each side: whether d is convex in u here. */
  readonly convexA: boolean;
  readonly convexB: boolean;
}

/** What is surely reached all over a piece, and at which share of it to look next. */
interface Bound {
  low: number;
  split: number;
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
  const bound: Bound = { low: 0, split: 0 };
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
    const { left, right, convexA, convexB } = piece;
    lowerBound(setting, piece, bound);
    const closed = bound.low >= ceiling || bound.low >= atMost - setting.tolerance;
    if (closed || right.x - left.x < LEAST_STEP || nodes >= MOST_NODES) {
      atLeast = Math.min(atLeast, bound.low);
      continue;
    }
    nodes++;
    const middle = nodeAt(setting, stretch, left.x + bound.split * (right.x - left.x));
    take(middle);
    stack.push({ left, right: middle, convexA, convexB }, { left: middle, right, convexA, convexB });
  }
  return { atLeast: Math.min(atLeast, atMost), atMost, heading };
}

/** spare(alpha) at one heading, mm. */
export function spareAt(setting: CornerSetting, heading: number): number {
  return nodeAt(setting, stretchAt(setting, heading), heading).f;
}

function stretchAt(setting: CornerSetting, heading: number): Stretch {
  const { g } = setting;
  const ux = Math.cos(heading);
  const uy = Math.sin(heading);
  const across = sideAt(setting, false, -uy, ux);
  const along = sideAt(setting, true, ux, uy);
  return {
    sideA: across ?? along,
    sideB: across === null ? null : along,
    s1: Math.sign(uy),
    c1: Math.sign(ux),
    s2: Math.sign(Math.sin(heading - g)),
    c2: Math.sign(Math.cos(heading - g)),
  };
}

function sideAt({ p, q, cg, sg }: CornerSetting, along: boolean, mx: number, my: number): Side | null {
  // m.e1 and m.e2 of one sign: m or -m points into the wedge.
  if (mx * (mx * cg + my * sg) <= 0) return null;
  const sign = mx > 0 ? 1 : -1;
  const stands = sign * my < 0 ? -1 : sign * (mx * sg - my * cg) < 0 ? 1 : 0;
  return { along, sign, hm: along ? p : q, hp: along ? q : p, stands };
}

function nodeAt(setting: CornerSetting, stretch: Stretch, x: number): Node {
  const { a, b, p, q, r, cg, sg } = setting;
  const { sideA, sideB } = stretch;
  const ux = Math.cos(x);
  const uy = Math.sin(x);
  const wx = ux * cg + uy * sg;
  const wy = uy * cg - ux * sg;
  const p1 = p * stretch.s1;
  const q1 = q * stretch.c1;
  const p2 = p * stretch.s2;
  const q2 = q * stretch.c2;
  const v1 = a - 2 * (p1 * uy + q1 * ux + r);
  const v2 = b - 2 * (p2 * wy + q2 * wx + r);
  const node: Node = {
    x,
    f: Math.max(v1, v2),
    v1,
    d1: -2 * (p1 * ux - q1 * uy),
    v2,
    d2: -2 * (p2 * wx - q2 * wy),
    uA: 0,
    vA: Number.NEGATIVE_INFINITY,
    dA: 0,
    uB: 0,
    vB: Number.NEGATIVE_INFINITY,
    dB: 0,
    mx: 0,
    my: 0,
  };
  if (sideA !== null) sideInto(setting, sideA, ux, uy, node, true);
  if (sideB !== null) sideInto(setting, sideB, ux, uy, node, false);
  if (r > 0) discInto(setting, ux, uy, node);
  return node;
}

/** d of a side and its slope in u. (co, si) is the side's normal seen from the middle of the wedge, u = si / co. */
function sideInto(
  { a, b, r, c, s, sg }: CornerSetting,
  { along, sign, hm, hp, stands }: Side,
  ux: number,
  uy: number,
  node: Node,
  first: boolean,
): void {
  const mx = sign * (along ? ux : -uy);
  const my = sign * (along ? uy : ux);
  const co = mx * c + my * s;
  const si = my * c - mx * s;
  const k = (2 * hp) / sg;
  const flat = stands === 0 ? 1 : 0;
  const edge = (2 * hm * stands) / sg;
  const top =
    ((a - r) * (c * co + s * si) + (b - r) * (c * co - s * si)) / sg -
    r -
    k * (co * co - s * s) -
    hm * (1 + flat) -
    edge * si * co;
  const slope = (a - b) / (2 * c) + (k * (s * s + co * co) - r - hm * (1 + flat)) * si - edge * co * co * co;
  const value = (s * top) / co;
  if (value > node.f) node.f = value;
  if (first) {
    node.uA = si / co;
    node.vA = value;
    node.dA = s * slope;
  } else {
    node.uB = si / co;
    node.vB = value;
    node.dB = s * slope;
  }
}

/**
 * Where the disc about a corner of the rectangle comes to touch the inner corner as the passage narrows, and by how much it has narrowed
 * then; counts only where the direction of touch is one in which that corner is foremost.
 */
function discInto({ a, b, p, q, r, cg, sg }: CornerSetting, ux: number, uy: number, node: Node): void {
  // From the centre of K to the inner corner, which draws back along (vx, 1) by 1 in each width.
  const iy = (a + node.v1) / 2;
  const ix = ((b + node.v2) / 2 + iy * cg) / sg;
  const vx = (1 + cg) / sg;
  const vv = vx * vx + 1;
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
    if (spare <= node.f || mx < 0 || mx * cg + my * sg < 0) continue;
    if (p > 0 && atEnd * (mx * ux + my * uy) < 0) continue;
    if (q > 0 && atSide * (my * ux - mx * uy) < 0) continue;
    node.f = spare;
    node.mx = mx;
    node.my = my;
  }
}

/** [from, to] cut where a side's d changes from convex to concave in u. */
function cutPieces(setting: CornerSetting, stretch: Stretch, from: number, to: number): Piece[] {
  const { sideA, sideB } = stretch;
  const left = nodeAt(setting, stretch, from);
  const right = nodeAt(setting, stretch, to);
  const cuts: number[] = [];
  if (sideA !== null) bendsInto(setting, sideA, left.uA, right.uA, from, cuts);
  if (sideB !== null) bendsInto(setting, sideB, left.uB, right.uB, from, cuts);
  cuts.sort((x, y) => x - y);
  const pieces: Piece[] = [];
  let before = left;
  for (let i = 0; i <= cuts.length; i++) {
    const cut = cuts[i];
    const node = cut === undefined ? right : nodeAt(setting, stretch, cut);
    pieces.push({
      left: before,
      right: node,
      convexA: sideA !== null && bend(setting, sideA, (before.uA + node.uA) / 2) >= 0,
      convexB: sideB !== null && bend(setting, sideB, (before.uB + node.uB) / 2) >= 0,
    });
    before = node;
  }
  return pieces;
}

/** The quadratic c0 + c1 u + c2 u^2 with the sign of d''. */
function bend(setting: CornerSetting, side: Side, u: number): number {
  const { c0, c1, c2 } = bendOf(setting, side);
  return c0 + u * (c1 + u * c2);
}

function bendOf({ r, s, sg }: CornerSetting, { hm, hp, stands }: Side) {
  const k = (2 * hp) / sg;
  const weight = r + hm * (stands === 0 ? 2 : 1);
  return { c0: k * (1 + s * s) - weight, c1: (6 * hm * stands) / sg, c2: k * (s * s - 2) - weight };
}

function bendsInto(
  setting: CornerSetting,
  side: Side,
  uFrom: number,
  uTo: number,
  from: number,
  cuts: number[],
): void {
  const { c0, c1, c2 } = bendOf(setting, side);
  const root = c1 * c1 - 4 * c0 * c2;
  if (root <= 0) return;
  for (const sign of [-1, 1]) {
    const u = (-c1 + sign * Math.sqrt(root)) / (2 * c2);
    if (u > uFrom && u < uTo) cuts.push(from + Math.atan(u) - Math.atan(uFrom));
  }
}

function lowerBound(setting: CornerSetting, { left, right, convexA, convexB }: Piece, bound: Bound): void {
  const width = right.x - left.x;
  bound.low = Number.NEGATIVE_INFINITY;
  bound.split = 0.5;
  raise(bound, left.v1, left.d1, right.v1, right.d1, width);
  raise(bound, left.v2, left.d2, right.v2, right.d2, width);
  if (convexA) raise(bound, left.vA, left.dA, right.vA, right.dA, right.uA - left.uA);
  else raiseFlat(bound, left.vA, right.vA);
  if (convexB) raise(bound, left.vB, left.dB, right.vB, right.dB, right.uB - left.uB);
  else raiseFlat(bound, left.vB, right.vB);
  if (left.mx !== 0 || left.my !== 0) raiseByDisc(setting, bound, left.mx, left.my, left, right);
  if (right.mx !== 0 || right.my !== 0) raiseByDisc(setting, bound, right.mx, right.my, left, right);
  // No bottom of one function in sight: two functions that cross, perhaps.
  if (bound.split === 0.5) bound.split = crossingOf(left, right);
}

/** A concave function is nowhere lower than at its lower end. */
function raiseFlat(bound: Bound, v0: number, v1: number): void {
  const low = Math.min(v0, v1);
  if (low <= bound.low) return;
  bound.low = low;
  bound.split = 0.5;
}

/** A convex function lies above the two tangents at its ends. */
function raise(bound: Bound, v0: number, d0: number, v1: number, d1: number, width: number): void {
  if (d0 < 0 && d1 > 0) {
    const low = v0 + (d0 * (v1 - v0 - d1 * width)) / (d0 - d1);
    if (low <= bound.low) return;
    bound.low = low;
    bound.split = Math.min(0.9, Math.max(0.1, d0 / (d0 - d1)));
  } else raiseFlat(bound, v0, v1);
}

/** d(m) for the fixed m of a disc that touches at one end of the piece; convex if no side of K turns through m on the way. */
function raiseByDisc(
  { a, b, p, q, r, cg, sg }: CornerSetting,
  bound: Bound,
  mx: number,
  my: number,
  left: Node,
  right: Node,
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
function crossingOf(left: Node, right: Node): number {
  const leads = leader(left);
  const trails = leader(right);
  if (leads === trails) return 0.5;
  const ahead = figure(left, leads) - figure(left, trails);
  const behind = figure(right, trails) - figure(right, leads);
  const share = ahead / (ahead + behind);
  return share > 0.1 ? Math.min(0.9, share) : 0.1;
}

function figure(node: Node, i: number): number {
  return i === 0 ? node.v1 : i === 1 ? node.v2 : i === 2 ? node.vA : node.vB;
}

function leader(node: Node): number {
  let best = 0;
  for (let i = 1; i < 4; i++) if (figure(node, i) > figure(node, best)) best = i;
  return best;
}
