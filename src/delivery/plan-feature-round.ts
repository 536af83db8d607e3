import type { FlatSolid } from './plan-feature-flat.js';
import type { PlanShape } from './plan-shape.js';

/** q, the point of a rectangle that is nearest to a solid, from the rectangle's centre; the direction m from there to the solid, and how far. */
export interface NearestPoints {
  qx: number;
  qy: number;
  mx: number;
  my: number;
  distance: number;
}

/**
 * Nearest points of the rectangle (centre (x, y), heading by cosine and sine) and the solid: corner to side, side to corner or corner to
 * corner. Writes to `out`; false where they overlap. `dx`, `dy` are the directions of the solid's faces.
 */
export function nearestPoints(
  solid: FlatSolid,
  dx: Float64Array,
  dy: Float64Array,
  { halfLength, halfWidth }: PlanShape,
  x: number,
  y: number,
  cos: number,
  sin: number,
  out: NearestPoints,
): boolean {
  out.distance = Number.POSITIVE_INFINITY;
  for (let p = 0; p < solid.cornerX.length; p++) {
    const wx = solid.cornerX[p] - x;
    const wy = solid.cornerY[p] - y;
    const along = clamp(wx * cos + wy * sin, halfLength);
    const across = clamp(wy * cos - wx * sin, halfWidth);
    const qx = along * cos - across * sin;
    const qy = along * sin + across * cos;
    keep(out, qx, qy, wx - qx, wy - qy, Math.hypot(wx - qx, wy - qy));
  }
  for (let f = 0; f < solid.offset.length; f++) {
    const nx = solid.sign[f] * dx[solid.direction[f]];
    const ny = solid.sign[f] * dy[solid.direction[f]];
    // The rectangle's corner that lies deepest behind the face's normal, and its foot on the face.
    const along = nx * cos + ny * sin > 0 ? -halfLength : halfLength;
    const across = ny * cos - nx * sin > 0 ? -halfWidth : halfWidth;
    const qx = along * cos - across * sin;
    const qy = along * sin + across * cos;
    const gap = nx * (x + qx) + ny * (y + qy) - solid.offset[f];
    if (gap <= 0 || gap >= out.distance) continue;
    if (isInside(solid, dx, dy, x + qx - gap * nx, y + qy - gap * ny))
      keep(out, qx, qy, -gap * nx, -gap * ny, gap);
  }
  return out.distance > 0 && Number.isFinite(out.distance);
}

function keep(out: NearestPoints, qx: number, qy: number, vx: number, vy: number, distance: number): void {
  if (distance >= out.distance) return;
  out.distance = distance;
  out.qx = qx;
  out.qy = qy;
  out.mx = distance > 0 ? vx / distance : 0;
  out.my = distance > 0 ? vy / distance : 0;
}

function isInside(solid: FlatSolid, dx: Float64Array, dy: Float64Array, x: number, y: number): boolean {
  for (let f = 0; f < solid.offset.length; f++) {
    const d = solid.direction[f];
    if (solid.sign[f] * (dx[d] * x + dy[d] * y) > solid.offset[f] + 1e-7) return false;
  }
  return true;
}

function clamp(value: number, limit: number): number {
  return value < -limit ? -limit : Math.min(value, limit);
}
