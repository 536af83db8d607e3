import { segmentContact } from './predicates.js';
import { distanceToSegment } from './ring.js';
import type { Point, Ring } from './types.js';

/** A place where a ring meets itself other than at the corner between neighbouring sides. */
export interface SelfContact {
  /** `cross`: two sides cross inside both; `touch`: they meet at a point; `overlap`: they run along one another. */
  readonly kind: 'touch' | 'cross' | 'overlap';
  /** The two sides, by the corner at which each starts, the smaller first. */
  readonly sides: readonly [number, number];
  /** Where they meet, mm; one such point of an overlap. Rounded for a crossing, exact otherwise. */
  readonly at: Point;
}

/**
 * Where the ring crosses or touches itself; none: it is simple. Decided exactly when `within` is 0; sides that come nearer
 * than `within` mm without meeting count as touching. At most `limit` places are listed, one for each point.
 *
 * Sides are swept along the direction in which they are short on the whole, so a comb of thousands of long parallel sides
 * costs no more than any other ring: pairs whose extents along that direction are apart are never looked at.
 */
export function findSelfContacts(ring: Ring, within = 0, limit = 100): SelfContact[] {
  const n = ring.length;
  if (n < 3) return [];
  const { order, low, high, left, right } = sweep(ring, within);

  const contacts: SelfContact[] = [];
  for (let k = 0; k < n; k++) {
    const i = order[k];
    for (let m = k + 1; m < n && low[m] <= high[k]; m++) {
      if (left[m] > right[k] || left[k] > right[m]) continue;
      const j = order[m];
      const contact = i < j ? sideContact(ring, i, j, within) : sideContact(ring, j, i, within);
      if (contact === null) continue;
      const known = contacts.findIndex((c) => samePlace(c, contact, within));
      if (known >= 0) {
        if (inOrder(contact, contacts[known]) < 0) contacts[known] = contact;
        continue;
      }
      contacts.push(contact);
      if (contacts.length >= limit) return contacts.sort(inOrder);
    }
  }
  return contacts.sort(inOrder);
}

/** Whether the ring has at least three corners and neither crosses nor touches itself, exactly. */
export function isSimple(ring: Ring): boolean {
  return ring.length >= 3 && findSelfContacts(ring, 0, 1).length === 0;
}

interface Sweep {
  /** The sides in the order in which the sweep comes to them. */
  readonly order: readonly number[];
  /** Their extents along the sweep (low, high) and square to it (left, right), each wide enough to hold the side. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly left: Float64Array;
  readonly right: Float64Array;
}

function sweep(ring: Ring, within: number): Sweep {
  const n = ring.length;
  const [ox, oy] = ring[0];
  // Prevailing direction of the sides: their doubled angles, weighed by length, so that opposite directions add up.
  let cos2 = 0;
  let sin2 = 0;
  let size = 0;
  for (let i = 0; i < n; i++) {
    const [ax, ay] = ring[i];
    const [bx, by] = ring[i + 1 === n ? 0 : i + 1];
    const dx = bx - ax;
    const dy = by - ay;
    const length = Math.hypot(dx, dy);
    if (length > 0) {
      cos2 += (dx * dx - dy * dy) / length;
      sin2 += (2 * dx * dy) / length;
    }
    size = Math.max(size, Math.abs(ax - ox), Math.abs(ay - oy));
  }
  const angle = Math.atan2(sin2, cos2) / 2;
  const ux = -Math.sin(angle);
  const uy = Math.cos(angle);
  // Each projection is off by a few roundings of at most 2 `size`; 8 of them are more than there are.
  const pad = within / 2 + 8 * size * Number.EPSILON;

  const along = ring.map(([x, y]) => (x - ox) * ux + (y - oy) * uy);
  const across = ring.map(([x, y]) => (y - oy) * ux - (x - ox) * uy);
  const next = (i: number): number => (i + 1 === n ? 0 : i + 1);
  const lows = along.map((v, i) => Math.min(v, along[next(i)]));
  const order = ring.map((_, i) => i).sort((i, j) => lows[i] - lows[j] || i - j);
  const take = (value: (i: number) => number): Float64Array => Float64Array.from(order, value);
  return {
    order,
    low: take((i) => lows[i] - pad),
    high: take((i) => Math.max(along[i], along[next(i)]) + pad),
    left: take((i) => Math.min(across[i], across[next(i)]) - pad),
    right: take((i) => Math.max(across[i], across[next(i)]) + pad),
  };
}

/** Contact of sides i < j that a simple ring must not have, or null. */
function sideContact(ring: Ring, i: number, j: number, within: number): SelfContact | null {
  const n = ring.length;
  const a = ring[i];
  const b = ring[i + 1];
  const c = ring[j];
  const d = ring[j + 1 === n ? 0 : j + 1];
  const kind = segmentContact(a, b, c, d);
  const neighbours = j === i + 1 || (i === 0 && j === n - 1);
  if (neighbours) {
    // They share a corner; more than that only if the ring turns back on itself there. (Where it nearly does, one of the
    // sides beside them comes within reach of the other of the two.)
    return kind === 'overlap' ? { kind, sides: [i, j], at: j === i + 1 ? b : a } : null;
  }
  if (kind === 'cross') return { kind, sides: [i, j], at: crossing(a, b, c, d) };
  if (kind === 'apart' && within === 0) return null;

  // They meet, or come near, at an end of one of them.
  let nearest = Number.POSITIVE_INFINITY;
  let at = a;
  const consider = (p: Point, q: Point, r: Point): void => {
    const distance = distanceToSegment(p, q, r);
    if (distance < nearest) {
      nearest = distance;
      at = p;
    }
  };
  consider(a, c, d);
  consider(b, c, d);
  consider(c, a, b);
  consider(d, a, b);
  if (kind === 'apart') return nearest < within ? { kind: 'touch', sides: [i, j], at } : null;
  return { kind, sides: [i, j], at };
}

function crossing([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point, [dx, dy]: Point): Point {
  const ux = bx - ax;
  const uy = by - ay;
  const vx = dx - cx;
  const vy = dy - cy;
  const det = ux * vy - uy * vx;
  // Sides that cross are not parallel; where rounding says so all the same, the middle of one is as good a place to show.
  const t = det === 0 ? 0.5 : Math.min(1, Math.max(0, ((cx - ax) * vy - (cy - ay) * vx) / det));
  return [ax + t * ux, ay + t * uy];
}

/** A corner that lies on a corner is met by four pairs of sides: one place all the same, shown by the first pair. Crossings each stand for themselves. */
function samePlace(a: SelfContact, b: SelfContact, within: number): boolean {
  if (a.kind === 'cross' || b.kind === 'cross') return false;
  return Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) <= within;
}

function inOrder(a: SelfContact, b: SelfContact): number {
  return a.sides[0] - b.sides[0] || a.sides[1] - b.sides[1];
}
