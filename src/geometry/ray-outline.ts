import type { EdgeArrays } from './edge-arrays.js';

/** Edges meet their neighbours' ends this much too far, and rays that start this much too near still start free (mm), so that no ray slips past an edge by rounding. */
const OVERLAP = 1e-9;

/** So many edges that follow one another share a disc that a ray is tried against first. */
const RUN = 4;

/** Edges of one anticlockwise ring that may be met, grown by one margin, for {@link rayToGrownOutline}. */
export interface GrownOutline {
  readonly edges: EdgeArrays;
  readonly margin: number;
  /** Edges that count, */
  readonly list: Int32Array;
  /** and those whose start is a corner that juts into the free side, with a circle of radius `margin` around it. */
  readonly corners: Int32Array;
  /** Runs of the list: edges from `runEdges[k]` up to `runEdges[k + 1]` and corners likewise, in a disc with the margin around them. */
  readonly runs: number;
  readonly runEdges: Int32Array;
  readonly runCorners: Int32Array;
  readonly runX: Float64Array;
  readonly runY: Float64Array;
  readonly runRadius: Float64Array;
}

/** The edges `list` (rising) of an anticlockwise ring grown by `margin`; `reflex` as from `reflexStarts`. */
export function grownOutline(
  edges: EdgeArrays,
  reflex: Uint8Array,
  list: readonly number[],
  margin: number,
): GrownOutline {
  const runs = Math.ceil(list.length / RUN);
  const corners: number[] = [];
  const outline = {
    edges,
    margin,
    list: Int32Array.from(list),
    runs,
    runEdges: new Int32Array(runs + 1),
    runCorners: new Int32Array(runs + 1),
    runX: new Float64Array(runs),
    runY: new Float64Array(runs),
    runRadius: new Float64Array(runs),
  };
  for (let k = 0; k < runs; k++) {
    const run = list.slice(k * RUN, (k + 1) * RUN);
    const xs = run.flatMap((i) => [edges.ax[i], edges.bx[i]]);
    const ys = run.flatMap((i) => [edges.ay[i], edges.by[i]]);
    const x = (Math.min(...xs) + Math.max(...xs)) / 2;
    const y = (Math.min(...ys) + Math.max(...ys)) / 2;
    outline.runX[k] = x;
    outline.runY[k] = y;
    outline.runRadius[k] = Math.max(...xs.map((ax, j) => Math.hypot(ax - x, ys[j] - y))) + margin;
    for (const i of run) if (reflex[i] === 1) corners.push(i);
    outline.runEdges[k + 1] = k * RUN + run.length;
    outline.runCorners[k + 1] = corners.length;
  }
  return { ...outline, corners: Int32Array.from(corners) };
}

/**
 * How far the ray from (px, py) along the unit vector (ux, uy), together in `ray`, runs before it comes within `margin` of an
 * edge, mm, if that is less than `limit`; otherwise `limit`. The edge goes to `edge[0]`, -1 for none; for a corner, that of its two
 * edges which faces the place more. Touching in passing does not count.
 *
 * Right for rays that start on the free side at no less than `margin` from every edge. A ray comes within the margin first in a
 * point whose nearest edge point is inside an edge, seen from its free side, or a corner that juts into the free side: crossings
 * with edges moved to their free side and with circles around such corners are all that can be first.
 */
export function rayToGrownOutline(
  outline: GrownOutline,
  ray: Float64Array,
  limit: number,
  edge: Int32Array,
): number {
  const { edges, margin, list, corners, runEdges, runCorners } = outline;
  const { ax, ay, tx, ty, nx, ny, length } = edges;
  const px = ray[0];
  const py = ray[1];
  const ux = ray[2];
  const uy = ray[3];
  let nearest = limit;
  let which = -1;
  let corner = false;
  for (let run = 0; run < outline.runs; run++) {
    const toX = outline.runX[run] - px;
    const toY = outline.runY[run] - py;
    const radius = outline.runRadius[run];
    const off = toX * uy - toY * ux;
    if (off > radius || -off > radius) continue;
    const ahead = toX * ux + toY * uy;
    if (ahead + radius < 0 || ahead - radius >= nearest) continue;
    for (let k = runEdges[run]; k < runEdges[run + 1]; k++) {
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
        corner = false;
      }
    }
    if (margin === 0) continue;
    for (let k = runCorners[run]; k < runCorners[run + 1]; k++) {
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
        which = i;
        corner = true;
      }
    }
  }
  edge[0] = corner ? facingEdge(edges, which, px + nearest * ux, py + nearest * uy) : which;
  return nearest;
}

/** Of the two edges at the start of edge i, the one that faces (x, y) more. */
function facingEdge(edges: EdgeArrays, i: number, x: number, y: number): number {
  const before = i === 0 ? edges.count - 1 : i - 1;
  const dx = x - edges.ax[i];
  const dy = y - edges.ay[i];
  const { nx, ny } = edges;
  return nx[i] * dx + ny[i] * dy >= nx[before] * dx + ny[before] * dy ? i : before;
}
