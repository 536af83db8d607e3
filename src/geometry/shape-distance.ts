import type { EdgeArrays } from './edge-arrays.js';

/**
 * Signed distance from (x, y) to the convex anticlockwise polygon of edges `first` to `end` (exclusive), mm: outside the
 * distance to it, 0 on its boundary, inside minus the distance to the nearest side. Changes by at most the distance moved.
 */
export function distanceToConvex(
  edges: EdgeArrays,
  first: number,
  end: number,
  x: number,
  y: number,
): number {
  let outside = -Infinity;
  let square = Infinity;
  for (let i = first; i < end; i++) {
    const dx = x - edges.ax[i];
    const dy = y - edges.ay[i];
    const out = -(edges.nx[i] * dx + edges.ny[i] * dy);
    if (out > outside) outside = out;
    if (out > 0) {
      const along = edges.tx[i] * dx + edges.ty[i] * dy;
      const over = along < 0 ? -along : along > edges.length[i] ? along - edges.length[i] : 0;
      const d = out * out + over * over;
      if (d < square) square = d;
    }
  }
  return outside <= 0 ? outside : Math.sqrt(square);
}

/** Distance from (x, y) to edge i, mm. */
export function distanceToEdge(edges: EdgeArrays, i: number, x: number, y: number): number {
  const dx = x - edges.ax[i];
  const dy = y - edges.ay[i];
  const along = edges.tx[i] * dx + edges.ty[i] * dy;
  const over = along < 0 ? -along : along > edges.length[i] ? along - edges.length[i] : 0;
  const aside = edges.nx[i] * dx + edges.ny[i] * dy;
  // Not Math.hypot, which costs ten times as much; nothing here is near its limits.
  return over === 0 ? Math.abs(aside) : Math.sqrt(aside * aside + over * over);
}

/**
 * For one anticlockwise ring: 1 where edge i starts at a corner of more than half a turn inside. Such a corner juts into the
 * polygon, so a point that has it as its nearest boundary point lies inside; with any other corner it lies outside.
 */
export function reflexStarts(ring: EdgeArrays): Uint8Array {
  const reflex = new Uint8Array(ring.count);
  for (let i = 0; i < ring.count; i++) {
    const before = i === 0 ? ring.count - 1 : i - 1;
    if (ring.tx[before] * ring.ty[i] - ring.ty[before] * ring.tx[i] < 0) reflex[i] = 1;
  }
  return reflex;
}

/**
 * Signed distance from (x, y) to the boundary of an anticlockwise ring, mm, positive inside, by the nearest of the edges
 * `list[from]` to `list[to - 1]`: right whenever these hold the edge nearest to the point. Infinity for no edges.
 */
export function depthInRing(
  ring: EdgeArrays,
  reflex: Uint8Array,
  list: ArrayLike<number>,
  from: number,
  to: number,
  x: number,
  y: number,
): number {
  let square = Infinity;
  let inside = true;
  for (let k = from; k < to; k++) {
    const i = list[k];
    const dx = x - ring.ax[i];
    const dy = y - ring.ay[i];
    const along = ring.tx[i] * dx + ring.ty[i] * dy;
    const aside = ring.nx[i] * dx + ring.ny[i] * dy;
    let over = 0;
    if (along < 0) over = along;
    else if (along > ring.length[i]) over = along - ring.length[i];
    const d = aside * aside + over * over;
    if (d < square) {
      square = d;
      if (over === 0) inside = aside >= 0;
      else if (over < 0) inside = reflex[i] === 1;
      else inside = reflex[i + 1 === ring.count ? 0 : i + 1] === 1;
    }
  }
  const distance = Math.sqrt(square);
  return inside ? distance : -distance;
}

/** Distance from (x, y) to the rectangle |x| <= halfX, |y| <= halfY, mm; 0 inside. */
export function distanceToBox(halfX: number, halfY: number, x: number, y: number): number {
  return Math.hypot(Math.max(0, Math.abs(x) - halfX), Math.max(0, Math.abs(y) - halfY));
}

/**
 * Distance between edge i and the rectangle |x| <= halfX, |y| <= halfY, mm; 0 where they touch or overlap. Apart, two convex
 * shapes are nearest at a corner of one of them.
 */
export function distanceEdgeToBox(edges: EdgeArrays, i: number, halfX: number, halfY: number): number {
  const ax = edges.ax[i];
  const ay = edges.ay[i];
  const bx = edges.bx[i];
  const by = edges.by[i];
  const aside = Math.abs(edges.nx[i] * ax + edges.ny[i] * ay);
  const apart =
    Math.min(ax, bx) > halfX ||
    Math.max(ax, bx) < -halfX ||
    Math.min(ay, by) > halfY ||
    Math.max(ay, by) < -halfY ||
    aside > halfX * Math.abs(edges.nx[i]) + halfY * Math.abs(edges.ny[i]);
  if (!apart) return 0;
  return Math.min(
    distanceToBox(halfX, halfY, ax, ay),
    distanceToBox(halfX, halfY, bx, by),
    distanceToEdge(edges, i, halfX, halfY),
    distanceToEdge(edges, i, -halfX, halfY),
    distanceToEdge(edges, i, halfX, -halfY),
    distanceToEdge(edges, i, -halfX, -halfY),
  );
}
