import { type EdgeArrays, edgeArrays } from './edge-arrays.js';
import type { Ring } from './types.js';

/**
 * Free space: inside an outline and outside every footprint. Footprints may overlap one another and stick out of the
 * outline, so an edge may also lie in another footprint or outside; no edge ever has a point of the (open) free space.
 */
export interface ObstacleEdges {
  /** Edges of the outline, then of each footprint. Footprints run clockwise, so that free space is left of every edge. */
  readonly edges: EdgeArrays;
  /** Ring r has the edges from `start[r]` up to, not including, `start[r + 1]`; ring 0 is the outline. */
  readonly start: Uint32Array;
  /** 1 where the first end of the edge juts into free space (interior angle over 180 degrees). */
  readonly corner: Uint8Array;
}

/** Crosswise deviation (mm^2) under which a corner counts as straight. Only costs a redundant bound, never a wrong one. */
const STRAIGHT = 1e-9;

/** Both the outline and the footprints are given anticlockwise. */
export function obstacleEdges(outline: Ring, footprints: readonly Ring[]): ObstacleEdges {
  const rings = [outline, ...footprints.map((ring) => ring.toReversed())];
  const edges = edgeArrays(rings);
  const start = new Uint32Array(rings.length + 1);
  const corner = new Uint8Array(edges.count);
  for (let r = 0; r < rings.length; r++) {
    const first = start[r];
    const next = first + rings[r].length;
    start[r + 1] = next;
    for (let e = first; e < next; e++) {
      const p = e === first ? next - 1 : e - 1;
      const inX = edges.bx[p] - edges.ax[p];
      const inY = edges.by[p] - edges.ay[p];
      const outX = edges.bx[e] - edges.ax[e];
      const outY = edges.by[e] - edges.ay[e];
      corner[e] = inX * outY - inY * outX < -STRAIGHT ? 1 : 0;
    }
  }
  return { edges, start, corner };
}

/**
 * Is the point inside ring r? Counts crossings of the ray to +x; a point within rounding of the ring may be told either way.
 */
export function insideRing(obstacles: ObstacleEdges, r: number, x: number, y: number): boolean {
  const { ax, ay, bx, by } = obstacles.edges;
  const end = obstacles.start[r + 1];
  let inside = false;
  for (let e = obstacles.start[r]; e < end; e++) {
    const y0 = ay[e];
    const y1 = by[e];
    if (y0 > y !== y1 > y && x < ax[e] + ((y - y0) * (bx[e] - ax[e])) / (y1 - y0)) inside = !inside;
  }
  return inside;
}

/** Is the point in one of the rings from `first` up to, not including, `end`? */
export function insideAnyRing(
  obstacles: ObstacleEdges,
  first: number,
  end: number,
  x: number,
  y: number,
): boolean {
  for (let r = first; r < end; r++) if (insideRing(obstacles, r, x, y)) return true;
  return false;
}

/**
 * Is the point inside the outline and outside the first `rings` - 1 footprints? Ring by ring, not even-odd over all of
 * them: where two footprints overlap there is no hole.
 */
export function isFree(obstacles: ObstacleEdges, rings: number, x: number, y: number): boolean {
  return insideRing(obstacles, 0, x, y) && !insideAnyRing(obstacles, 1, rings, x, y);
}
