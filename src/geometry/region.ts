import type { Ring } from './types.js';

/** One connected piece of a {@link Region}: an outline and the holes in it. Millimetres. */
export interface RegionPolygon {
  /** Anticlockwise; the first corner is not repeated at the end. */
  readonly outer: Ring;
  /** Clockwise, so that the region lies left of every edge of outline and holes alike. */
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
    area += Math.abs(shoelace(outer));
    for (const hole of holes) area -= Math.abs(shoelace(hole));
  }
  return area;
}

/** Signed area from the first corner, which keeps the products small far from the origin. */
function shoelace(ring: Ring): number {
  let twice = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const ax = ring[i][0] - ring[0][0];
    const ay = ring[i][1] - ring[0][1];
    twice += ax * (ring[i + 1][1] - ring[0][1]) - ay * (ring[i + 1][0] - ring[0][0]);
  }
  return twice / 2;
}
