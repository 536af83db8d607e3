import { boundingBox, comesBefore, lowestCorner, ringDirection } from './ring.js';
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
  const kept: Corner[] = [distinct[first]];
  const sleeve = new Sleeve(ring[distinct[first].at]);
  for (let k = 1; k <= n; k++) {
    const corner = distinct[(first + k) % n];
    if (sleeve.takes(ring[corner.at])) continue;
    // The way to this corner bends at the one before.
    const bend = distinct[(first + k - 1) % n];
    kept.push(bend);
    sleeve.startAt(ring[bend.at]);
    sleeve.takes(ring[corner.at]);
  }
  return pick(ring, kept);
}

/**
 * Tells how far the corners that follow an anchor can be passed by in one straight line from it: each of them lies within the
 * tolerance of any line from the anchor whose direction is in a small interval, and what counts is whether these intervals
 * have the direction of the next corner in common. So the work grows with the number of corners only.
 */
class Sleeve {
  private anchor: Point;
  /** Distance of the last corner taken. */
  private reach = 0;
  /** Direction of the first corner taken, against which the interval of angles is measured. */
  private baseX = 0;
  private baseY = 0;
  private low = 0;
  private high = 0;

  constructor(anchor: Point) {
    this.anchor = anchor;
  }

  startAt(anchor: Point): void {
    this.anchor = anchor;
    this.reach = 0;
  }

  /** Whether all corners taken so far lie on the straight line from the anchor to this one; if so, it is taken as well. */
  takes([x, y]: Point): boolean {
    const dx = x - this.anchor[0];
    const dy = y - this.anchor[1];
    const distance = Math.hypot(dx, dy);
    if (distance < this.reach) return false;
    const spread = Math.asin(Math.min(1, FLAT_TOLERANCE / distance));
    if (this.reach === 0) {
      this.baseX = dx;
      this.baseY = dy;
      this.low = -spread;
      this.high = spread;
    } else {
      const angle = Math.atan2(this.baseX * dy - this.baseY * dx, this.baseX * dx + this.baseY * dy);
      if (angle < this.low || angle > this.high) return false;
      this.low = Math.max(this.low, angle - spread);
      this.high = Math.min(this.high, angle + spread);
    }
    this.reach = distance;
    return true;
  }
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

function near([ax, ay]: Point, [bx, by]: Point): boolean {
  return Math.hypot(bx - ax, by - ay) <= FLAT_TOLERANCE;
}
