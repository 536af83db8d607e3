import type { Placement, Point, Ring } from '../geometry/types.js';
import { toRoom } from './piece-place.js';

/** Points this far inside a forbidden polygon still count as on its boundary, mm. */
const ON = 1e-3;
/** Contacts closer than this are one, mm. */
const SAME = 1;

/**
 * Poses with a given turn at which a convex body touches two of some convex things (segments of walls or footprints) and overlaps
 * none: crossings of the boundaries of the things' Minkowski sums with the mirrored body. `body` in its own frame, anticlockwise.
 */
export function contactPoses(body: Ring, angle: number, things: readonly Ring[]): readonly Placement[] {
  const turned = body.map((p): Point => toRoom({ x: 0, y: 0, angle }, p));
  const opposite = turned.map(([x, y]): Point => [-x, -y]);
  const forbidden = things.map((thing) => minkowskiSum(thing, opposite));
  const boxes = forbidden.map(boxOf);
  const found: Point[] = [];
  const add = (p: Point): void => {
    if (forbidden.some((ring, k) => inBox(boxes[k], p) && isInside(ring, p))) return;
    if (found.every((q) => Math.abs(p[0] - q[0]) > SAME || Math.abs(p[1] - q[1]) > SAME)) found.push(p);
  };
  for (let i = 0; i < forbidden.length; i++) {
    for (const corner of forbidden[i]) add(corner);
    for (let j = i + 1; j < forbidden.length; j++) {
      if (!boxesMeet(boxes[i], boxes[j])) continue;
      for (const p of crossings(forbidden[i], forbidden[j])) add(p);
    }
  }
  return found.map(([x, y]) => ({ x, y, angle }));
}

/** Sum of two convex anticlockwise polygons; the first may be a segment. */
function minkowskiSum(a: Ring, b: Ring): Ring {
  const i0 = lowest(a);
  const j0 = lowest(b);
  const sum: Point[] = [];
  let i = 0;
  let j = 0;
  while (i < a.length || j < b.length) {
    const p = a[(i0 + i) % a.length];
    const q = b[(j0 + j) % b.length];
    sum.push([p[0] + q[0], p[1] + q[1]]);
    const next = a[(i0 + i + 1) % a.length];
    const then = b[(j0 + j + 1) % b.length];
    const cross = (next[0] - p[0]) * (then[1] - q[1]) - (next[1] - p[1]) * (then[0] - q[0]);
    if (j >= b.length || (i < a.length && cross >= 0)) {
      i++;
      if (j < b.length && cross === 0) j++;
    } else j++;
  }
  return sum;
}

function lowest(ring: Ring): number {
  let best = 0;
  ring.forEach(([x, y], i) => {
    if (y < ring[best][1] || (y === ring[best][1] && x < ring[best][0])) best = i;
  });
  return best;
}

function crossings(a: Ring, b: Ring): Point[] {
  const found: Point[] = [];
  for (let i = 0; i < a.length; i++) {
    const [px, py] = a[i];
    const [qx, qy] = a[(i + 1) % a.length];
    const dx = qx - px;
    const dy = qy - py;
    for (let j = 0; j < b.length; j++) {
      const [rx, ry] = b[j];
      const [sx, sy] = b[(j + 1) % b.length];
      const ex = sx - rx;
      const ey = sy - ry;
      const det = dx * ey - dy * ex;
      if (Math.abs(det) < 1e-9) continue;
      const t = ((rx - px) * ey - (ry - py) * ex) / det;
      const u = ((rx - px) * dy - (ry - py) * dx) / det;
      if (t >= 0 && t <= 1 && u >= 0 && u <= 1) found.push([px + t * dx, py + t * dy]);
    }
  }
  return found;
}

function isInside(ring: Ring, [x, y]: Point): boolean {
  for (let i = 0; i < ring.length; i++) {
    const [px, py] = ring[i];
    const [qx, qy] = ring[(i + 1) % ring.length];
    const dx = qx - px;
    const dy = qy - py;
    if (dx * (y - py) - dy * (x - px) <= ON * Math.sqrt(dx * dx + dy * dy)) return false;
  }
  return true;
}

type BoxOf = readonly [minX: number, minY: number, maxX: number, maxY: number];

function boxOf(ring: Ring): BoxOf {
  const xs = ring.map(([x]) => x);
  const ys = ring.map(([, y]) => y);
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

function inBox([minX, minY, maxX, maxY]: BoxOf, [x, y]: Point): boolean {
  return x > minX && x < maxX && y > minY && y < maxY;
}

function boxesMeet(a: BoxOf, b: BoxOf): boolean {
  return a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];
}
