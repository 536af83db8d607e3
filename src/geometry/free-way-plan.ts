import { orientationXY, pointInRing } from './predicates.js';
import { boundingBox } from './ring.js';
import type { Ring } from './types.js';

/**
 * A way counts as free where it keeps half its width less this from everything, mm: what rounding may take from a gap that is exactly as
 * wide as the way. A thousand times the rounding of any distance in a room, a thousandth of what can be measured in one.
 */
export const WAY_SLACK = 1e-6;

/** The walls and everything that stands on the floor, as edges in flat arrays. Edge i runs from a to b. */
export interface WayPlan {
  /** The outline, then the blocked rings. */
  readonly rings: readonly Ring[];
  /** Number of edges, ring after ring. */
  readonly count: number;
  readonly ax: Float64Array;
  readonly ay: Float64Array;
  readonly bx: Float64Array;
  readonly by: Float64Array;
  /** By edge, the place of its ring in `rings`. */
  readonly ringOf: Int32Array;
  /** By ring, its first edge; and the number of edges. */
  readonly first: Int32Array;
  /** By ring, its box: least and greatest x, least and greatest y. */
  readonly boxes: Float64Array;
}

/** Rings are simple, in either direction; they may overlap one another and reach beyond the outline. */
export function wayPlan(outline: Ring, blocked: readonly Ring[]): WayPlan {
  const rings = [outline, ...blocked];
  let count = 0;
  for (const ring of rings) count += ring.length;
  const ax = new Float64Array(count);
  const ay = new Float64Array(count);
  const bx = new Float64Array(count);
  const by = new Float64Array(count);
  const ringOf = new Int32Array(count);
  const first = new Int32Array(rings.length + 1);
  const boxes = new Float64Array(rings.length * 4);
  let i = 0;
  rings.forEach((ring, r) => {
    first[r] = i;
    const box = boundingBox(ring);
    boxes.set([box.minX, box.maxX, box.minY, box.maxY], r * 4);
    for (let k = 0; k < ring.length; k++) {
      const a = ring[k];
      const b = ring[k + 1 === ring.length ? 0 : k + 1];
      ax[i] = a[0];
      ay[i] = a[1];
      bx[i] = b[0];
      by[i] = b[1];
      ringOf[i] = r;
      i++;
    }
  });
  first[rings.length] = i;
  return { rings, count, ax, ay, bx, by, ringOf, first, boxes };
}

/** Whether a point lies inside the outline and outside every blocked ring, exactly. Boundaries are not open floor. */
export function isOpenFloor({ rings, boxes }: WayPlan, x: number, y: number): boolean {
  if (pointInRing(rings[0], x, y) <= 0) return false;
  for (let r = 1; r < rings.length; r++) {
    const box = r * 4;
    if (x < boxes[box] || x > boxes[box + 1] || y < boxes[box + 2] || y > boxes[box + 3]) continue;
    if (pointInRing(rings[r], x, y) >= 0) return false;
  }
  return true;
}

/** Distance from a point to edge i, mm. */
export function distanceToWayEdge(plan: WayPlan, i: number, x: number, y: number): number {
  return Math.sqrt(squareToSegment(x, y, plan.ax[i], plan.ay[i], plan.bx[i], plan.by[i]));
}

/** The edge nearest to a point of those for which `among` holds, the first of equals; -1 where there is none. */
export function nearestWayEdge(
  plan: WayPlan,
  x: number,
  y: number,
  among: (edge: number) => boolean = () => true,
): number {
  let nearest = -1;
  let square = Infinity;
  for (let i = 0; i < plan.count; i++) {
    const d = squareToSegment(x, y, plan.ax[i], plan.ay[i], plan.bx[i], plan.by[i]);
    if (d < square && among(i)) {
      square = d;
      nearest = i;
    }
  }
  return nearest;
}

/** Whether every point of the segment from p to q keeps at least `distance` from edge i. Touching that distance counts. */
export function keepsFromEdge(
  plan: WayPlan,
  i: number,
  px: number,
  py: number,
  qx: number,
  qy: number,
  distance: number,
): boolean {
  const ax = plan.ax[i];
  const ay = plan.ay[i];
  const bx = plan.bx[i];
  const by = plan.by[i];
  if (
    Math.min(ax, bx) - Math.max(px, qx) >= distance ||
    Math.min(px, qx) - Math.max(ax, bx) >= distance ||
    Math.min(ay, by) - Math.max(py, qy) >= distance ||
    Math.min(py, qy) - Math.max(ay, by) >= distance
  )
    return true;
  // Apart, two segments are nearest at an end of one of them.
  const square = distance * distance;
  if (
    squareToSegment(px, py, ax, ay, bx, by) < square ||
    squareToSegment(qx, qy, ax, ay, bx, by) < square ||
    squareToSegment(ax, ay, px, py, qx, qy) < square ||
    squareToSegment(bx, by, px, py, qx, qy) < square
  )
    return false;
  const sideA = orientationXY(px, py, qx, qy, ax, ay);
  const sideB = orientationXY(px, py, qx, qy, bx, by);
  if (sideA === sideB) return true;
  return orientationXY(ax, ay, bx, by, px, py) === orientationXY(ax, ay, bx, by, qx, qy);
}

/** Square of the distance from p to the segment from a to b. */
export function squareToSegment(
  px: number,
  py: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): number {
  const dx = bx - ax;
  const dy = by - ay;
  const ex = px - ax;
  const ey = py - ay;
  const along = ex * dx + ey * dy;
  if (along <= 0) return ex * ex + ey * ey;
  const whole = dx * dx + dy * dy;
  if (along >= whole) {
    const fx = px - bx;
    const fy = py - by;
    return fx * fx + fy * fy;
  }
  const aside = dx * ey - dy * ex;
  return (aside * aside) / whole;
}
