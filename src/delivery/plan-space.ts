import { convexParts } from '../geometry/convex-parts.js';
import { orientation } from '../geometry/predicates.js';
import type { Point, Ring } from '../geometry/types.js';
import type { PlanPose } from './plan-shape.js';

/** The points q with nx qx + ny qy <= offset; (nx, ny) has length 1 and points out of the solid. */
export interface Face {
  readonly nx: number;
  readonly ny: number;
  readonly offset: number;
}

/**
 * A convex solid: the points behind all its faces. `corners` are its corners, for an unbounded one with far points in place of the
 * directions in which it goes on; a half-plane needs none.
 */
export interface PlanSolid {
  readonly faces: readonly Face[];
  readonly corners: readonly Point[];
}

/**
 * Where a shape may move in plan: outside all solids, with its centre in the window x0 <= x <= x1, y0 <= y <= y1. Whoever builds one
 * answers for it that no free pose, and no way that matters, has its centre outside the window.
 */
export interface PlanSpace {
  readonly solids: readonly PlanSolid[];
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** The poses whose whole shape lies in n.q >= offset for every one of the faces: in front of all of them. */
export type PlanZone = readonly Face[];

/** Where a way starts or ends: in one pose, or anywhere in one of some zones. */
export type PlanEnd = PlanPose | readonly PlanZone[];

/** Stands for infinity, mm: nothing that moves comes near. */
const FAR = 1e7;

/** The half-plane nx qx + ny qy <= offset as a solid. The normal need not have length 1. */
export function halfPlane(nx: number, ny: number, offset: number): PlanSolid {
  return { faces: [face(nx, ny, offset)], corners: [] };
}

/** A face (or the bound of a zone) of which the normal need not have length 1: q with nx qx + ny qy <= offset. */
export function face(nx: number, ny: number, offset: number): Face {
  const size = Math.hypot(nx, ny);
  return { nx: nx / size, ny: ny / size, offset: offset / size };
}

/** The solid with these corners, anticlockwise and convex. */
export function convexSolid(corners: Ring): PlanSolid {
  const faces = corners.map(([ax, ay], i) => {
    const [bx, by] = corners[(i + 1) % corners.length];
    return face(by - ay, ax - bx, (by - ay) * ax + (ax - bx) * ay);
  });
  return { faces, corners };
}

/** apex + the cone from the direction d1 anticlockwise to d2, less than half a turn. */
export function wedge(apex: Point, d1: Point, d2: Point): PlanSolid {
  const [x, y] = apex;
  return {
    faces: [face(d1[1], -d1[0], d1[1] * x - d1[0] * y), face(-d2[1], d2[0], -d2[1] * x + d2[0] * y)],
    corners: [apex, [x + FAR * d1[0], y + FAR * d1[1]], [x + FAR * d2[0], y + FAR * d2[1]]],
  };
}

/** The rectangle x0 <= x <= x1, y0 <= y <= y1; infinite limits are allowed. */
export function block(x0: number, y0: number, x1: number, y1: number): PlanSolid {
  const faces: Face[] = [];
  if (x0 > -FAR) faces.push(face(-1, 0, -x0));
  if (x1 < FAR) faces.push(face(1, 0, x1));
  if (y0 > -FAR) faces.push(face(0, -1, -y0));
  if (y1 < FAR) faces.push(face(0, 1, y1));
  const [l, b, r, t] = [Math.max(x0, -FAR), Math.max(y0, -FAR), Math.min(x1, FAR), Math.min(y1, FAR)];
  const corners: Point[] = [
    [l, b],
    [r, b],
    [r, t],
    [l, t],
  ];
  return faces.length === 1 ? { faces, corners: [] } : { faces, corners };
}

/**
 * The inside of a simple anticlockwise ring, everything outside it solid: the half-planes beyond its convex hull and the hull's pockets in
 * convex parts. A shape's centre stays in the hull's bounding box.
 *
 * @throws Error when the ring is not simple and anticlockwise.
 */
export function spaceInRing(ring: Ring): PlanSpace {
  const solids: PlanSolid[] = [];
  const hull = hullIndices(ring);
  for (let k = 0; k < hull.length; k++) {
    const from = hull[k];
    const to = hull[(k + 1) % hull.length];
    const [ax, ay] = ring[from];
    const [bx, by] = ring[to];
    solids.push(halfPlane(ay - by, bx - ax, (ay - by) * ax + (bx - ax) * ay));
    const count = (to - from + ring.length) % ring.length;
    if (count < 2) continue;
    const pocket: Point[] = [];
    for (let i = count; i >= 0; i--) pocket.push(ring[(from + i) % ring.length]);
    for (const part of convexParts(pocket)) solids.push(withoutLid(convexSolid(part), ring[from], ring[to]));
  }
  const xs = ring.map(([x]) => x);
  const ys = ring.map(([, y]) => y);
  return { solids, x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) };
}

/** Leaves out the face on the hull: what lies in front of it is beyond the hull, in a solid of its own. */
function withoutLid(solid: PlanSolid, a: Point, b: Point): PlanSolid {
  const faces = solid.faces.filter(
    ({ nx, ny, offset }) =>
      Math.abs(nx * a[0] + ny * a[1] - offset) > 1e-9 || Math.abs(nx * b[0] + ny * b[1] - offset) > 1e-9,
  );
  return { faces, corners: solid.corners };
}

/** Places of the ring's corners that lie on its convex hull, in the ring's order; corners on a side of the hull count (Andrew's chains). */
function hullIndices(ring: Ring): number[] {
  const sorted = ring.map((_, i) => i).sort((i, k) => ring[i][0] - ring[k][0] || ring[i][1] - ring[k][1]);
  const on = new Set<number>();
  for (const order of [sorted, [...sorted].reverse()]) {
    const chain: number[] = [];
    for (const i of order) {
      while (chain.length > 1) {
        const [a, b] = [chain[chain.length - 2], chain[chain.length - 1]];
        if (orientation(ring[a], ring[b], ring[i]) >= 0) break;
        chain.pop();
      }
      chain.push(i);
    }
    for (const i of chain) on.add(i);
  }
  return [...on].sort((i, k) => i - k);
}
