import type { Ring } from '../geometry/types.js';

/**
 * Things that overlap by no more than this count as touching, mm: a shift of so much parts them. Poses flush with turned walls come with
 * rounding. Well under what a tape can tell, well over what doubles lose in a room.
 */
export const TOUCH_SLACK = 0.01;

/**
 * Whether two convex anticlockwise polygons overlap by more than {@link TOUCH_SLACK}: no shift of so much parts them. Either may be a
 * segment, a ring of two points. Symmetric.
 *
 * Two convex polygons that overlap are parted by the shortest shift square to an edge of one of them (an edge of their Minkowski
 * difference is an edge of either), so it is enough to look along those.
 */
export function overlapsConvex(a: Ring, b: Ring): boolean {
  return !boxesParted(a, b) && !partedByEdge(a, b) && !partedByEdge(b, a);
}

/** Length of the shortest shift that parts two convex anticlockwise polygons (or segments), mm; 0 where they touch or lie apart. Symmetric. */
export function overlapDepth(a: Ring, b: Ring): number {
  return Math.max(0, Math.min(leastShift(a, b), leastShift(b, a)));
}

/** The greatest {@link overlapDepth} of a part of the one and a part of the other. */
export function partsDepth(a: readonly Ring[], b: readonly Ring[]): number {
  let depth = 0;
  for (const p of a) for (const q of b) depth = Math.max(depth, overlapDepth(p, q));
  return depth;
}

/** Whether some part of the one overlaps some part of the other; see {@link overlapsConvex}. */
export function partsOverlap(a: readonly Ring[], b: readonly Ring[]): boolean {
  for (const p of a) for (const q of b) if (overlapsConvex(p, q)) return true;
  return false;
}

/** Whether two stretches of height overlap: touching does not count. */
export function heightsMeet(
  a: { readonly from: number; readonly to: number },
  b: { readonly from: number; readonly to: number },
): boolean {
  return a.from < b.to && b.from < a.to;
}

function boxesParted(a: Ring, b: Ring): boolean {
  let aLeft = Infinity;
  let aRight = -Infinity;
  let aLow = Infinity;
  let aHigh = -Infinity;
  for (let i = 0; i < a.length; i++) {
    const p = a[i];
    if (p[0] < aLeft) aLeft = p[0];
    if (p[0] > aRight) aRight = p[0];
    if (p[1] < aLow) aLow = p[1];
    if (p[1] > aHigh) aHigh = p[1];
  }
  let bLeft = Infinity;
  let bRight = -Infinity;
  let bLow = Infinity;
  let bHigh = -Infinity;
  for (let i = 0; i < b.length; i++) {
    const p = b[i];
    if (p[0] < bLeft) bLeft = p[0];
    if (p[0] > bRight) bRight = p[0];
    if (p[1] < bLow) bLow = p[1];
    if (p[1] > bHigh) bHigh = p[1];
  }
  return (
    aRight - bLeft <= TOUCH_SLACK ||
    bRight - aLeft <= TOUCH_SLACK ||
    aHigh - bLow <= TOUCH_SLACK ||
    bHigh - aLow <= TOUCH_SLACK
  );
}

/** Whether b lies beyond an edge of a, but for the slack. */
function partedByEdge(a: Ring, b: Ring): boolean {
  for (let i = 0; i < a.length; i++) {
    const p = a[i];
    const q = a[i + 1 === a.length ? 0 : i + 1];
    const dx = q[0] - p[0];
    const dy = q[1] - p[1];
    // Minus how far b reaches in over the edge, times the edge's length.
    const most = -TOUCH_SLACK * Math.sqrt(dx * dx + dy * dy);
    let parted = true;
    for (let k = 0; k < b.length; k++) {
      if (dy * (b[k][0] - p[0]) - dx * (b[k][1] - p[1]) < most) {
        parted = false;
        break;
      }
    }
    if (parted) return true;
  }
  return false;
}

/** The least way square to an edge of a, outwards, that takes b off a; negative where b lies beyond an edge. */
function leastShift(a: Ring, b: Ring): number {
  let shift = Infinity;
  for (let i = 0; i < a.length; i++) {
    const [px, py] = a[i];
    const [qx, qy] = a[i + 1 === a.length ? 0 : i + 1];
    const dx = qx - px;
    const dy = qy - py;
    const length = Math.hypot(dx, dy);
    let reach = -Infinity;
    for (const [x, y] of b) reach = Math.max(reach, dx * (y - py) - dy * (x - px));
    shift = Math.min(shift, reach / length);
  }
  return shift;
}
