import type { EdgeArrays } from '../geometry/edge-arrays.js';
import {
  type BoxFrame,
  extentOf,
  greatestDot,
  LENGTH_SLACK,
  leastDot,
  type Range,
  seePoint,
} from './box-bounds.js';

/**
 * Where the rays of a box first come within the growth m (model: a, moved by e) of a wall.
 *
 * Seen from inside the room the grown walls are bounded by each wall's face moved inwards by m and, at reflex corners, by the disc of
 * radius m around the corner: a point of the room whose nearest point of the outline is a corner has it at a reflex one. So a
 * first hit lies on one of those, and each is bounded on its own.
 */

/**
 * Bounds of t0 over the box, for balls inside the room and at least m from its walls: `t0.lo` is at most the distance to the first
 * grown wall along any ray (Infinity: no ray meets one within `reach`), `t0.hi` at least (Infinity unless every ray surely meets
 * one and the same).
 *
 * `reflex` comes from `reflexStarts`. Reads wall indices from `list[start .. end - 1]`, writes those that some ray may meet within
 * reach from `list[next]` on, and returns where they end: the list for the boxes inside this one. `next` may be `start`.
 */
export function boundWalls(
  frame: BoxFrame,
  walls: EdgeArrays,
  reflex: Uint8Array,
  growth: number,
  reach: number,
  list: Int32Array,
  start: number,
  end: number,
  next: number,
  t0: Range,
): number {
  t0.hi = Infinity;
  let nearest = Infinity;
  let kept = next;
  for (let k = start; k < end; k++) {
    const wall = list[k];
    t0.lo = Infinity;
    if (reflex[wall] === 1) boundDisc(frame, walls.ax[wall], walls.ay[wall], growth, t0);
    boundFace(frame, walls, wall, growth, reach, t0);
    if (t0.lo >= reach) continue;
    list[kept++] = wall;
    if (t0.lo < nearest) nearest = t0.lo;
  }
  t0.lo = nearest;
  return kept;
}

/** A reflex corner's disc: a ray at the lateral distance l from its centre enters sqrt(m^2 - l^2) before passing it. */
function boundDisc(frame: BoxFrame, x: number, y: number, growth: number, t0: Range): void {
  seePoint(frame, x, y);
  const { along, across } = frame;
  const nearest = across.lo > 0 ? across.lo : across.hi < 0 ? -across.hi : 0;
  if (nearest >= growth) return;
  const half = Math.sqrt(growth * growth - nearest * nearest);
  if (along.hi + half < 0) return;
  t0.lo = Math.min(t0.lo, Math.max(0, along.lo - half));
  const farthest = Math.max(across.hi, -across.lo);
  if (farthest < growth && along.lo >= growth) {
    t0.hi = Math.min(t0.hi, along.hi - Math.sqrt(growth * growth - farthest * farthest));
  }
}

/** A wall's face moved inwards by m: from a + m n to b + m n, met from its free side. */
function boundFace(
  frame: BoxFrame,
  walls: EdgeArrays,
  wall: number,
  growth: number,
  reach: number,
  t0: Range,
): void {
  const nx = walls.nx[wall];
  const ny = walls.ny[wall];
  const dx = frame.u - walls.ax[wall];
  const dy = frame.v - walls.ay[wall];
  const depth = nx * dx + ny * dy - growth;
  const extent = extentOf(frame, nx, ny) + LENGTH_SLACK;
  if (depth - extent < 0 && depth + extent > -2 * growth) {
    // Some ball may already be within m of the wall.
    const foot = walls.tx[wall] * dx + walls.ty[wall] * dy;
    const slide = extentOf(frame, walls.tx[wall], walls.ty[wall]) + LENGTH_SLACK + growth;
    if (foot + slide >= 0 && foot - slide <= walls.length[wall]) {
      t0.lo = 0;
      return;
    }
  }
  if (depth + extent < 0) return;
  const c = -nx * frame.cos - ny * frame.sin;
  const s = ny * frame.cos - nx * frame.sin;
  const most = greatestDot(frame, c, s);
  if (most <= 0) return;
  let nearest = Math.max(0, depth - extent) / most;
  if (nearest >= reach) return;

  seePoint(frame, walls.ax[wall] + growth * nx, walls.ay[wall] + growth * ny);
  const { along, across } = frame;
  const aAlong = along.lo;
  const aAlongHi = along.hi;
  const aLo = across.lo;
  const aHi = across.hi;
  seePoint(frame, walls.bx[wall] + growth * nx, walls.by[wall] + growth * ny);
  if ((aLo > 0 && across.lo > 0) || (aHi < 0 && across.hi < 0)) return;
  if (aAlongHi < 0 && along.hi < 0) return;
  nearest = Math.max(nearest, Math.min(aAlong, along.lo));
  if (nearest < t0.lo) t0.lo = nearest;

  // Facing the wall from its free side, a lies to the right and b to the left of the ray.
  if (aHi < 0 && across.lo > 0 && depth - extent >= 0) {
    const least = leastDot(frame, c, s);
    if (least > 0) t0.hi = Math.min(t0.hi, (depth + extent) / least);
  }
}
