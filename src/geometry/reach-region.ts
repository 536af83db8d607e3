import { type ArcOptions, growRing } from './grow-ring.js';
import type { Region } from './region.js';
import { type RegionSplit, split, unite } from './regions.js';
import type { Ring } from './types.js';

/**
 * The union of convex parts, each grown by r, mm: a footprint of any form grown, when the parts make it up. On the grid of
 * {@link unite}; errs and throws as it and {@link growRing} do.
 */
export function growParts(parts: readonly Ring[], r: number, options: ArcOptions): Region {
  return unite(parts.map((part) => growRing(part, r, options)));
}

/**
 * The convex ring grown by `reach`, cut by the room's outline, mm: `inside` is the reach that the room has, `outside` is
 * where walls cut it off. For drawings; errs and throws as {@link growRing} and {@link split} do.
 */
export function reachInRoom(outline: Ring, ring: Ring, reach: number, options: ArcOptions): RegionSplit {
  return split(growRing(ring, reach, options), [outline]);
}
