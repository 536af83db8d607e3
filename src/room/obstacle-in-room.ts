import { pointInRing, segmentMeetsConvexInside } from '../geometry/predicates.js';
import { boundingBox, centroid, distanceToSegment } from '../geometry/ring.js';
import type { Point, Ring } from '../geometry/types.js';

/**
 * Whether any of the convex anticlockwise parts covers some of the room. Touching a wall from outside is not enough. Exact
 * but for parts thinner than a rounding.
 */
export function overlapsRoom(parts: readonly Ring[], outline: Ring): boolean {
  return parts.some((part) => {
    const box = boundingBox(part);
    for (let i = 0; i < outline.length; i++) {
      const a = outline[i];
      const b = outline[i + 1 === outline.length ? 0 : i + 1];
      const apart =
        Math.max(a[0], b[0]) < box.minX ||
        Math.min(a[0], b[0]) > box.maxX ||
        Math.max(a[1], b[1]) < box.minY ||
        Math.min(a[1], b[1]) > box.maxY;
      // A wall through the part has the room on one side of it.
      if (!apart && segmentMeetsConvexInside(part, a, b)) return true;
    }
    // No wall passes through the part, so one point tells for all of it.
    const [x, y] = centroid(part);
    return pointInRing(outline, x, y) > 0;
  });
}

/** The wall nearest to a point, by the corner of the outline at which it starts, and how far off it is, mm. */
export function nearestWall(
  point: Point,
  outline: Ring,
): { readonly wall: number; readonly distance: number } {
  let wall = 0;
  let distance = Number.POSITIVE_INFINITY;
  for (let i = 0; i < outline.length; i++) {
    const off = distanceToSegment(point, outline[i], outline[i + 1 === outline.length ? 0 : i + 1]);
    if (off < distance) {
      distance = off;
      wall = i;
    }
  }
  return { wall, distance };
}
