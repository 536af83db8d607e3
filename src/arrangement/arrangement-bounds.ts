import { DEFAULTS } from '../equipment/defaults.js';
import type { TableSpec } from '../equipment/equipment-types.js';
import type { FurnishingSpec } from '../equipment/furnishing-types.js';
import { convexParts } from '../geometry/convex-parts.js';
import { perimeter, signedArea } from '../geometry/ring.js';
import type { Ring } from '../geometry/types.js';
import type { Scene } from '../room/scene.js';
import type { ArrangementBounds } from './arrangement-report.js';
import type { CheckedPiece } from './checked-arrangement.js';
import { TOUCH_SLACK } from './layout-rules-overlap.js';
import { openingOnWall, wallOfDoor } from './layout-rules-room.js';
import { boundingRectangle, isFlush, SIDES } from './layout-rules-stand.js';
import { placePiece } from './piece-place.js';
import { coveredArea } from './zone-sharing.js';

/** An edge this near to a side of the bounding rectangle lies in it, mm: rounding. */
const IN_SIDE = 1e-6;

/** mm2 in a square metre. */
const SQUARE_METRE = 1e6;

/**
 * Cheap necessary conditions: where `needed` exceeds `available`, it is proved that not everything goes in, wherever it is put. They
 * prove nothing the other way. See {@link floorBound} and {@link wallBound}.
 *
 * @param table Null: no table.
 */
export function arrangementBounds(
  scene: Scene,
  table: TableSpec | null,
  pieces: readonly CheckedPiece[],
): ArrangementBounds {
  return { floor: floorBound(scene, table, pieces), wall: wallBound(scene, pieces) };
}

/**
 * Floor, m2. What stands on the floor overlaps there: the table's outer rectangle, pieces with their underside on the floor and obstacles
 * that start there all lie within the walls and off one another, so their areas add up to no more than the room's.
 *
 * Overlaps of up to s = {@link TOUCH_SLACK} count as touching, which could make up area. But two convex parts that a shift of s parts are
 * off one another when each has lost s / 2 all round, and a part that a wall enters by s is within it without s all round. Losing s
 * all round costs a convex part at most s times its perimeter: so much is taken off what is needed, for pieces and obstacles alike.
 */
function floorBound(
  scene: Scene,
  table: TableSpec | null,
  pieces: readonly CheckedPiece[],
): ArrangementBounds['floor'] {
  let needed = 0;
  let slack = 0;
  if (table !== null) {
    const { length, width } = table.outer;
    needed += length * width;
    slack += 2 * (length + width);
  }
  for (const { ring, from, stand } of pieces) {
    if (from > 0 || stand === 'over-table') continue;
    for (const part of convexParts(ring)) {
      needed += signedArea(part);
      slack += perimeter(part);
    }
  }
  const standing = scene.obstacles.filter((o) => o.from === 0).flatMap((o) => o.parts);
  for (const part of standing) slack += perimeter(part);
  let available = signedArea(scene.outline);
  for (const part of convexParts(scene.outline)) available -= coveredArea(part, standing);
  return {
    needed: Math.max(0, needed - TOUCH_SLACK * slack) / SQUARE_METRE,
    available: available / SQUARE_METRE,
  };
}

/**
 * Wall, mm. A piece that is to be placed at a wall stands flush with it, and what its footprint touches of the wall is its own: another piece
 * with its foot there at the same height would overlap it. So pieces that share a height have stretches of wall that do not
 * overlap, off the doorways unless they start above them, and within the walls' length. Counted are those that start below the top of a
 * door, at the height where they take most; of each the least that its stand and turn allow, and of one whose pose is
 * given what it touches there.
 */
function wallBound({ outline, doors }: Scene, pieces: readonly CheckedPiece[]): ArrangementBounds['wall'] {
  const walls = outline.map((a, i): Ring => [a, outline[i + 1 === outline.length ? 0 : i + 1]]);
  const openings = walls.map((): (readonly [number, number])[] => []);
  for (const { hinge, latch } of doors) {
    const wall = wallOfDoor(walls, hinge, latch);
    openings[wall].push(openingOnWall(walls[wall], hinge, latch));
  }
  let available = 0;
  walls.forEach(([a, b], i) => {
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    available += length - lengthOfUnion(openings[i], length);
  });
  const atWalls = pieces
    .filter(
      ({ stand, from }) =>
        stand !== 'free' && stand !== 'over-table' && from < DEFAULTS.arrangement.doorHeight,
    )
    .map((piece) => ({ from: piece.from, to: piece.to, takes: wallTaken(walls, piece) }));
  let needed = 0;
  // Where most of them overlap, one of them starts.
  for (const { from: height } of atWalls) {
    const there = atWalls.filter(({ from, to }) => from <= height && height < to);
    needed = Math.max(
      needed,
      there.reduce((sum, { takes }) => sum + takes, 0),
    );
  }
  return { needed, available };
}

