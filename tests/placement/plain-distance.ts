import type { Placement, Point, Ring, Size } from '../../src/geometry/types.js';
import type { PlacementProblem } from '../../src/placement/placement-problem.js';

/**
 * The slow and obvious way to measure a placement, sharing no code with src: corner points, distances of segments to segments,
 * points in polygons.
 */

/** Corners of a rectangle at a pose. */
export function corners(size: Size, pose: Placement): Ring {
  const cos = Math.cos(pose.angle);
  const sin = Math.sin(pose.angle);
  const at = (u: number, v: number): Point => [pose.x + u * cos - v * sin, pose.y + u * sin + v * cos];
  const l = size.length / 2;
  const w = size.width / 2;
  return [at(-l, -w), at(l, -w), at(l, w), at(-l, w)];
}

/** Distance of Q to the walls and tall footprints; -1 where it overlaps one or lies outside. */
export function plainClearance(problem: PlacementProblem, pose: Placement): number {
  return freeDistance(problem.play, pose, problem.outline, problem.tall);
}

/** Distance of the frame to everything that stands; -1 where it overlaps something or lies outside. */
export function plainFrameDistance(problem: PlacementProblem, pose: Placement): number {
  return freeDistance(problem.frame, pose, problem.outline, [...problem.tall, ...problem.low]);
}

function freeDistance(size: Size, pose: Placement, outline: Ring, footprints: readonly Ring[]): number {
  const rectangle = corners(size, pose);
  const middle: Point = [pose.x, pose.y];
  if (!pointInside(outline, middle)) return -1;
  let least = Number.POSITIVE_INFINITY;
  for (const ring of [outline, ...footprints]) {
    if (ring !== outline && pointInside(ring, middle)) return -1;
    if (ring.some((corner) => pointInside(rectangle, corner))) return -1;
    for (const [a, b] of sides(ring)) {
      for (const [p, q] of sides(rectangle)) {
        const distance = segmentDistance(a, b, p, q);
        if (distance === 0) return -1;
        least = Math.min(least, distance);
      }
    }
  }
  return least;
}

export function sides(ring: Ring): [Point, Point][] {
  return ring.map((corner, i) => [corner, ring[(i + 1) % ring.length]]);
}

export function pointInside(ring: Ring, [x, y]: Point): boolean {
  let winding = 0;
  for (const [[ax, ay], [bx, by]] of sides(ring)) {
    const left = (bx - ax) * (y - ay) - (x - ax) * (by - ay);
    if (ay <= y && by > y && left > 0) winding++;
    if (ay > y && by <= y && left < 0) winding--;
  }
  return winding !== 0;
}

export function segmentDistance(a: Point, b: Point, p: Point, q: Point): number {
  const side = (s: Point, t: Point, r: Point): number =>
    (t[0] - s[0]) * (r[1] - s[1]) - (t[1] - s[1]) * (r[0] - s[0]);
  if (side(a, b, p) * side(a, b, q) < 0 && side(p, q, a) * side(p, q, b) < 0) return 0;
  return Math.min(
    pointDistance(a, b, p),
    pointDistance(a, b, q),
    pointDistance(p, q, a),
    pointDistance(p, q, b),
  );
}

export function pointDistance(a: Point, b: Point, p: Point): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const share = Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(p[0] - a[0] - share * dx, p[1] - a[1] - share * dy);
}
