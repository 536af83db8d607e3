import type { Carried, Hold } from './carried.js';
import { type HoldFamily, heldHeight, holdAt, holdFamilies, holdRank, planLength } from './holds.js';

/**
 * Rectangles in rectangles, and boxes through straight holes: everything that is decided in the cross-section. All figures in mm and
 * exact up to rounding; touching fits.
 *
 * A box that is held at the tilt o and pushed straight leaves, in the section square to its way, a rectangle `across` x V(o) (it walks along its heading) or
 * P(o) x V(o) (it walks across it). Whatever limits it is linear in P and V with the signs that make it convex in o (both are
 * concave), so the largest of the least of a few such figures is taken at an end of the allowed tilts or where a figure of V meets one of P.
 */
export interface Straight {
  readonly width: number;
  readonly height: number;
  /** Floor beside the opening on the narrower of its two sides, mm; negative: the floor is narrower than the opening. */
  readonly left: number;
  readonly right: number;
  /** Floor before and behind it, square to the wall, the shallower of the two. */
  readonly depth: number;
}

/** A way straight through: `sideways` walks across the heading (a leaned box, its long edge first), else along it. */
export interface StraightWay {
  readonly spare: number;
  readonly hold: Hold;
  readonly sideways: boolean;
}

/** The best way straight through; null where no hold is allowed. Ways that are equally good: the earlier of flat, on edge, on end, leaned. */
export function bestStraight(hole: Straight, box: Carried): StraightWay | null {
  let best: StraightWay | null = null;
  for (const family of holdFamilies(box)) {
    for (const interval of family.tilts) {
      for (const sideways of [false, true]) {
        for (const tilt of worthTilts(hole, family, interval, sideways)) {
          const found = straightWay(hole, family, tilt, sideways);
          if (best === null || isBetter(box, found, best)) best = found;
        }
      }
    }
  }
  return best;
}

/** mm: less than this is no reason to tilt. */
const PREFERENCE = 1e-9;

function isBetter(box: Carried, one: StraightWay, other: StraightWay): boolean {
  if (Math.abs(one.spare - other.spare) > PREFERENCE) return one.spare > other.spare;
  return holdRank(box, one.hold) < holdRank(box, other.hold);
}

function straightWay(hole: Straight, family: HoldFamily, tilt: number, sideways: boolean): StraightWay {
  const tilted = { ...family, tilt };
  const upright = tilt >= Math.PI / 2;
  const length = upright ? family.up : planLength(tilted);
  const height = upright ? family.along : heldHeight(tilted);
  const wide = sideways ? length : family.across;
  const deep = sideways ? family.across : length;
  const spare = Math.min(spareBeside(hole, wide), hole.height - height, hole.depth - deep);
  const hold = holdAt(family, tilt);
  // A level hold may be written the other way round in plan.
  const turned = hold.tilt === 0 && hold.across !== family.across;
  return { spare, hold, sideways: sideways !== turned };
}

/**
 * By how much width, left and right can all shrink so that something `wide` still goes straight through: the opening loses delta, and as much again on each side
 * where the floor ends before the opening does. Each line is one of the four cases; all must hold.
 */
function spareBeside({ width, left, right }: Straight, wide: number): number {
  const over = width - wide;
  return Math.min(over, (over + left) / 2, (over + right) / 2, (over + left + right) / 3);
}

function worthTilts(
  { width, height, left, right, depth }: Straight,
  family: HoldFamily,
  [from, to]: readonly [number, number],
  sideways: boolean,
): readonly number[] {
  if (from === to) return [from];
  const tilts = [from, to];
  // height - V(o) = (room - P(o)) / share
  const meet = (room: number, share: number): void => {
    const { along, up } = family;
    tilts.push(
      ...solveTurn(along - share * up, up - share * along, room - share * height).filter(
        (o) => o > from && o < to,
      ),
    );
  };
  if (sideways) {
    meet(width, 1);
    meet(width + left, 2);
    meet(width + right, 2);
    meet(width + left + right, 3);
  } else meet(depth, 1);
  return tilts;
}

/** o in [0, pi / 2] with x cos o + y sin o = z. */
function solveTurn(x: number, y: number, z: number): readonly number[] {
  const reach = Math.hypot(x, y);
  if (!(Math.abs(z) <= reach) || reach === 0) return [];
  const middle = Math.atan2(y, x);
  const half = Math.acos(z / reach);
  return [middle - half, middle + half].filter((o) => o >= 0 && o <= Math.PI / 2);
}

