import { boundingBox, comesBefore, distanceToSegment, lowestCorner, ringDirection } from './ring.js';
import type { Point, Ring } from './types.js';

/**
 * Corners nearer to one another than this are one corner, and a corner nearer than this to the straight line past it is no
 * corner, mm. A thousandth of what a tape can tell, and far above the rounding of doubles even 10,000 km from the origin
 * (2e-6 mm an operation). No boundary moves by more than twice this.
 */
export const FLAT_TOLERANCE = 0.001;

/** A ring with the side names of the ring it was made from. */
export interface NamedRing {
  readonly ring: Ring;
  /** `starts[k]`: index of the given corner at which side k (from corner k to the next) starts, in the order they were given. */
  readonly starts: readonly number[];
}

/**
 * The ring without repeated corners (a closing one among them) and without corners on a straight side, both within
 * {@link FLAT_TOLERANCE}. A side of what is left may be made of several given ones; it starts where the first of them does,
 * and sides without length count for nothing. A corner where the ring turns back on itself is kept. Fewer than three corners
 * are left where all lie within the tolerance of one segment.
 */
export function withoutFlatCorners(ring: Ring): NamedRing {
  const distinct = withoutRepeats(ring);
  const n = distinct.length;
  if (n < 3) return pick(ring, distinct);

  const first = farCorner(ring, distinct);
  const kept: number[] = [first];
  let anchor = first;
  for (let next = first + 2; next <= first + n; next++) {
    // Everything between the anchor and `next` may go if it lies on the straight line between them.
    if (!allOnSegment(ring, distinct, anchor, next)) {
      anchor = next - 1;
      kept.push(anchor);
    }
  }
  const corners = kept.map((i) => distinct[i % n]);
  return pick(ring, corners);
}

/** The ring run anticlockwise and begun at its leftmost corner (the lowest of those): the same for every way to write it. */
export function inStandardOrder({ ring, starts }: NamedRing): NamedRing {
  const n = ring.length;
  if (n === 0) return { ring, starts };
  const forward = ringDirection(ring) >= 0;
  const lowest = lowestCorner(ring);
  const corners: Point[] = [];
  const names: number[] = [];
  for (let k = 0; k < n; k++) {
    const i = forward ? (lowest + k) % n : (lowest + n - k) % n;
    corners.push(ring[i]);
    // Backwards, the side that leaves corner i is the one that reached it before.
    names.push(starts[forward ? i : (i + n - 1) % n]);
  }
  return { ring: corners, starts: names };
}

/** A corner that is kept, by its place in the given ring, and where the side that leaves it starts there. */
interface Corner {
  readonly at: number;
  readonly leaves: number;
}

function pick(ring: Ring, corners: readonly Corner[]): NamedRing {
  return { ring: corners.map((c) => ring[c.at]), starts: corners.map((c) => c.leaves) };
}

function withoutRepeats(ring: Ring): Corner[] {
  const corners: Corner[] = [];
  for (let i = 0; i < ring.length; i++) {
    const last = corners.at(-1);
    if (last !== undefined && near(ring[last.at], ring[i])) {
      corners[corners.length - 1] = { at: last.at, leaves: i };
    } else {
      corners.push({ at: i, leaves: i });
    }
  }
  while (corners.length > 1 && near(ring[corners[corners.length - 1].at], ring[corners[0].at])) corners.pop();
  return corners;
}

/**
 * Place in `corners` of one that is sure to be kept: the one farthest from the middle of the box. A point on a straight
 * side is never the farthest from anywhere.
 */
function farCorner(ring: Ring, corners: readonly Corner[]): number {
  const box = boundingBox(ring);
  const cx = (box.minX + box.maxX) / 2;
  const cy = (box.minY + box.maxY) / 2;
  let best = 0;
  let farthest = -1;
  for (let i = 0; i < corners.length; i++) {
    const [x, y] = ring[corners[i].at];
    const far = (x - cx) * (x - cx) + (y - cy) * (y - cy);
    if (far > farthest || (far === farthest && comesBefore([x, y], ring[corners[best].at]))) {
      farthest = far;
      best = i;
    }
  }
  return best;
}

function allOnSegment(ring: Ring, corners: readonly Corner[], from: number, to: number): boolean {
  const n = corners.length;
  const a = ring[corners[from % n].at];
  const b = ring[corners[to % n].at];
  for (let i = from + 1; i < to; i++) {
    if (distanceToSegment(ring[corners[i % n].at], a, b) > FLAT_TOLERANCE) return false;
  }
  return true;
}

function near([ax, ay]: Point, [bx, by]: Point): boolean {
  return Math.hypot(bx - ax, by - ay) <= FLAT_TOLERANCE;
}
