import type { FurnishingSpec } from '../equipment/furnishing-types.js';
import { perimeter } from '../geometry/ring.js';
import type { Placement } from '../geometry/types.js';
import { MOST_CANDIDATES } from './candidate-pool.js';
import { gridPoses, sumPoses } from './free-poses.js';
import { symmetry, zoneDepths } from './piece-kinds.js';
import { placePiece } from './piece-place.js';
import type { SearchRoom } from './search-room.js';
import { posesAlong, type StandWay, standLine } from './wall-poses.js';

/** Distance of places along a wall, mm, and about how many of them there are all round the room. */
const STEP = 300;
const ROUND = 90;
/** This share of the pool is for the first candidates; the rest is for those that are found on the way. */
const FIRST = 0.6;

/** Fills a room's pool with places that do not depend on where the table or another movable piece stands. */
export function fillPool(room: SearchRoom): void {
  const { pool, movable, question } = room;
  const { outline } = question.scene;
  const free = movable.map((piece) => question.arrangement.pieces[piece]);
  const most = (FIRST * MOST_CANDIDATES) / Math.max(1, pool.kinds.length);
  pool.kinds.forEach((spec, kind) => {
    const start = pool.list.length;
    const add = (poses: readonly Placement[]): void => {
      for (const pose of poses) if (pool.list.length - start < most) pool.add(kind, pose);
    };
    add(wallPoses(room, spec, (pose) => pool.fits(placePiece(spec, pose))));
    if (spec.stand !== 'free') return;
    add(sumPoses(spec, free, outline));
    add(gridPoses(spec, outline));
  });
}

/** Poses along the walls at which `fits` holds. */
export function wallPoses(
  { rules }: SearchRoom,
  spec: FurnishingSpec,
  fits: (pose: Placement) => boolean,
): readonly Placement[] {
  const step = Math.max(STEP, perimeter(rules.scene.outline) / ROUND);
  const ways = standWays(spec);
  return rules.walls.flatMap((wall) => {
    const line = standLine(wall);
    return ways.flatMap((way) => posesAlong(line, spec, way, fits, step));
  });
}

/** The ways round in which a piece can stand along a wall. */
function standWays(spec: FurnishingSpec): readonly StandWay[] {
  const free = spec.stand === 'free';
  const depths = zoneDepths(spec.zones);
  const sides = spec.turns === 'back' ? [0] : [0, 1, 2, 3].slice(0, 4 / symmetry(spec));
  return sides.map((side) => ({ side, off: free ? depths[side] : 0 }));
}
