import { turnsOnlyLeft } from './predicates.js';
import { checkRingWithin, RegionError } from './region.js';
import { perimeter, signedArea } from './ring.js';
import type { Point, Ring } from './types.js';

/** Most corners that a full turn may become. */
const MOST_CORNERS = 10_000;
/** mm. Farther out than regions go, since nothing here is put on their grid; beyond it doubles are coarser than 1e-4 mm. */
const FARTHEST = 1e12;

/** How round corners become corners of a polygon. */
export interface ArcOptions {
  /**
   * `'inscribed'`: corners on the arcs, so the polygon lies in the true shape. `'circumscribed'`: edges tangent to the
   * arcs, so it holds the true shape.
   */
  readonly arcs: 'inscribed' | 'circumscribed';
  /** Most that the boundary may lie off the true arc, mm; default 1. */
  readonly sagitta?: number;
}

/**
 * A convex ring grown by a distance r, mm: all points at most r from it, its Minkowski sum with a disc. Grown by the
 * distance that the butt of a cue goes from the ball, the rectangle of ball positions becomes the floor that level cues reach.
 *
 * Straight stretches are exact up to rounding; round corners lie off the true ones by at most `sagitta`, to the side that
 * `arcs` says. r = 0 gives the ring itself.
 *
 * @throws RegionError `not-convex` when the ring is not convex and anticlockwise (cut other rings into convex parts and use
 * `growParts`), `bad-distance` when r is negative or not finite or the sagitta is not above 0,
 * `too-far` for corners beyond 1e12 mm, `too-many-corners` when that sagitta takes more than 10,000 corners.
 */
export function growRing(ring: Ring, r: number, { arcs, sagitta = 1 }: ArcOptions): Ring {
  checkConvex(ring);
  checkDistance(r);
  if (!(sagitta > 0))
    throw new RegionError('bad-distance', `The sagitta is ${sagitta}; it must be above 0 mm.`);
  const corners = ring.filter((corner, i) => i === 0 || !same(corner, ring[i - 1]));
  while (corners.length > 1 && same(corners[0], corners[corners.length - 1])) corners.pop();
  if (r === 0) return corners;

  // Half the angle that one chord (or one tangent) may span: r - r cos(h) <= sagitta, or r / cos(h) - r <= sagitta.
  const half = Math.acos(arcs === 'inscribed' ? Math.max(0, 1 - sagitta / r) : r / (r + sagitta));
  if (!(Math.PI / half <= MOST_CORNERS)) {
    throw new RegionError(
      'too-many-corners',
      `A sagitta of ${sagitta} mm is too fine for a radius of ${r} mm.`,
    );
  }
  const grown: Point[] = [];
  const n = corners.length;
  for (let i = 0; i < n; i++) {
    const [px, py] = corners[(i + n - 1) % n];
    const [x, y] = corners[i];
    const [qx, qy] = corners[(i + 1) % n];
    // The arc at this corner turns from the outer normal of the edge before it to that of the edge after it.
    const turn = Math.atan2(
      (x - px) * (qy - y) - (y - py) * (qx - x),
      (x - px) * (qx - x) + (y - py) * (qy - y),
    );
    const start = Math.atan2(px - x, y - py);
    const steps = Math.ceil(turn / (2 * half));
    if (steps <= 0) {
      grown.push(at(x, y, r, start));
      continue;
    }
    const step = turn / steps;
    if (arcs === 'inscribed') {
      for (let k = 0; k <= steps; k++) grown.push(at(x, y, r, start + k * step));
    } else {
      const reach = r / Math.cos(step / 2);
      for (let k = 0; k < steps; k++) grown.push(at(x, y, reach, start + (k + 0.5) * step));
    }
  }
  return grown;
}

/**
 * Exact area of a convex ring grown by r, mm2: A + P r + pi r^2 (Steiner's formula).
 *
 * Along every edge lies a strip of width r, which gives P r; the sectors at the corners turn once in all, which gives a disc.
 *
 * @throws RegionError as {@link growRing} does.
 */
export function grownArea(ring: Ring, r: number): number {
  checkConvex(ring);
  checkDistance(r);
  return signedArea(ring) + perimeter(ring) * r + Math.PI * r * r;
}

/** Exact perimeter of a convex ring grown by r, mm: P + 2 pi r (Steiner's formula). Throws as {@link grownArea} does. */
export function grownPerimeter(ring: Ring, r: number): number {
  checkConvex(ring);
  checkDistance(r);
  return perimeter(ring) + 2 * Math.PI * r;
}

function checkConvex(ring: Ring): void {
  checkRingWithin(ring, FARTHEST);
  if (!turnsOnlyLeft(ring) || signedArea(ring) <= 0) {
    throw new RegionError('not-convex', 'Only a convex ring, run anticlockwise, can be grown.');
  }
}

function checkDistance(r: number): void {
  if (!(r >= 0 && r < Infinity)) throw new RegionError('bad-distance', `A ring cannot be grown by ${r} mm.`);
}

function at(x: number, y: number, r: number, angle: number): Point {
  return [x + r * Math.cos(angle), y + r * Math.sin(angle)];
}

function same(a: Point, b: Point): boolean {
  return a[0] === b[0] && a[1] === b[1];
}
