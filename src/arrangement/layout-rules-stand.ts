import { DEFAULTS } from '../equipment/defaults.js';
import { rectangleRing } from '../geometry/ring.js';
import type { Point, Ring } from '../geometry/types.js';
import { TOUCH_SLACK } from './layout-rules-overlap.js';
import type { RoomRules } from './layout-rules-room.js';
import type { PlacedPiece } from './piece-place.js';

/** How far off an allowed turn a piece may be turned, degrees: given turns are often rounded. A choice, no source. */
export const TURN_TOLERANCE = 1;

/** The sides of a piece's bounding rectangle as {@link rectangleRing} has them, and as the report calls them. */
export const SIDES = ['back', 'left', 'front', 'right'] as const;

/** The bounding rectangle of a piece where it stands: side i, of {@link SIDES}, runs from corner i to the next. */
export function boundingRectangle({ spec, pose }: PlacedPiece): Ring {
  return rectangleRing([pose.x, pose.y], spec.length, spec.width, pose.angle);
}

/**
 * How far a piece is from standing as its stand asks, mm: the larger distance of an end of its side from the wall that is behind the whole
 * of that side; in a corner the larger one of two such sides that meet. 0 for what may stand anywhere, Infinity where no wall is behind.
 */
export function distanceFromStand(rules: RoomRules, piece: PlacedPiece): number {
  const { stand, turns } = piece.spec;
  if (stand === 'free' || stand === 'over-table') return 0;
  const rectangle = boundingRectangle(piece);
  const sides = turns === 'back' ? [0] : [0, 1, 2, 3];
  const off = (side: number): number =>
    distanceFromWall(rules.walls, rectangle[side % 4], rectangle[(side + 1) % 4]);
  let least = Infinity;
  for (const side of sides) {
    const distance =
      stand === 'corner' ? Math.max(off(side), Math.min(off(side + 1), off(side + 3))) : off(side);
    if (distance < least) least = distance;
  }
  return least;
}

/** Whether a side, run anticlockwise round its piece, touches a wall that is there behind all of it. */
export function isFlush(walls: readonly Ring[], p: Point, q: Point): boolean {
  return distanceFromWall(walls, p, q) <= TOUCH_SLACK;
}

/** Whether a piece stands where its stand asks. */
export function standsRight(rules: RoomRules, piece: PlacedPiece): boolean {
  return distanceFromStand(rules, piece) <= DEFAULTS.arrangement.wallGap + TOUCH_SLACK;
}

/**
 * The larger of the distances from the ends of a side to a wall that the side faces and that is there behind all of it, mm; the least of
 * all such walls, Infinity without one. The side runs anticlockwise round its piece.
 */
function distanceFromWall(walls: readonly Ring[], p: Point, q: Point): number {
  let least = Infinity;
  for (const [a, b] of walls) {
    const dx = b[0] - a[0];
    const dy = b[1] - a[1];
    // Back to the wall, a side runs the way the wall does.
    if (dx * (q[0] - p[0]) + dy * (q[1] - p[1]) <= 0) continue;
    const length = Math.sqrt(dx * dx + dy * dy);
    const alongP = (dx * (p[0] - a[0]) + dy * (p[1] - a[1])) / length;
    const alongQ = (dx * (q[0] - a[0]) + dy * (q[1] - a[1])) / length;
    if (alongP < -TOUCH_SLACK || alongQ > length + TOUCH_SLACK) continue;
    const offP = (dx * (p[1] - a[1]) - dy * (p[0] - a[0])) / length;
    const offQ = (dx * (q[1] - a[1]) - dy * (q[0] - a[0])) / length;
    if (Math.min(offP, offQ) < -TOUCH_SLACK) continue;
    least = Math.min(least, Math.max(offP, offQ));
  }
  return least;
}

/**
 * Whether a piece is turned as it may be, within {@link TURN_TOLERANCE}. What stands at a wall with its back or any side is turned by the wall;
 * what stands free and square is turned as some wall of the room is.
 */
export function turnedRight({ walls }: RoomRules, { spec, pose }: PlacedPiece): boolean {
  const { stand, turns } = spec;
  const turn = (pose.angle * 180) / Math.PI;
  if (stand === 'over-table' || turns === 'any' || turns === 'back') return true;
  if (turns === 'square') {
    if (stand !== 'free') return true;
    return walls.some(([a, b]) => {
      const wall = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
      return offBy(turn - wall, 90) <= TURN_TOLERANCE;
    });
  }
  return turns.some((allowed) => offBy(turn - allowed, 360) <= TURN_TOLERANCE);
}

/** How far an angle is from the nearest multiple of a period, degrees. */
function offBy(angle: number, period: number): number {
  return Math.abs(angle - period * Math.round(angle / period));
}
