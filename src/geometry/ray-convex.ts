import type { EdgeArrays } from './edge-arrays.js';

/**
 * Where the ray from (px, py) along the unit vector (ux, uy), together in `ray`, runs inside the convex anticlockwise polygon of edges `first` to
 * `end` (exclusive), grown by a disc of radius `margin` >= 0: from `out[0]` to `out[1]`, mm along the ray. False where the ray
 * misses it or only touches it. `out[0]` is 0 where the ray starts inside.
 *
 * The polygon's sides moved out by the margin bound a polygon with mitred corners. The ray enters that through one side: if
 * there within the side's own length, that point is on the rounded body. Otherwise it is in the sliver between a mitre and the
 * circle around that end of the side, and from there it can only come to the body through that circle, or miss it. The same
 * holds, backwards, for the way out.
 */
export function rayInGrownConvex(
  edges: EdgeArrays,
  first: number,
  end: number,
  margin: number,
  ray: Float64Array,
  out: Float64Array,
): boolean {
  const { ax, ay, nx, ny } = edges;
  const px = ray[0];
  const py = ray[1];
  const ux = ray[2];
  const uy = ray[3];
  let enter = -Infinity;
  let leave = Infinity;
  let enterEdge = first;
  let leaveEdge = first;
  for (let i = first; i < end; i++) {
    const inside = nx[i] * (px - ax[i]) + ny[i] * (py - ay[i]) + margin;
    const rate = nx[i] * ux + ny[i] * uy;
    if (rate > 0) {
      const t = -inside / rate;
      if (t > enter) {
        enter = t;
        enterEdge = i;
      }
    } else if (rate < 0) {
      const t = -inside / rate;
      if (t < leave) {
        leave = t;
        leaveEdge = i;
      }
    } else if (inside <= 0) return false;
  }
  if (enter >= leave || leave <= 0) return false;
  if (margin > 0) {
    enter = roundedCorner(edges, first, end, enterEdge, enter, -1, margin, ray);
    leave = roundedCorner(edges, first, end, leaveEdge, leave, 1, margin, ray);
    if (!(enter < leave && leave > 0)) return false;
  }
  out[0] = Math.max(enter, 0);
  out[1] = leave;
  return true;
}

/**
 * The crossing at t with moved side i, or, where that lies beyond the side's ends, the first (`which` -1) or last (1) crossing
 * with the circle around that end; NaN where the ray misses the circle, and with it the body.
 */
function roundedCorner(
  edges: EdgeArrays,
  first: number,
  end: number,
  i: number,
  t: number,
  which: -1 | 1,
  margin: number,
  ray: Float64Array,
): number {
  const px = ray[0];
  const py = ray[1];
  const ux = ray[2];
  const uy = ray[3];
  const along = edges.tx[i] * (px - edges.ax[i] + t * ux) + edges.ty[i] * (py - edges.ay[i] + t * uy);
  if (along >= 0 && along <= edges.length[i]) return t;
  const corner = along < 0 ? i : i + 1 === end ? first : i + 1;
  const dx = edges.ax[corner] - px;
  const dy = edges.ay[corner] - py;
  const aside = dx * uy - dy * ux;
  const square = margin * margin - aside * aside;
  return square > 0 ? dx * ux + dy * uy + which * Math.sqrt(square) : Number.NaN;
}
