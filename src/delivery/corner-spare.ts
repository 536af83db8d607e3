import { type ArcLow, arcLow } from './corner-spare-arc.js';
import { type CornerSetting, cornerSetting, spareAt } from './corner-spare-node.js';
import type { PlanShape } from './plan-shape.js';

/** Two strips that meet; frame as in passages.ts (`Corner`). Widths in mm, may be negative (nothing passes) or Infinity. */
export interface CornerPlan {
  readonly width: number;
  readonly widthAfter: number;
  /** g, between the outer walls, in (0, pi). */
  readonly angle: number;
}

export interface CornerSpareOptions {
  /**
   * Only these headings of the long axis are allowed (radians, from <= to, each at most pi long, apart from each other also modulo pi); default: all. An upright
   * corner at the foot of a stair uses it for the tilts that are allowed.
   */
  readonly headings?: readonly (readonly [from: number, to: number])[];
}

/** What is known of a shape in a corner. `atLeast` and `atMost` bracket the spare, mm; headings in radians. */
export interface CornerSpare {
  readonly atLeast: number;
  readonly atMost: number;
  /** The heading of the tightest moment. */
  readonly heading: number;
  /** The headings held in the first and in the second corridor; in between the heading runs evenly from one to the other (it may decrease). */
  readonly from: number;
  readonly to: number;
}

/**
 * By how much both widths of a corner can shrink at once so that a rectangle, or a rectangle grown by a disc, still passes by moving and turning
 * in the plane. Touching passes: the spare is then 0. The bracket is closed to about 2e-6 of the sizes (0.01 mm in a house) and proved both
 * ways, up to the rounding of doubles. `atLeast = -Infinity` where no heading is allowed.
 *
 * Why it is exact. Let C = cone(e1, e2). The free plane is C without I + int C. At heading alpha the centre must lie in c0(alpha) + C, with c0 where
 * K touches both outer walls, and outside the open set I + K + int C. That set is closed under adding C, so if a centre c0 + d (d in C) is free, all of
 * c0 + t d, 0 <= t <= 1, are free, and c0 first of all. So the free poses can be drawn back onto the curve (c0(alpha), alpha), alpha in
 * F = {alpha: K at c0(alpha) is free}, without leaving the free poses: two of them are joined iff their headings lie in one connected
 * part of F (a circle, pi round, as K is its own half turn). Poses far out in corridor i are free iff K is no wider across it than the corridor,
 * alpha in Ai, and Ai lies in F (slide in along the outer wall). Hence K passes iff a connected part of F meets A1 and A2: sliding, starting
 * sideways, both ways of turning, any angle g, and a proof of "blocked" as well.
 *
 * With F(d), Ai(d) for the corner narrowed by d (O and c0 stay, I draws back), spare = largest over arcs [x, y] of
 * min(s1(x), s2(y), min over the arc of spare(alpha)), si = width i - 2 hi. Since si is convex between the headings where K lies square to
 * corridor i (and spare(alpha) >= si), x and y can be taken at those, or at ends of what is allowed: a handful of arcs, each bounded by arcLow.
 */
export function cornerSpare(
  corner: CornerPlan,
  shape: PlanShape,
  options: CornerSpareOptions = {},
): CornerSpare {
  const setting = settingOf(corner, shape);
  let best: CornerSpare = {
    atLeast: Number.NEGATIVE_INFINITY,
    atMost: Number.NEGATIVE_INFINITY,
    heading: 0,
    from: 0,
    to: 0,
  };
  for (const chain of chainsOf(corner.angle, options.headings)) {
    const found = chainSpare(setting, chain, best.atLeast);
    const atMost = Math.max(best.atMost, found.atMost);
    best = found.atLeast > best.atLeast ? { ...found, atMost } : { ...best, atMost };
  }
  return best;
}

/** spare(alpha) of the theorem: by how much the corner can shrink so that K, touching both outer walls at this heading, is free. Widths finite. */
export function cornerSpareAt(corner: CornerPlan, shape: PlanShape, heading: number): number {
  return spareAt(cornerSetting(corner.width, corner.widthAfter, corner.angle, shape, 0), heading);
}

/** Share of all sizes to which brackets are closed: 0.01 mm in a house. */
const TOLERANCE = 1e-6;
const SAME_HEADING = 1e-12;

function settingOf({ width, widthAfter, angle }: CornerPlan, shape: PlanShape): CornerSetting {
  const reach = Math.hypot(shape.halfLength, shape.halfWidth) + shape.radius;
  // A corridor that much wider than the other lets K turn freely in it: wider still changes nothing for a way round.
  const a = Math.min(width, Math.abs(widthAfter) + 3 * reach);
  const b = Math.min(widthAfter, Math.abs(width) + 3 * reach);
  return cornerSetting(a, b, angle, shape, TOLERANCE * (Math.abs(a) + Math.abs(b) + 2 * reach));
}

