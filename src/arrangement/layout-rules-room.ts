import { pointInRing } from '../geometry/predicates.js';
import { distanceToSegment } from '../geometry/ring.js';
import type { Point, Ring } from '../geometry/types.js';
import type { Scene } from '../room/scene.js';
import { overlapDepth, overlapsConvex } from './layout-rules-overlap.js';

/** What a room asks of the pieces in it, prepared once. */
export interface RoomRules {
  readonly scene: Scene;
  /** Width of the clear ways, mm. */
  readonly way: number;
  /** `walls[i]` runs from `outline[i]` to the next corner, as a segment; the room lies left of it. */
  readonly walls: readonly Ring[];
  readonly doors: readonly DoorFloor[];
}

/** The floor that a door needs: convex anticlockwise rings, the swing of its leaf (if it opens in) and the strip behind its opening. */
export interface DoorFloor {
  readonly name: string;
  readonly rings: readonly Ring[];
}

/** Prepares the rules of a room. `way`: width of the clear ways, mm; a strip of that depth stays free behind every doorway. */
export function prepareRoom(scene: Scene, way: number): RoomRules {
  const { outline } = scene;
  const walls = outline.map((a, i): Ring => [a, outline[i + 1 === outline.length ? 0 : i + 1]]);
  const doors = scene.doors.map(({ name, hinge, latch, swing }): DoorFloor => {
    const strip = doorStrip(walls, hinge, latch, way);
    return { name, rings: swing === null ? [strip] : [swing, strip] };
  });
  return { scene, way, walls, doors };
}

/** The wall that a door is in: that from which the farther of its two ends is least far. */
export function wallOfDoor(walls: readonly Ring[], hinge: Point, latch: Point): number {
  let best = 0;
  let least = Infinity;
  walls.forEach(([a, b], i) => {
    const off = Math.max(distanceToSegment(hinge, a, b), distanceToSegment(latch, a, b));
    if (off < least) {
      least = off;
      best = i;
    }
  });
  return best;
}

/** Where a door's opening lies along its wall, mm from the wall's first corner. */
export function openingOnWall([a, b]: Ring, hinge: Point, latch: Point): readonly [number, number] {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const along = ([x, y]: Point): number => ((x - a[0]) * (b[0] - a[0]) + (y - a[1]) * (b[1] - a[1])) / length;
  const from = along(hinge);
  const to = along(latch);
  return from < to ? [from, to] : [to, from];
}

/** The rectangle behind a door's opening, `depth` deep into the room from the wall's line. */
function doorStrip(walls: readonly Ring[], hinge: Point, latch: Point, depth: number): Ring {
  const wall = walls[wallOfDoor(walls, hinge, latch)];
  const [a, b] = wall;
  const [from, to] = openingOnWall(wall, hinge, latch);
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const tx = (b[0] - a[0]) / length;
  const ty = (b[1] - a[1]) / length;
  const at = (along: number, inwards: number): Point => [
    a[0] + along * tx - inwards * ty,
    a[1] + along * ty + inwards * tx,
  ];
  return [at(from, 0), at(to, 0), at(to, depth), at(from, depth)];
}

/**
 * Whether a convex polygon lies inside the walls; touching them is inside. Exact for every outline: where no wall runs through the
 * polygon, all of it is on the side of its middle.
 */
export function insideWalls({ scene, walls }: RoomRules, ring: Ring): boolean {
  for (const wall of walls) if (overlapsConvex(ring, wall)) return false;
  return middleInside(scene.outline, ring);
}

function middleInside(outline: Ring, ring: Ring): boolean {
  let x = 0;
  let y = 0;
  for (const p of ring) {
    x += p[0];
    y += p[1];
  }
  return pointInRing(outline, x / ring.length, y / ring.length) >= 0;
}

/** How far something reaches beyond the walls, and through which. */
export interface Beyond {
  readonly wall: number;
  readonly amount: number;
}

/**
 * How far convex parts that do not lie inside the walls reach beyond them: the distance from the farthest corner outside to the nearest
 * wall; where all corners are inside, the depth of the wall that runs deepest through them.
 */
export function beyondWalls({ scene, walls }: RoomRules, parts: readonly Ring[]): Beyond {
  let out: Beyond = { wall: -1, amount: 0 };
  for (const part of parts) {
    for (const corner of part) {
      if (pointInRing(scene.outline, corner[0], corner[1]) >= 0) continue;
      let nearest: Beyond = { wall: -1, amount: Infinity };
      walls.forEach(([a, b], wall) => {
        const amount = distanceToSegment(corner, a, b);
        if (amount < nearest.amount) nearest = { wall, amount };
      });
      if (nearest.amount > out.amount) out = nearest;
    }
  }
  if (out.wall >= 0) return out;
  walls.forEach((segment, wall) => {
    for (const part of parts) {
      const amount = overlapDepth(part, segment);
      if (amount > out.amount) out = { wall, amount };
    }
  });
  return out;
}
