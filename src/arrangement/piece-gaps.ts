import type { TableSpec } from '../equipment/equipment-types.js';
import { clipToHalfPlane } from '../geometry/ring.js';
import type { Placement, Point, Ring } from '../geometry/types.js';
import { railTop } from '../placement/problem-for.js';
import type { Scene } from '../room/scene.js';
import type { PieceGap } from './arrangement-report.js';
import { THE_TABLE, tableRing } from './layout-rules.js';
import { heightsMeet, TOUCH_SLACK } from './layout-rules-overlap.js';
import { boundingRectangle, SIDES } from './layout-rules-stand.js';
import type { PlacedPiece } from './piece-place.js';

/** What stands about a piece. */
export interface Surroundings {
  readonly scene: Scene;
  /** All pieces that have a place; the piece itself among them does not count. */
  readonly placed: readonly PlacedPiece[];
  /** Null: no table stands. */
  readonly table: { readonly spec: TableSpec; readonly pose: Placement } | null;
}

/**
 * Room behind each side of a piece's bounding rectangle, square off it over the side's whole length, to the first wall, obstacle, other
 * piece or the table at the piece's own heights, mm. 0 where that touches the side or reaches over it. Things beside the strip that only
 * touch it do not count. Exact up to rounding; a side with nothing behind it, of a piece beyond the walls, is left out.
 */
export function pieceGaps(piece: PlacedPiece, around: Surroundings): readonly PieceGap[] {
  const things = thingsAbout(piece, around);
  const rectangle = boundingRectangle(piece);
  return SIDES.flatMap((side, i): readonly PieceGap[] => {
    const strip = stripBehind(rectangle[i], rectangle[(i + 1) % SIDES.length]);
    let distance = Infinity;
    let to = '';
    for (const { name, parts } of things) {
      for (const part of parts) {
        const reach = strip(part);
        if (reach < distance) {
          distance = reach;
          to = name;
        }
      }
    }
    return distance === Infinity ? [] : [{ side, distance, to }];
  });
}

interface Thing {
  readonly name: string;
  /** Convex; a wall is a segment. */
  readonly parts: readonly Ring[];
}

function thingsAbout(piece: PlacedPiece, { scene, placed, table }: Surroundings): readonly Thing[] {
  const { outline, wallNames } = scene;
  const { spec } = piece;
  const things: Thing[] = outline.map((a, i) => ({
    name: wallNames[i],
    parts: [[a, outline[i + 1 === outline.length ? 0 : i + 1]]],
  }));
  for (const obstacle of scene.obstacles) if (heightsMeet(spec, obstacle)) things.push(obstacle);
  for (const other of placed) {
    if (other === piece || !heightsMeet(spec, other.spec)) continue;
    things.push({ name: other.spec.name, parts: other.parts });
  }
  if (table !== null && spec.from < railTop(table.spec)) {
    things.push({ name: THE_TABLE, parts: [tableRing(table.spec, table.pose)] });
  }
  return things;
}

/** Distance from the side p -> q of an anticlockwise ring to the first point of a convex thing in the strip behind it; Infinity: none. */
function stripBehind(p: Point, q: Point): (part: Ring) => number {
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  const tx = (q[0] - p[0]) / length;
  const ty = (q[1] - p[1]) / length;
  const along = tx * p[0] + ty * p[1];
  const out = ty * p[0] - tx * p[1];
  const least = along + TOUCH_SLACK;
  const most = along + length - TOUCH_SLACK;
  return (part) => {
    const beyond =
      part.length === 2
        ? segmentWithin(part, tx, ty, least, most)
        : clipToHalfPlane(clipToHalfPlane(part, tx, ty, most), -tx, -ty, -least);
    if (beyond.length === 0) return Infinity;
    const distances = beyond.map(([x, y]) => ty * x - tx * y - out);
    // On the piece's own side of the line, as in the hollow of an L; a wall may lie in the line itself.
    if (Math.max(...distances) <= (part.length === 2 ? -TOUCH_SLACK : TOUCH_SLACK)) return Infinity;
    return Math.max(0, Math.min(...distances));
  };
}

/** Part of a segment where least <= t . x <= most. */
function segmentWithin([a, b]: Ring, tx: number, ty: number, least: number, most: number): Ring {
  const atA = tx * a[0] + ty * a[1];
  const atB = tx * b[0] + ty * b[1];
  if (Math.max(atA, atB) <= least || Math.min(atA, atB) >= most) return [];
  const at = (place: number): Point => {
    const share = (Math.min(most, Math.max(least, place)) - atA) / (atB - atA);
    return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
  };
  return atA === atB ? [a, b] : [at(atA), at(atB)];
}