/** Least length of wall that a piece touches. */
function wallTaken(walls: readonly Ring[], piece: CheckedPiece): number {
  const touches = SIDES.map((_, side) => sideTouched(piece, side));
  if (piece.pose !== null) {
    const rectangle = boundingRectangle(placePiece(piece, piece.pose));
    return touches.reduce(
      (sum, length, i) =>
        sum + (isFlush(walls, rectangle[i], rectangle[(i + 1) % SIDES.length]) ? length : 0),
      0,
    );
  }
  const sides = piece.turns === 'back' ? [0] : [0, 1, 2, 3];
  return Math.min(
    ...sides.map((side) => {
      const ends = Math.min(touches[(side + 1) % SIDES.length], touches[(side + 3) % SIDES.length]);
      return touches[side] + (piece.stand === 'corner' ? ends : 0);
    }),
  );
}

/**
 * Length of the footprint's edges in one side of its bounding rectangle: what it touches of a wall there. Less an allowance at each end,
 * since neighbours may overlap by the slack s. Let the feet of two convex parts overlap by d along a wall, with base angles a
 * and b there, and a shift of s in the direction n part them. Then d n_x <= s from the two corners at the wall, and from the edges that rise
 * there n is no nearer to the wall's normal than a or b (whichever is in its way) allows: d <= s / sin(min(a, b)). Three times that, and s
 * besides, also pay for feet that are off the wall, and past its end, by s.
 */
function sideTouched({ ring, length, width }: FurnishingSpec, side: number): number {
  // Outwards of the side: back, left, front, right as in SIDES.
  const [ox, oy, reach] = [
    [0, -1, width / 2],
    [1, 0, length / 2],
    [0, 1, width / 2],
    [-1, 0, length / 2],
  ][side];
  let touched = 0;
  for (const part of convexParts(ring)) {
    for (let i = 0; i < part.length; i++) {
      const [before, p, q, after] = [-1, 0, 1, 2].map((k) => part[(i + k + part.length) % part.length]);
      const off = (at: readonly [number, number]): number => reach - (ox * at[0] + oy * at[1]);
      if (off(p) > IN_SIDE || off(q) > IN_SIDE) continue;
      const foot = Math.hypot(q[0] - p[0], q[1] - p[1]);
      touched += Math.max(0, foot - endAllowance(before, p, q) - endAllowance(after, q, p));
    }
  }
  return touched;
}

/** What a foot from `corner` to `end` may share with its neighbour at `corner`, where an edge rises to `up`. */
function endAllowance(
  up: readonly [number, number],
  corner: readonly [number, number],
  end: readonly [number, number],
): number {
  const ux = up[0] - corner[0];
  const uy = up[1] - corner[1];
  const fx = end[0] - corner[0];
  const fy = end[1] - corner[1];
  const angle = Math.atan2(Math.abs(fx * uy - fy * ux), fx * ux + fy * uy);
  // The edge that rises has to be longer than the slack to be in the way.
  const steep = Math.min(angle, Math.PI / 2) - Math.asin(Math.min(1, TOUCH_SLACK / Math.hypot(ux, uy)));
  return steep <= 0 ? Infinity : (3 * TOUCH_SLACK) / Math.sin(steep) + TOUCH_SLACK;
}

/** Length of what intervals cover of [0, length]. */
function lengthOfUnion(intervals: readonly (readonly [number, number])[], length: number): number {
  let covered = 0;
  let end = 0;
  for (const [from, to] of [...intervals].sort((a, b) => a[0] - b[0])) {
    const first = Math.max(from, end);
    const last = Math.min(to, length);
    if (last > first) covered += last - first;
    end = Math.max(end, last);
  }
  return covered;
}
