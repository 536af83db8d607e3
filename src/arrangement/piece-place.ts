import type { FurnishingSpec, UseZoneSpec } from '../equipment/furnishing-types.js';
import { convexParts } from '../geometry/convex-parts.js';
import { rectangleRing } from '../geometry/ring.js';
import type { Placement, Point, Ring } from '../geometry/types.js';

/** A piece where it stands: rings in room coordinates, anticlockwise, mm. */
export interface PlacedPiece {
  readonly spec: FurnishingSpec;
  readonly pose: Placement;
  readonly ring: Ring;
  /** Convex, anticlockwise, together the footprint. */
  readonly parts: readonly Ring[];
  readonly zones: readonly PlacedZone[];
}

export interface PlacedZone {
  readonly spec: UseZoneSpec;
  /** Rectangle, anticlockwise. It covers the piece's own footprint. */
  readonly ring: Ring;
}

/** A piece at a pose: the middle of its bounding rectangle and the turn of its length, radians. */
export function placePiece(spec: FurnishingSpec, pose: Placement): PlacedPiece {
  const ring = spec.ring.map((p) => toRoom(pose, p));
  return {
    spec,
    pose,
    ring,
    parts: convexParts(ring),
    zones: spec.zones.map((zone) => ({ spec: zone, ring: zoneRing(spec, zone, pose) })),
  };
}

function zoneRing({ length, width }: FurnishingSpec, zone: UseZoneSpec, pose: Placement): Ring {
  const { front, back, left, right } = zone;
  const middle = toRoom(pose, [(left - right) / 2, (front - back) / 2]);
  return rectangleRing(middle, length + left + right, width + front + back, pose.angle);
}

/** From the frame of a piece, or of a table, into the room. */
export function toRoom({ x, y, angle }: Placement, [u, v]: Point): Point {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return [x + cos * u - sin * v, y + sin * u + cos * v];
}
