import { orient2d } from 'robust-predicates';
import type { Point, Ring } from './types.js';

/**
 * Every decision about a side outside the inner loops is made here. Signs are those of exact arithmetic on the given
 * doubles; they hold for coordinates whose differences lie between 1e-140 and 1e140, far beyond any room.
 */

/** -1, 0 or 1. */
export type Sign = -1 | 0 | 1;

/** Which way a -> b -> c turns in our frame (y up): 1 anticlockwise (c left of a -> b), -1 clockwise, 0 exactly in line. */
export function orientation(a: Point, b: Point, c: Point): Sign {
  return orientationXY(a[0], a[1], b[0], b[1], c[0], c[1]);
}

/** {@link orientation} on bare coordinates. */
export function orientationXY(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): Sign {
  // The dependency's sign is meant for y down: positive there is clockwise here.
  const turn = orient2d(ax, ay, bx, by, cx, cy);
  return turn < 0 ? 1 : turn > 0 ? -1 : 0;
}

/** Whether p lies on the segment from a to b, ends included, exactly. */
export function onSegment(a: Point, b: Point, p: Point): boolean {
  return inBox(a, b, p) && orientation(a, b, p) === 0;
}

/**
 * How two segments meet, exactly: `cross`: in one point inside both; `touch`: in one point that is an end of at least one;
 * `overlap`: along a stretch; `apart`: not at all. A segment may be a single point.
 */
export type SegmentContact = 'apart' | 'touch' | 'cross' | 'overlap';

/** See {@link SegmentContact}. */
export function segmentContact(a: Point, b: Point, c: Point, d: Point): SegmentContact {
  if (!boxesMeet(a, b, c, d)) return 'apart';
  const sideC = orientation(a, b, c);
  const sideD = orientation(a, b, d);
  if (sideC !== 0 && sideC === sideD) return 'apart';
  const sideA = orientation(c, d, a);
  const sideB = orientation(c, d, b);
  if (sideA !== 0 && sideA === sideB) return 'apart';
  if (sideA !== 0 && sideB !== 0 && sideC !== 0 && sideD !== 0) return 'cross';
  if (sideC === 0 && sideD === 0 && sideA === 0 && sideB === 0) return contactInLine(a, b, c, d);
  // Each pair of ends is on both sides of, or on, the other's line, and the lines differ: they meet in one point.
  return 'touch';
}

/** Whether two segments cross in one point inside both. Touching does not count. */
export function segmentsCross(a: Point, b: Point, c: Point, d: Point): boolean {
  return segmentContact(a, b, c, d) === 'cross';
}

/** Whether two segments share at least one point. Touching counts. */
export function segmentsMeet(a: Point, b: Point, c: Point, d: Point): boolean {
  return segmentContact(a, b, c, d) !== 'apart';
}

/** Where the point lies, exactly: 1 inside the ring, 0 on its boundary, -1 outside. The ring may run in either direction. */
export function pointInRing(ring: Ring, x: number, y: number): Sign {
  if (ring.length === 0) return -1;
  let inside = false;
  let [ax, ay] = ring[ring.length - 1];
  for (const [bx, by] of ring) {
    if (bx === x && by === y) return 0;
    if (ay > y !== by > y) {
      const side = orientationXY(ax, ay, bx, by, x, y);
      if (side === 0) return 0;
      // The horizontal ray to the right of the point meets this edge if the point is left of it as it climbs.
      if (side > 0 === by > ay) inside = !inside;
    } else if (ay === y && by === y && ax > x !== bx > x) {
      return 0;
    }
    ax = bx;
    ay = by;
  }
  return inside ? 1 : -1;
}

/** Whether the ring never turns clockwise, exactly. For a simple ring: whether it is convex and anticlockwise (or without area). */
export function turnsOnlyLeft(ring: Ring): boolean {
  const n = ring.length;
  for (let i = 0; i < n; i++) {
    if (orientation(ring[i], ring[(i + 1) % n], ring[(i + 2) % n]) < 0) return false;
  }
  return true;
}

/**
 * Whether the segment meets the inside of a convex anticlockwise ring, exactly. Touching the boundary does not count.
 *
 * Two convex sets in the plane are apart exactly if a line along an edge of one of them parts them, so it is enough to look
 * along the ring's edges and along the segment.
 */
export function segmentMeetsConvexInside(ring: Ring, a: Point, b: Point): boolean {
  let left = false;
  let right = false;
  for (let i = 0; i < ring.length; i++) {
    const p = ring[i];
    const q = ring[i + 1 === ring.length ? 0 : i + 1];
    if (orientation(p, q, a) <= 0 && orientation(p, q, b) <= 0) return false;
    const side = orientation(a, b, p);
    if (side > 0) left = true;
    if (side < 0) right = true;
  }
  return (left && right) || (a[0] === b[0] && a[1] === b[1]);
}

/** Contact of two segments on one line. */
function contactInLine(a: Point, b: Point, c: Point, d: Point): SegmentContact {
  // Order along the line by x, or by y where the line is upright.
  const axis = a[0] !== b[0] || c[0] !== d[0] ? 0 : 1;
  const from = Math.max(Math.min(a[axis], b[axis]), Math.min(c[axis], d[axis]));
  const to = Math.min(Math.max(a[axis], b[axis]), Math.max(c[axis], d[axis]));
  return from > to ? 'apart' : from === to ? 'touch' : 'overlap';
}

function boxesMeet(a: Point, b: Point, c: Point, d: Point): boolean {
  return (
    Math.min(a[0], b[0]) <= Math.max(c[0], d[0]) &&
    Math.min(c[0], d[0]) <= Math.max(a[0], b[0]) &&
    Math.min(a[1], b[1]) <= Math.max(c[1], d[1]) &&
    Math.min(c[1], d[1]) <= Math.max(a[1], b[1])
  );
}

function inBox(a: Point, b: Point, p: Point): boolean {
  return (
    Math.min(a[0], b[0]) <= p[0] &&
    p[0] <= Math.max(a[0], b[0]) &&
    Math.min(a[1], b[1]) <= p[1] &&
    p[1] <= Math.max(a[1], b[1])
  );
}
