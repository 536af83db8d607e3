import type { PlanPose, PlanShape } from '../../src/delivery/plan-shape.js';
import type { Point, Ring } from '../../src/geometry/types.js';

/**
 * The slow obvious check: corners of the shape and of the ring, and their sides, pair by pair. No shared code with the library.
 * How far the shape is from the ring's sides, mm; 0 where it meets one or does not lie inside.
 */
export function distanceInside(ring: Ring, shape: PlanShape, pose: PlanPose): number {
  const box = cornersOf(shape, pose);
  if (!isInside(ring, [pose.x, pose.y])) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const [a, b] of sides(ring)) {
    if (isWithin(shape, pose, a) || isWithin(shape, pose, b)) return 0;
    for (const [c, d] of sides(box)) least = Math.min(least, segmentDistance(a, b, c, d));
  }
  return Math.max(0, least - shape.radius);
}

/** The least of that along a way, at moments so close that no point of the shape moves more than `step` mm between two. */
export function distanceAlong(
  ring: Ring,
  shape: PlanShape,
  poses: readonly PlanPose[],
  step: number,
): number {
  const reach = Math.hypot(shape.halfLength, shape.halfWidth) + shape.radius;
  let least = distanceInside(ring, shape, poses[0]);
  for (let i = 1; i < poses.length; i++) {
    const [a, b] = [poses[i - 1], poses[i]];
    const moved = Math.hypot(b.x - a.x, b.y - a.y) + reach * Math.abs(b.heading - a.heading);
    const count = Math.ceil(moved / step);
    for (let k = 1; k <= count; k++) {
      const t = k / count;
      const pose = {
        x: a.x + t * (b.x - a.x),
        y: a.y + t * (b.y - a.y),
        heading: a.heading + t * (b.heading - a.heading),
      };
      least = Math.min(least, distanceInside(ring, shape, pose));
    }
  }
  return least;
}

export function cornersOf({ halfLength, halfWidth }: PlanShape, { x, y, heading }: PlanPose): Ring {
  const [c, s] = [Math.cos(heading), Math.sin(heading)];
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([i, k]): Point => {
    const [u, v] = [i * halfLength, k * halfWidth];
    return [x + u * c - v * s, y + u * s + v * c];
  });
}

/** Distance of two convex anticlockwise rings, mm; 0 where they meet. */
export function ringGap(one: Ring, other: Ring): number {
  if (isInside(one, other[0]) || isInside(other, one[0])) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const [a, b] of sides(one))
    for (const [c, d] of sides(other)) least = Math.min(least, segmentDistance(a, b, c, d));
  return least;
}

function isWithin(
  { halfLength, halfWidth }: PlanShape,
  { x, y, heading }: PlanPose,
  [px, py]: Point,
): boolean {
  const u = (px - x) * Math.cos(heading) + (py - y) * Math.sin(heading);
  const v = (py - y) * Math.cos(heading) - (px - x) * Math.sin(heading);
  return Math.abs(u) < halfLength && Math.abs(v) < halfWidth;
}

function isInside(ring: Ring, [x, y]: Point): boolean {
  let inside = false;
  for (const [[ax, ay], [bx, by]] of sides(ring)) {
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  }
  return inside;
}

function sides(ring: Ring): [Point, Point][] {
  return ring.map((a, i) => [a, ring[(i + 1) % ring.length]]);
}

function segmentDistance(a: Point, b: Point, c: Point, d: Point): number {
  const side = (p: Point, q: Point, r: Point): number =>
    (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return 0;
  return Math.min(
    pointDistance(a, c, d),
    pointDistance(b, c, d),
    pointDistance(c, a, b),
    pointDistance(d, a, b),
  );
}

function pointDistance(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square;
  const share = Math.min(1, Math.max(0, t));
  return Math.hypot(p[0] - a[0] - share * dx, p[1] - a[1] - share * dy);
}
