import type { PlanShape } from './plan-shape.js';

/**
 * A convex shape K = rectangle + disc that touches both outer walls of a corner, at one heading alpha: see corner-spare.ts for the theorem. Here
 * spare(alpha) is written as the largest of a few functions of which the second derivative has a known sign, so that its least value
 * over an interval is bounded below by tangents and chords, not by samples.
 *
 * Separating direction m = (cos f, sin f), f in [g - pi/2, pi/2], written as l1 n1 + l2 n2 (n1, n2 the outer walls' inward normals), l1 = m.e2 / sin g,
 * l2 = m.e1 / sin g: the corner narrowed by d still leaves K free of the inner wedge by m iff
 *   l1 (a - d - h1) + l2 (b - d - h2) >= hK(m),   h1 = hK(n1), h2 = hK(n2) the support of K,
 * so d(m) = (l1 (a - h1) + l2 (b - h2) - hK(m)) / (l1 + l2), and spare(alpha) is the largest d(m). Scaled to l1 + l2 = 1 it is concave in m, so the
 * largest is at n1, at n2, at the normal of a side of K, or (disc only) where the disc about a corner of the rectangle touches the inner corner.
 *
 * - For fixed m (n1, n2, a touching disc) supports are concave in alpha between the headings where a side is parallel or square to m: d is convex.
 * - For the side normal, with s = sin(g/2), c = cos(g/2), u = tan(f - g/2), v = 1 + u^2, half extents of the rectangle hm along m and hp across, r the disc:
 *   d / s = (a - r)(c + u s)/sin g + (b - r)(c - u s)/sin g + (k s^2 - hm - r) sqrt v - k / sqrt v - hm T,   k = 2 hp / sin g,
 *   T = sqrt v where K touches both outer walls with the two ends of one side, 2 |u| / (sqrt v sin g) where it stands on a corner of the other side.
 *   v^(5/2) d'' is then a quadratic in u: the stretch is cut at its roots, and between them d is convex or concave in u.
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

/** A side of K whose normal m points into the wedge all over a stretch. */
export interface Side {
  /** Whether m is along the heading (an end of K) or square to it, and which way it points. */
  readonly along: boolean;
  readonly sign: number;
  /** Half extents of the rectangle along m and across it. */
  readonly hm: number;
  readonly hp: number;
  /** 0: T = sqrt v; else the sign of u in 2 |u| / (sqrt v sin g). */
  readonly stands: number;
}

export interface Stretch {
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
export interface CornerNode {
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

/** spare(alpha) at one heading, mm. */
export function spareAt(setting: CornerSetting, heading: number): number {
  return nodeAt(setting, stretchAt(setting, heading), heading).f;
}

export function stretchAt(setting: CornerSetting, heading: number): Stretch {
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

export function nodeAt(setting: CornerSetting, stretch: Stretch, x: number): CornerNode {
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
  const node: CornerNode = {
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
  node: CornerNode,
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
function discInto({ a, b, p, q, r, cg, sg }: CornerSetting, ux: number, uy: number, node: CornerNode): void {
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
