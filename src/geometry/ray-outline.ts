import type { EdgeArrays } from './edge-arrays.js';

/** Edges meet their neighbours' ends this much too far, and rays that start this much too near still start free (mm), so that no ray slips past an edge by rounding. */
const OVERLAP = 1e-9;

/** Edges of one anticlockwise ring that may be met, grown by one margin, for {@link rayToGrownOutline}. */
export interface GrownOutline {
  readonly edges: EdgeArrays;
  readonly margin: number;
  /** Edges that count, */
  readonly list: Int32Array;
  /** and those whose start is a corner that juts into the free side, with a circle of radius `margin` around it. */
  readonly corners: Int32Array;
}

/**
 * How far the ray from (px, py) along the unit vector (ux, uy) runs before it comes within `margin` of an edge, mm, if that is
 * less than `limit`; otherwise `limit`. The edge goes to `edge[0]`, -1 for none; for a corner, that of its two edges which faces the
 * place more. Touching in passing does not count.
 *
 * Right for rays that start on the free side at no less than `margin` from every edge. A ray comes within the margin first in a
 * point whose nearest edge point is inside an edge, seen from its free side, or a corner that juts into the free side: crossings
 * with edges moved to their free side and with circles around such corners are all that can be first.
 */
export function rayToGrownOutline(
  outline: GrownOutline,
  px: number,
  py: number,
  ux: number,
  uy: number,
  limit: number,
  edge: Int32Array,
): number {
  const { edges, margin, list, corners } = outline;
  const { ax, ay, tx, ty, nx, ny, length } = edges;
  let nearest = limit;
  let which = -1;
  for (let k = 0; k < list.length; k++) {
    const i = list[k];
    const rate = -(nx[i] * ux + ny[i] * uy);
    if (rate <= 0) continue;
    const dx = px - ax[i];
    const dy = py - ay[i];
    const depth = nx[i] * dx + ny[i] * dy - margin;
    if (depth < -OVERLAP || depth >= nearest * rate) continue;
    const t = depth > 0 ? depth / rate : 0;
    const along = tx[i] * (dx + t * ux) + ty[i] * (dy + t * uy);
    if (along >= -OVERLAP && along <= length[i] + OVERLAP) {
      nearest = t;
      which = i;
    }
  }
  if (margin > 0) {
    for (let k = 0; k < corners.length; k++) {
      const i = corners[k];
      const dx = ax[i] - px;
      const dy = ay[i] - py;
      const aside = dx * uy - dy * ux;
      const square = margin * margin - aside * aside;
      if (square <= 0) continue;
      const along = dx * ux + dy * uy;
      if (along <= 0 || along - margin >= nearest) continue;
      const t = Math.max(0, along - Math.sqrt(square));
      if (t < nearest) {
        nearest = t;
        const before = i === 0 ? edges.count - 1 : i - 1;
        const x = t * ux - dx;
        const y = t * uy - dy;
        which = nx[i] * x + ny[i] * y >= nx[before] * x + ny[before] * y ? i : before;
      }
    }
  }
  edge[0] = which;
  return nearest;
}