/**
 * By how much the sides of an a x b rectangle can both shrink so that a p x q rectangle still fits, at any turn (negative: grow), mm. Carver's theorem
 * (AMM 64, 1957) solved for the margin: the best turn is none, a right angle, or the one at which as much is left over one way as the other,
 * (p - q)(cos t - sin t) = a - b.
 */
export function carverSpare(p: number, q: number, a: number, b: number): number {
  const [long, short] = [Math.max(p, q), Math.min(p, q)];
  let best = Math.max(Math.min(a - long, b - short), Math.min(a - short, b - long));
  for (const turn of solveTurn(long - short, short - long, a - b)) {
    const c = Math.cos(turn);
    const s = Math.sin(turn);
    best = Math.max(best, Math.min(a - long * c - short * s, b - long * s - short * c));
  }
  return best;
}

/**
 * Whether a p x q rectangle fits into an a x b one at any turn; touching fits. Carver's theorem: with p >= q, a >= b, iff q <= b and (p <= a or
 * b (p^2 + q^2) >= 2 p q a + (p^2 - q^2) sqrt(p^2 + q^2 - a^2)). Without q <= b it would put 10 x 10 into 8 x 8.
 */
export function carverFits(p: number, q: number, a: number, b: number): boolean {
  const [long, short] = [Math.max(p, q), Math.min(p, q)];
  const [wide, high] = [Math.max(a, b), Math.min(a, b)];
  if (short > high) return false;
  if (long <= wide) return true;
  const square = long * long + short * short;
  return (
    high * square >= 2 * long * short * wide + (long * long - short * short) * Math.sqrt(square - wide * wide)
  );
}

/**
 * For any motion through a hole of any depth: the most that both its sides can shrink before nothing passes. When the middle of the box is in the
 * plane of the hole, the plane cuts the box in a section through its middle. Each point of the plane within w / 2 of the middle is within l / 2 and w / 2
 * along the box's two longer edges, so the section holds the part of a disc of diameter w that lies in a strip of width h (the plane cuts the slab of the
 * thickness in a strip at least that wide). Turned by t in the hole, that lens is w wide across as long as t <= f = asin(h / w), and w cos(t - f) beyond. So
 * either one side of the hole is >= w and the other >= h, or acos(a / w) + acos(b / w) + 2 f <= pi / 2.
 */
export function sectionSpare({ w, h }: Pick<Carried, 'w' | 'h'>, a: number, b: number): number {
  const straight = Math.max(Math.min(a - w, b - h), Math.min(a - h, b - w));
  const least = Math.asin(h / w);
  const passes = (delta: number): boolean =>
    Math.acos(Math.min(1, (a - delta) / w)) + Math.acos(Math.min(1, (b - delta) / w)) + 2 * least <=
    Math.PI / 2;
  // Only where both sides are at most w; and neither may be less than h.
  let low = Math.max(straight, Math.max(a, b) - w);
  let high = Math.min(a, b) - h;
  if (low >= high || !passes(low)) return straight;
  if (passes(high)) return high;
  for (let step = 0; step < 60 && high - low > SECTION_TOLERANCE * w; step++) {
    const middle = (low + high) / 2;
    if (passes(middle)) low = middle;
    else high = middle;
  }
  return high;
}

/** Of w: how close the bound is brought to the formula, from above. */
const SECTION_TOLERANCE = 1e-9;

/**
 * The same for the ways in which the box may be held, and with them also exact in most cases. In a family, at the tilt o and whatever the heading, the section
 * by an upright plane through the middle is either as wide as P(o) and as high as V(o), or as wide as `across` and at least as high as the upright line through
 * the middle, min(up / cos o, along / sin o): it is the profile of the box drawn out by 1 / cos of the heading, cut off at `across` / sin of it.
 * -Infinity where no hold is allowed.
 */
export function heldSectionSpare(box: Carried, width: number, height: number): number {
  let best = Number.NEGATIVE_INFINITY;
  const hole = {
    width,
    height,
    left: Number.POSITIVE_INFINITY,
    right: Number.POSITIVE_INFINITY,
    depth: Number.POSITIVE_INFINITY,
  };
  for (const family of holdFamilies(box)) {
    const { along, across, up } = family;
    for (const interval of family.tilts) {
      for (const tilt of worthTilts(hole, family, interval, true)) {
        best = Math.max(best, straightWay(hole, family, tilt, true).spare);
        const line = Math.min(up / Math.cos(tilt), along / Math.sin(tilt));
        best = Math.max(best, Math.min(width - across, height - line));
      }
    }
  }
  return best;
}
