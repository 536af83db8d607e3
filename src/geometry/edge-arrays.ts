import type { Ring } from './types.js';

/**
 * The edges of some rings in flat arrays, for inner loops. Edge i runs from a to b with unit tangent t and left normal
 * n = (-ty, tx): for an anticlockwise outline the free side, for an anticlockwise footprint the inside.
 */
export interface EdgeArrays {
  readonly count: number;
  readonly ax: Float64Array;
  readonly ay: Float64Array;
  readonly bx: Float64Array;
  readonly by: Float64Array;
  readonly tx: Float64Array;
  readonly ty: Float64Array;
  readonly nx: Float64Array;
  readonly ny: Float64Array;
  readonly length: Float64Array;
}

/** Edges of all rings, ring after ring, each in its own order. Rings must have no repeated corners. */
export function edgeArrays(rings: readonly Ring[]): EdgeArrays {
  let count = 0;
  for (const ring of rings) count += ring.length;
  const block = new Float64Array(count * 9);
  const part = (k: number): Float64Array => block.subarray(k * count, (k + 1) * count);
  const edges = {
    count,
    ax: part(0),
    ay: part(1),
    bx: part(2),
    by: part(3),
    tx: part(4),
    ty: part(5),
    nx: part(6),
    ny: part(7),
    length: part(8),
  };
  let i = 0;
  for (const ring of rings) {
    for (let k = 0; k < ring.length; k++) {
      const [ax, ay] = ring[k];
      const [bx, by] = ring[k + 1 === ring.length ? 0 : k + 1];
      const length = Math.hypot(bx - ax, by - ay);
      const tx = (bx - ax) / length;
      const ty = (by - ay) / length;
      edges.ax[i] = ax;
      edges.ay[i] = ay;
      edges.bx[i] = bx;
      edges.by[i] = by;
      edges.tx[i] = tx;
      edges.ty[i] = ty;
      edges.nx[i] = -ty;
      edges.ny[i] = tx;
      edges.length[i] = length;
      i++;
    }
  }
  return edges;
}
