import { orientation, type Sign } from './predicates.js';
import type { Point, Ring } from './types.js';

/** Most that a round thing may grow by becoming a polygon, mm, as long as {@link CIRCLE_SIDES} allows it. */
export const CIRCLE_EXCESS = 1;

/** Fewest and most sides of a circle's polygon. */
export const CIRCLE_SIDES = { min: 16, max: 64 } as const;

/** Smallest upright rectangle around something, mm. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Area in mm2: positive for an anticlockwise ring, negative for a clockwise one. */
export function signedArea(ring: Ring): number {
  if (ring.length < 3) return 0;
  // Seen from the first corner, so that a far origin costs no digits.
  const [ox, oy] = ring[0];
  let twice = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const [ax, ay] = ring[i];
    const [bx, by] = ring[i + 1];
    twice += (ax - ox) * (by - oy) - (bx - ox) * (ay - oy);
  }
  return twice / 2;
}

/** Length all round, mm. */
export function perimeter(ring: Ring): number {
  let sum = 0;
  for (let i = 0; i < ring.length; i++) {
    const [ax, ay] = ring[i];
    const [bx, by] = ring[i + 1 === ring.length ? 0 : i + 1];
    sum += Math.hypot(bx - ax, by - ay);
  }
  return sum;
}

/** Box around the points; of none, an inside-out box of infinities. */
export function boundingBox(points: readonly Point[]): Box {
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (const [x, y] of points) {
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  return { minX, minY, maxX, maxY };
}

/** Centre of gravity of the area; of a ring without area, the centre of its box. */
export function centroid(ring: Ring): Point {
  const area = signedArea(ring);
  if (area === 0) {
    const box = boundingBox(ring);
    return [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  }
  const [ox, oy] = ring[0];
  let sumX = 0;
  let sumY = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const ax = ring[i][0] - ox;
    const ay = ring[i][1] - oy;
    const bx = ring[i + 1][0] - ox;
    const by = ring[i + 1][1] - oy;
    const twice = ax * by - bx * ay;
    sumX += (ax + bx) * twice;
    sumY += (ay + by) * twice;
  }
  return [ox + sumX / (6 * area), oy + sumY / (6 * area)];
}

/** Which way a simple ring runs, exactly: 1 anticlockwise, -1 clockwise, 0 only for a ring without area. */
export function ringDirection(ring: Ring): Sign {
  const n = ring.length;
  if (n < 3) return 0;
  // The leftmost of the corners (the lowest of those) is a corner of the hull: the ring turns there as it runs as a whole.
  const lowest = lowestCorner(ring);
  const corner = ring[lowest];
  let before = lowest;
  do before = (before + n - 1) % n;
  while (before !== lowest && samePoint(ring[before], corner));
  let after = lowest;
  do after = (after + 1) % n;
  while (after !== lowest && samePoint(ring[after], corner));
  return orientation(ring[before], corner, ring[after]);
}

/** The same corners in the other direction, the first staying first. */
export function reversed(ring: Ring): Ring {
  return ring.map((_, i) => ring[(ring.length - i) % ring.length]);
}

/** Moved by (dx, dy). */
export function translated(ring: Ring, dx: number, dy: number): Ring {
  return ring.map(([x, y]) => [x + dx, y + dy]);
}

/** Turned anticlockwise by `angle` radians about a point. */
export function rotated(ring: Ring, angle: number, about: Point = [0, 0]): Ring {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const [cx, cy] = about;
  return ring.map(([x, y]) => [cx + cos * (x - cx) - sin * (y - cy), cy + sin * (x - cx) + cos * (y - cy)]);
}

/** Mirrored in the y axis: left and right change places, and so does the direction. */
export function mirrored(ring: Ring): Ring {
  return ring.map(([x, y]) => [0 - x, y]);
}

/** Rectangle about a centre, anticlockwise; its length lies at `angle` radians anticlockwise from +x. */
export function rectangleRing(center: Point, length: number, width: number, angle = 0): Ring {
  const hl = length / 2;
  const hw = width / 2;
  const corners: Ring = [
    [-hl, -hw],
    [hl, -hw],
    [hl, hw],
    [-hl, hw],
  ];
  const turned = angle === 0 ? corners : rotated(corners, angle);
  return translated(turned, center[0], center[1]);
}

/**
 * Regular polygon around a circle, anticlockwise: never smaller than the circle, and touching it on both axes. Its sides are
 * as many as keep its corners within {@link CIRCLE_EXCESS} of the circle, a multiple of 4 within {@link CIRCLE_SIDES}; see
 * {@link circleExcess} for the largest circles.
 */
export function circleRing(center: Point, diameter: number): Ring {
  const sides = circleSides(diameter);
  const half = Math.PI / sides;
  const reach = diameter / 2 / Math.cos(half);
  const ring: Point[] = [];
  for (let i = 0; i < sides; i++) {
    const angle = (2 * i + 1) * half;
    ring.push([center[0] + reach * Math.cos(angle), center[1] + reach * Math.sin(angle)]);
  }
  return ring;
}

/** How far the corners of {@link circleRing} lie outside the circle, mm. */
export function circleExcess(diameter: number): number {
  return (diameter / 2) * (1 / Math.cos(Math.PI / circleSides(diameter)) - 1);
}

function circleSides(diameter: number): number {
  // r / cos(pi / n) - r <= excess
  const needed = Math.PI / Math.acos(diameter / 2 / (diameter / 2 + CIRCLE_EXCESS));
  return Math.min(CIRCLE_SIDES.max, Math.max(CIRCLE_SIDES.min, 4 * Math.ceil(needed / 4)));
}

/** Part of a convex ring where x * nx + y * ny <= d, in the same direction; empty where nothing with an area is left. */
export function clipToHalfPlane(ring: Ring, nx: number, ny: number, d: number): Ring {
  const kept: Point[] = [];
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i];
    const b = ring[i + 1 === ring.length ? 0 : i + 1];
    const overA = a[0] * nx + a[1] * ny - d;
    const overB = b[0] * nx + b[1] * ny - d;
    if (overA <= 0) kept.push(a);
    if ((overA < 0 && overB > 0) || (overA > 0 && overB < 0)) {
      const t = overA / (overA - overB);
      kept.push([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]);
    }
  }
  return kept.length < 3 || signedArea(kept) === 0 ? [] : kept;
}

/** Least distance from a point to a segment, mm. */
export function distanceToSegment([px, py]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const dx = bx - ax;
  const dy = by - ay;
  const along = dx * dx + dy * dy;
  const t = along === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / along));
  const ex = px - ax - t * dx;
  const ey = py - ay - t * dy;
  return Math.sqrt(ex * ex + ey * ey);
}

/** Index of the leftmost corner, of the lowest one of several. */
export function lowestCorner(ring: Ring): number {
  let lowest = 0;
  for (let i = 1; i < ring.length; i++) if (comesBefore(ring[i], ring[lowest])) lowest = i;
  return lowest;
}

/** Order of points: by x, then by y. */
export function comesBefore([ax, ay]: Point, [bx, by]: Point): boolean {
  return ax < bx || (ax === bx && ay < by);
}

function samePoint(a: Point, b: Point): boolean {
  return a[0] === b[0] && a[1] === b[1];
}
