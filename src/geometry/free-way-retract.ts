import type { EdgeBins } from './free-way-bins.js';
import type { WayPlan } from './free-way-plan.js';

/** Looks for the other side at most so often. */
const MOST_LOOKS = 8;

/** Equal distances within this, mm. */
const EQUAL = 1e-9;

/**
 * Moves a point straight away from what is nearest to it, up to where something else is as near or its clearance is `enough`, by `most` mm at
 * the most. In a passage that is its middle line, where there is most room to go on.
 */
export function moveToMiddle(
  plan: WayPlan,
  bins: EdgeBins,
  x: number,
  y: number,
  enough: number,
  most: number,
): readonly [number, number] {
  const nearest = bins.nearest(x, y);
  if (nearest < 0) return [x, y];
  const [nx, ny] = nearestOnEdge(plan, nearest, x, y);
  const d = Math.hypot(x - nx, y - ny);
  if (d === 0 || d >= enough) return [x, y];
  const ux = (x - nx) / d;
  const uy = (y - ny) / d;
  let t = Math.min(most, enough - d);
  for (let look = 0; look < MOST_LOOKS && t > 0; look++) {
    const px = x + t * ux;
    const py = y + t * uy;
    const other = bins.nearest(px, py);
    if (other < 0) break;
    const [ox, oy] = nearestOnEdge(plan, other, px, py);
    if (Math.hypot(px - ox, py - oy) >= d + t - EQUAL) break;
    t = equalDistance(plan, other, x, y, ux, uy, d, ox, oy, t);
  }
  return t > 0 ? [x + t * ux, y + t * uy] : [x, y];
}

/** The t below `most` at which x + t u is d + t from an edge that is nearest to it at (ox, oy) there. */
function equalDistance(
  plan: WayPlan,
  edge: number,
  x: number,
  y: number,
  ux: number,
  uy: number,
  d: number,
  ox: number,
  oy: number,
  most: number,
): number {
  const ax = plan.ax[edge];
  const ay = plan.ay[edge];
  const bx = plan.bx[edge];
  const by = plan.by[edge];
  const corner = (ox === ax && oy === ay) || (ox === bx && oy === by);
  let t: number;
  if (corner) {
    // |c + t u - o|^2 = (d + t)^2 is linear in t.
    const cx = x - ox;
    const cy = y - oy;
    t = (d * d - cx * cx - cy * cy) / (2 * (ux * cx + uy * cy - d));
  } else {
    // Distance from the line, s + t g, is d + t.
    const length = Math.hypot(bx - ax, by - ay);
    const side = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / length;
    const slope = ((bx - ax) * uy - (by - ay) * ux) / length;
    const sign = side < 0 ? -1 : 1;
    t = (d - sign * side) / (sign * slope - 1);
  }
  return t < most && t > 0 ? t : most / 2;
}

function nearestOnEdge(plan: WayPlan, i: number, x: number, y: number): readonly [number, number] {
  const ax = plan.ax[i];
  const ay = plan.ay[i];
  const bx = plan.bx[i];
  const by = plan.by[i];
  const dx = bx - ax;
  const dy = by - ay;
  const whole = dx * dx + dy * dy;
  const along = (x - ax) * dx + (y - ay) * dy;
  if (along <= 0) return [ax, ay];
  if (along >= whole) return [bx, by];
  return [ax + (along / whole) * dx, ay + (along / whole) * dy];
}
