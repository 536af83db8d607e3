import { signedArea } from './ring.js';
import type { Point, Ring } from './types.js';

/** One connected piece of a {@link Region}: an outline and the holes in it. Millimetres. */
export interface RegionPolygon {
  /** Anticlockwise; the first corner is not repeated at the end. */
  readonly outer: Ring;
  /** Inside the outline and apart from one another. Clockwise, so that the region lies left of every edge of outline and holes alike. */
  readonly holes: readonly Ring[];
}

/** A part of the plan: pieces that do not overlap, with or without holes. An empty list is the empty region. */
export type Region = readonly RegionPolygon[];

/** What the functions on regions take: a region, or one ring in either direction. */
export type Shape = Region | Ring;

/**
 * Why a region could not be made:
 * `not-finite`: a coordinate is NaN or infinite; `too-far`: a coordinate lies more than 10 km from the origin;
 * `too-few-corners`: a ring has fewer than three; `too-many-corners`: more than the budget, which stands in for a time
 * limit; `not-convex`: a convex ring was asked for; `bad-distance`: a radius or sagitta is not a usable number;
 * `unresolved`: no grid gave a result that passes its checks. A ring that crosses itself ends there, too.
 */
export type RegionErrorCode =
  | 'not-finite'
  | 'too-far'
  | 'too-few-corners'
  | 'too-many-corners'
  | 'not-convex'
  | 'bad-distance'
  | 'unresolved';

/** Thrown instead of a guess when regions cannot be made or combined. */
export class RegionError extends Error {
  readonly code: RegionErrorCode;

  constructor(code: RegionErrorCode, message: string) {
    super(message);
    this.name = 'RegionError';
    this.code = code;
  }
}

/** Area of a region, mm2: its outlines less its holes. Exact up to rounding for the corners as they are; 0 when empty. */
export function regionArea(region: Region): number {
  let area = 0;
  for (const { outer, holes } of region) {
    area += Math.abs(signedArea(outer));
    for (const hole of holes) area -= Math.abs(signedArea(hole));
  }
  return area;
}

/** A coordinate farther out than 10 km is a slip of the units, not a room. */
const FARTHEST = 1e7;

/**
 * Refuses a ring of fewer than three corners, and corners that are not finite or lie beyond 10 km.
 *
 * @internal
 */
export function checkRing(ring: Ring): void {
  checkRingWithin(ring, FARTHEST);
}

/**
 * Refuses a ring of fewer than three corners, and corners that are not finite or lie beyond `farthest`, mm.
 *
 * @internal
 */
export function checkRingWithin(ring: Ring, farthest: number): void {
  if (ring.length < 3) {
    throw new RegionError('too-few-corners', `A ring needs three corners, this one has ${ring.length}.`);
  }
  for (const corner of ring) checkPointWithin(corner, farthest);
}

/**
 * Refuses a point that is not finite or lies beyond 10 km.
 *
 * @internal
 */
export function checkPoint(point: Point): void {
  checkPointWithin(point, FARTHEST);
}

function checkPointWithin([x, y]: Point, farthest: number): void {
  if (!Number.isFinite(x) || !Number.isFinite(y)) {
    throw new RegionError('not-finite', `A point is (${x}, ${y}); both must be finite numbers.`);
  }
  if (Math.abs(x) > farthest || Math.abs(y) > farthest) {
    const km = farthest / 1e6;
    throw new RegionError('too-far', `A point is (${x}, ${y}) mm, more than ${km} km from the origin.`);
  }
}
