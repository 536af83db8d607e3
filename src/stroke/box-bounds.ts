/**
 * Intervals over a box of shots: what plan directions, points and distances can be, seen from any ball of the box along any
 * ray of the box. All bounds are certified up to rounding; {@link LENGTH_SLACK} and {@link ANGLE_SLACK} cover the rounding.
 */

/** Balls u +- halfU, v +- halfV (mm, table's frame) with directions phi +- halfPhi (radians, halfPhi <= pi). */
export interface ShotBox {
  readonly u: number;
  readonly v: number;
  readonly phi: number;
  readonly halfU: number;
  readonly halfV: number;
  readonly halfPhi: number;
}

/**
 * Added to every plan distance on the side that proves less, mm. Coordinates are under 1e5 mm, so a distance carries at most a
 * few times 1e5 * 2^-53 = 1e-11 mm of rounding, and a quotient by a cosine above 1e-4 (a smaller one puts anything in front of
 * the ball out of reach) at most 1e-7 mm.
 */
export const LENGTH_SLACK = 1e-7;

/**
 * Added to every elevation on the side that proves less, radians. An arc sine or cosine amplifies rounding near its end only,
 * where LENGTH_SLACK (relative 1e-11 or more) moves the elevation by more than a rounding of 2^-53 can.
 */
export const ANGLE_SLACK = 1e-10;

/** An interval that functions write into, so that inner loops allocate nothing. */
export interface Range {
  lo: number;
  hi: number;
}

/** A box made ready: the centre's direction, the half angle and how far the balls reach along and across all its rays. */
export interface BoxFrame {
  u: number;
  v: number;
  halfU: number;
  halfV: number;
  cos: number;
  sin: number;
  cosHalf: number;
  sinHalf: number;
  /** Half extent of the ball rectangle along any ray of the box, and square to it. */
  extentAlong: number;
  extentAcross: number;
  /** The point that {@link seePoint} looked at, over all balls and rays of the box: along the ray and to its left. */
  readonly along: Range;
  readonly across: Range;
}

export function boxFrame(): BoxFrame {
  return {
    u: 0,
    v: 0,
    halfU: 0,
    halfV: 0,
    cos: 1,
    sin: 0,
    cosHalf: 1,
    sinHalf: 0,
    extentAlong: 0,
    extentAcross: 0,
    along: { lo: 0, hi: 0 },
    across: { lo: 0, hi: 0 },
  };
}

export function setBox(frame: BoxFrame, box: ShotBox): void {
  const half = Math.min(box.halfPhi, Math.PI);
  frame.u = box.u;
  frame.v = box.v;
  frame.halfU = box.halfU;
  frame.halfV = box.halfV;
  frame.cos = Math.cos(box.phi);
  frame.sin = Math.sin(box.phi);
  frame.cosHalf = Math.cos(half);
  frame.sinHalf = Math.sin(half);
  const cosMost = mostAbsolute(frame, frame.cos, frame.sin);
  const sinMost = mostAbsolute(frame, frame.sin, frame.cos);
  frame.extentAlong = cosMost * box.halfU + sinMost * box.halfV;
  frame.extentAcross = sinMost * box.halfU + cosMost * box.halfV;
}

/**
 * Greatest of m . u over the box's directions u, for a unit vector m with c = m . u0 and s = |m x u0| at the centre's direction.
 *
 * With m at the angle psi from u0 it is cos(max(0, psi - half)); psi <= half exactly where c >= cos(half).
 */
export function greatestDot(frame: BoxFrame, c: number, s: number): number {
  return c >= frame.cosHalf ? 1 : c * frame.cosHalf + Math.abs(s) * frame.sinHalf;
}

/** Least of m . u, likewise: cos(min(pi, psi + half)). */
export function leastDot(frame: BoxFrame, c: number, s: number): number {
  return -c >= frame.cosHalf ? -1 : c * frame.cosHalf - Math.abs(s) * frame.sinHalf;
}

function mostAbsolute(frame: BoxFrame, c: number, s: number): number {
  return Math.max(greatestDot(frame, c, s), -leastDot(frame, c, s));
}

/** Half extent of the ball rectangle along the unit vector (mx, my). */
export function extentOf(frame: BoxFrame, mx: number, my: number): number {
  return Math.abs(mx) * frame.halfU + Math.abs(my) * frame.halfV;
}

/**
 * Where the point (x, y) can lie relative to the box's rays: sets `frame.along` and `frame.across`, outward by LENGTH_SLACK.
 *
 * From the centre ball the point has polar angle psi to the ray, whose cosine and sine change as in {@link greatestDot}; other
 * balls move it by at most their extents.
 */
export function seePoint(frame: BoxFrame, x: number, y: number): void {
  const dx = x - frame.u;
  const dy = y - frame.v;
  const a = dx * frame.cos + dy * frame.sin;
  const l = dy * frame.cos - dx * frame.sin;
  const far = Math.sqrt(a * a + l * l);
  const edge = far * frame.cosHalf;
  const turnedA = Math.abs(l) * frame.sinHalf;
  const turnedL = Math.abs(a) * frame.sinHalf;
  const alongPad = frame.extentAlong + LENGTH_SLACK;
  const acrossPad = frame.extentAcross + LENGTH_SLACK;
  const { along, across } = frame;
  along.hi = (a >= edge ? far : a * frame.cosHalf + turnedA) + alongPad;
  along.lo = (-a >= edge ? -far : a * frame.cosHalf - turnedA) - alongPad;
  across.hi = (l >= edge ? far : l * frame.cosHalf + turnedL) + acrossPad;
  across.lo = (-l >= edge ? -far : l * frame.cosHalf - turnedL) - acrossPad;
}

/**
 * Where the rays of the box leave the rectangle |x| <= halfX, |y| <= halfY, which holds all its balls: plan distances, written
 * into `range`, outward by LENGTH_SLACK. `hi` is Infinity where no side is faced by every ray.
 */
export function exitRange(frame: BoxFrame, halfX: number, halfY: number, range: Range): void {
  range.lo = Infinity;
  range.hi = Infinity;
  exitSide(frame, frame.cos, frame.sin, halfX - frame.u, frame.halfU, range);
  exitSide(frame, -frame.cos, frame.sin, halfX + frame.u, frame.halfU, range);
  exitSide(frame, frame.sin, frame.cos, halfY - frame.v, frame.halfV, range);
  exitSide(frame, -frame.sin, frame.cos, halfY + frame.v, frame.halfV, range);
  range.lo -= LENGTH_SLACK;
  range.hi += LENGTH_SLACK;
}

function exitSide(frame: BoxFrame, c: number, s: number, distance: number, half: number, range: Range): void {
  const most = greatestDot(frame, c, s);
  if (most <= 0) return;
  const nearest = (distance - half) / most;
  if (nearest < range.lo) range.lo = nearest;
  const least = leastDot(frame, c, s);
  if (least <= 0) return;
  const farthest = (distance + half) / least;
  if (farthest < range.hi) range.hi = farthest;
}
