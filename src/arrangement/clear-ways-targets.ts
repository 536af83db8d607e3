import type { UseZoneSpec } from '../equipment/furnishing-types.js';
import { type Side, WAY_TOUCH, type WayTarget } from '../geometry/free-way-target.js';
import { distanceToSegment } from '../geometry/ring.js';
import type { Point, Ring } from '../geometry/types.js';
import type { Scene, SceneDoor } from '../room/scene.js';
import { type PlacedPiece, toRoom } from './piece-place.js';

/** The sides of a footprint, to be touched from outside. */
export function sidesOf(ring: Ring): Side[] {
  return ring.map((a, i) => [a, ring[i + 1 === ring.length ? 0 : i + 1]]);
}

export function touches(ring: Ring): WayTarget {
  return { sides: sidesOf(ring), openings: [], regions: [] };
}

/**
 * The opening of a door, on its wall: hinge and latch may have been measured a little off it, and a walker goes through the wall.
 */
export function doorTarget({ outline }: Scene, { hinge, latch }: SceneDoor): WayTarget {
  let best: Side = [hinge, latch];
  let least = Infinity;
  outline.forEach((a, i) => {
    const b = outline[i + 1 === outline.length ? 0 : i + 1];
    const off = Math.max(distanceToSegment(hinge, a, b), distanceToSegment(latch, a, b));
    if (off >= least) return;
    least = off;
    best = [nearestOn(hinge, a, b), nearestOn(latch, a, b)];
  });
  return { sides: [], openings: [best], regions: [] };
}

/** Width of the opening, mm. */
export function openingWidth({ openings }: WayTarget): number {
  const [[[ax, ay], [bx, by]]] = openings;
  return Math.hypot(bx - ax, by - ay);
}

/**
 * Whether a way has to lead to a piece: it stands on the floor, or somebody needs floor to use it. What hangs over the table is reached
 * from there.
 */
export function needsWay({ spec }: PlacedPiece): boolean {
  return spec.stand !== 'over-table' && (spec.stand !== 'hung' || spec.zones.length > 0);
}

/**
 * Where a walker has reached a piece: on one of its zones, or at its body where it has none. A zone that is less deep in front of one of
 * its sides than the way's half and a touch cannot hold the centre of the disc there; then it is enough to touch that side of the piece within
 * the zone's width. A zone that sticks out on no side at all asks for the body.
 *
 * @param most No way is looked for that is wider, mm.
 */
export function pieceTarget(piece: PlacedPiece, most: number): WayTarget {
  const zones = piece.zones.filter(
    ({ spec: { front, back, left, right } }) => Math.max(front, back, left, right) > 0,
  );
  if (zones.length === 0) return touches(piece.ring);
  const deep = most / 2 + WAY_TOUCH;
  return {
    sides: zones.flatMap(({ spec }) => shallowSides(piece, spec, deep)),
    openings: [],
    regions: zones.map(({ ring }) => ring),
  };
}

/** The sides of the piece's bounding rectangle beyond which the zone sticks out by less than `deep`, as far as the zone is wide. */
function shallowSides(
  { spec: { length, width }, pose }: PlacedPiece,
  { front, back, left, right }: UseZoneSpec,
  deep: number,
): Side[] {
  const minX = -length / 2 - right;
  const maxX = length / 2 + left;
  const minY = -width / 2 - back;
  const maxY = width / 2 + front;
  const side = (a: Point, b: Point): Side => [toRoom(pose, a), toRoom(pose, b)];
  const sides: Side[] = [];
  // Anticlockwise, so that the floor is to the right.
  if (back > 0 && back < deep) sides.push(side([minX, -width / 2], [maxX, -width / 2]));
  if (left > 0 && left < deep) sides.push(side([length / 2, minY], [length / 2, maxY]));
  if (front > 0 && front < deep) sides.push(side([maxX, width / 2], [minX, width / 2]));
  if (right > 0 && right < deep) sides.push(side([-length / 2, maxY], [-length / 2, minY]));
  return sides;
}

function nearestOn([px, py]: Point, [ax, ay]: Point, [bx, by]: Point): Point {
  const dx = bx - ax;
  const dy = by - ay;
  const t = Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy)));
  return [ax + t * dx, ay + t * dy];
}