/** Headings in order, at which paths may start and end; `closed`: the last is followed by the first, pi further on. */
interface Chain {
  readonly stops: readonly number[];
  readonly closed: boolean;
}

/** Headings at which a side of K is parallel to an outer wall, within [from, to), in order. */
export function squareHeadings(angle: number, from: number, to: number): number[] {
  const found: number[] = [];
  const quarter = Math.PI / 2;
  for (const base of [0, angle]) {
    for (let k = Math.ceil((from - base) / quarter - SAME_HEADING); base + k * quarter < to; k++)
      found.push(base + k * quarter);
  }
  found.sort((x, y) => x - y);
  return found.filter((x, i) => i === 0 || x - (found[i - 1] ?? x) > SAME_HEADING);
}

function chainsOf(angle: number, headings: CornerSpareOptions['headings']): Chain[] {
  const all = { stops: squareHeadings(angle, 0, Math.PI - SAME_HEADING), closed: true };
  if (headings === undefined) return [all];
  const chains: Chain[] = [];
  for (const [from, to] of headings) {
    if (to - from >= Math.PI - SAME_HEADING) return [all];
    const inner = squareHeadings(angle, from, to).filter(
      (x) => x > from + SAME_HEADING && x < to - SAME_HEADING,
    );
    chains.push({ stops: to > from ? [from, ...inner, to] : [from], closed: false });
  }
  return chains;
}

/** A path from stop i to stop j over the arcs after `first`, `count` of them, turning up or down. */
interface Path {
  readonly i: number;
  readonly j: number;
  readonly first: number;
  readonly count: number;
  readonly ends: number;
}

function chainSpare(setting: CornerSetting, { stops, closed }: Chain, worth: number): CornerSpare {
  const { a, b, g, p, q, r } = setting;
  const n = stops.length;
  const across = (angle: number): number =>
    2 * (p * Math.abs(exactSin(angle)) + q * Math.abs(exactCos(angle)) + r);
  const first = stops.map((x) => a - across(x));
  const second = stops.map((x) => b - across(x - g));
  const at = (list: readonly number[], i: number): number => list[i % n] ?? Number.NEGATIVE_INFINITY;
  const headingAt = (i: number): number => (stops[i % n] ?? 0) + Math.PI * Math.floor(i / n);

  const paths: Path[] = [];
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const ends = Math.min(at(first, i), at(second, j));
      if (i === j) paths.push({ i, j, first: i, count: 0, ends });
      else {
        // Turning down is the usual way round: the side that faces the inner corner passes it. Try it first.
        if (closed || j < i) paths.push({ i, j, first: j, count: (i - j + n) % n, ends });
        if (closed || j > i) paths.push({ i, j, first: i, count: (j - i + n) % n, ends });
      }
    }
  }
  // The most promising first; of equals one that need not turn.
  paths.sort((x, y) => y.ends - x.ends || Math.sign(x.count) - Math.sign(y.count));

  const ceiling = Math.min(Math.max(...first), Math.max(...second));
  const known: (ArcLow | undefined)[] = stops.map(() => undefined);
  let best: CornerSpare = {
    atLeast: Number.NEGATIVE_INFINITY,
    atMost: Number.NEGATIVE_INFINITY,
    heading: 0,
    from: 0,
    to: 0,
  };
  for (const path of paths) {
    const floor = Math.max(worth, best.atLeast);
    if (path.ends <= floor) {
      // Also the bound of all that follow.
      return { ...best, atMost: Math.max(best.atMost, path.ends) };
    }
    let atLeast = path.ends;
    let atMost = path.ends;
    let heading = headingAt(at(first, path.i) <= at(second, path.j) ? path.i : path.j);
    for (let k = path.first; k < path.first + path.count && atMost > floor; k++) {
      let arc = known[k % n];
      if (arc === undefined) {
        arc = arcLow(setting, headingAt(k % n), headingAt((k % n) + 1), floor, ceiling);
        known[k % n] = arc;
      }
      atLeast = Math.min(atLeast, arc.atLeast);
      if (arc.atMost < atMost) {
        atMost = arc.atMost;
        heading = arc.heading;
      }
    }
    const up = path.first === path.i;
    const last = headingAt(path.first + path.count);
    const [from, to] = up ? [headingAt(path.i), last] : [last, headingAt(path.j)];
    const most = Math.max(best.atMost, atMost);
    best = atLeast > best.atLeast ? { atLeast, atMost: most, heading, from, to } : { ...best, atMost: most };
  }
  return best;
}

/** Sine that is exact at multiples of pi / 2, so that a shape that just fits between the walls of a corridor does fit. */
function exactSin(angle: number): number {
  const sin = Math.sin(angle);
  if (Math.abs(sin) < 1e-14) return 0;
  return sin;
}

function exactCos(angle: number): number {
  const cos = Math.cos(angle);
  return Math.abs(cos) < 1e-14 ? 0 : cos;
}
