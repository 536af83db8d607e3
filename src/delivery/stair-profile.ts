import type { Stair } from './passages.js';

/**
 * A stair in its upright plane (x along the way walked, z up), as passages.ts tells it. `drop`: how far the floor of the flight may lie below
 * the line of the nosings, upright: 0 where the line counts as solid.
 */
export interface StairProfile {
  readonly tan: number;
  readonly run: number;
  readonly headroom: number;
  readonly bottomHeight: number;
  readonly topHeight: number;
  readonly bottomDepth: number;
  readonly topDepth: number;
}

/** Half of the edges of a rectangle in the upright plane. */
export interface Slab {
  readonly halfAlong: number;
  readonly halfUp: number;
}

/** What of z is free at one x and tilt: the centre may lie in lo <= z <= hi; empty where lo > hi. `walls` is the room left to the end walls. */
export interface FreeHeight {
  lo: number;
  hi: number;
  walls: number;
}

/**
 * A flight longer than `longest` is cut to it: nothing changes along it while the whole slab is over it. What is put back is told by
 * `cut`, mm along x.
 */
export function stairProfile(stair: Stair, longest: number): { profile: StairProfile; cut: number } {
  const run = Math.min(stair.run, longest);
  const profile = {
    tan: Math.tan(stair.pitch),
    run,
    headroom: stair.headroom,
    bottomHeight: stair.bottom.height,
    topHeight: stair.top.height,
    bottomDepth: stair.bottom.depth,
    topDepth: stair.top.depth,
  };
  return { profile, cut: stair.run === Number.POSITIVE_INFINITY ? 0 : stair.run - run };
}

/** The line of the floor; over the flight lowered by `drop`, though nowhere below the floor at the foot. */
export function floorAt({ tan, run }: StairProfile, q: number, drop: number): number {
  if (q <= 0) return 0;
  return q < run ? Math.max(0, q * tan - drop) : run * tan;
}

/** The ceiling; where two of them meet, the lower one. */
export function ceilingAt(profile: StairProfile, q: number): number {
  const { tan, run, headroom, bottomHeight, topHeight } = profile;
  const flight = headroom + q * tan;
  if (q < 0) return bottomHeight;
  if (q > run) return run * tan + topHeight;
  if (q === 0) return Math.min(bottomHeight, flight);
  return q === run ? Math.min(flight, run * tan + topHeight) : flight;
}

/**
 * Where the centre of a slab at (x, tilt) may be in height. Exact: over the slab's width the floor less its lower side is linear between the
 * slab's corners and the breaks of the floor, and so is the ceiling less its upper side, so that only those count; in a jump the
 * higher floor and the lower ceiling.
 */
export function freeHeight(
  profile: StairProfile,
  { halfAlong, halfUp }: Slab,
  drop: number,
  x: number,
  tilt: number,
  into: FreeHeight,
): void {
  const c = Math.cos(tilt);
  const s = Math.sin(tilt);
  let lo = Number.NEGATIVE_INFINITY;
  let hi = Number.POSITIVE_INFINITY;
  for (let k = 0; k < 4; k++) {
    const a = k & 1 ? halfAlong : -halfAlong;
    const b = k & 2 ? halfUp : -halfUp;
    const vx = x + a * c - b * s;
    const vz = a * s + b * c;
    const floor = floorAt(profile, vx, drop) - vz;
    const ceiling = ceilingAt(profile, vx) - vz;
    if (floor > lo) lo = floor;
    if (ceiling < hi) hi = ceiling;
  }
  const half = halfAlong * Math.abs(c) + halfUp * Math.abs(s);
  const { run, tan } = profile;
  for (let k = 0; k < 2; k++) {
    const q = k === 0 ? 0 : run;
    const t = q - x;
    if (!(Math.abs(t) < half)) continue;
    lo = Math.max(lo, (k === 0 ? 0 : run * tan) - lowerSide(halfAlong, halfUp, c, s, t));
    hi = Math.min(hi, ceilingAt(profile, q) - upperSide(halfAlong, halfUp, c, s, t));
  }
  into.lo = lo;
  into.hi = hi;
  into.walls = Math.min(x - half + profile.bottomDepth, run + profile.topDepth - x - half);
}

/**
 * By how much every clear reading of the profile can shrink before the slab at (x, tilt) has no height left: the heights and the
 * depths all count 1 for 1, since only the ceilings and the end walls move.
 */
export function profileSpare(
  profile: StairProfile,
  slab: Slab,
  drop: number,
  x: number,
  tilt: number,
  scratch: FreeHeight,
): number {
  freeHeight(profile, slab, drop, x, tilt, scratch);
  return Math.min(scratch.hi - scratch.lo, scratch.walls);
}

/** z of the slab's upper side over the offset t from its centre. */
export function upperSide(halfAlong: number, halfUp: number, c: number, s: number, t: number): number {
  return -lowerSide(halfAlong, halfUp, c, s, -t);
}

/** z of the slab's lower side over the offset t from its centre: the higher of the two sides that bound it from below. */
export function lowerSide(halfAlong: number, halfUp: number, c: number, s: number, t: number): number {
  // |t c + z s| <= halfAlong and |z c - t s| <= halfUp.
  const byEnd =
    Math.abs(s) < 1e-12 ? Number.NEGATIVE_INFINITY : (-halfAlong - t * c * Math.sign(s)) / Math.abs(s);
  const bySide =
    Math.abs(c) < 1e-12 ? Number.NEGATIVE_INFINITY : (-halfUp + t * s * Math.sign(c)) / Math.abs(c);
  return Math.max(byEnd, bySide);
}
