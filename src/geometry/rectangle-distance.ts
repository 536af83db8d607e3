import type { EdgeArrays } from './edge-arrays.js';

/** A rectangle by its centre, the direction of its length and its half sides. Inner loops reuse one object. */
export interface TurnedRectangle {
  x: number;
  y: number;
  cos: number;
  sin: number;
  halfLength: number;
  halfWidth: number;
}

/** One edge as a rectangle sees it: in the rectangle's own frame, centre at the origin, x along its length. */
export interface EdgeView {
  /** First end of the edge, */
  ax: number;
  ay: number;
  /** and its unit tangent; the left normal is (-ty, tx). */
  tx: number;
  ty: number;
  length: number;
  /** Signed distance of the centre from the edge's line, positive on the left. */
  side: number;
  /** Place of the centre's foot along the line, from the first end. */
  foot: number;
  /** H: how far the rectangle reaches from its centre along the normal. */
  support: number;
  /** Signed distance between rectangle and edge: minus the depth of overlap where they meet. */
  separation: number;
}

export function createTurnedRectangle(halfLength: number, halfWidth: number): TurnedRectangle {
  return { x: 0.5, y: 0.5, cos: 0.5, sin: 0.5, halfLength, halfWidth };
}

export function createEdgeView(): EdgeView {
  // Fractions, so that every field is a double from the start and never changes its representation.
  return {
    ax: 0.5,
    ay: 0.5,
    tx: 0.5,
    ty: 0.5,
    length: 0.5,
    side: 0.5,
    foot: 0.5,
    support: 0.5,
    separation: 0.5,
  };
}

/**
 * Looks at edge `e` from the rectangle. Exact up to rounding: `separation` is the distance between the two, 0 where they
 * touch, and where they overlap minus the length of the shortest shift that parts them. It is the signed distance of the
 * centre from the hexagon edge + (-rectangle), so it changes by no more than the centre moves, whatever its sign.
 */
export function viewEdge(view: EdgeView, rectangle: TurnedRectangle, edges: EdgeArrays, e: number): void {
  const { cos, sin, halfLength, halfWidth } = rectangle;
  const dx = edges.ax[e] - rectangle.x;
  const dy = edges.ay[e] - rectangle.y;
  const length = edges.length[e];
  const ax = dx * cos + dy * sin;
  const ay = dy * cos - dx * sin;
  const tx = edges.tx[e] * cos + edges.ty[e] * sin;
  const ty = edges.ty[e] * cos - edges.tx[e] * sin;
  const bx = ax + length * tx;
  const by = ay + length * ty;
  const side = ty * ax - tx * ay;
  const foot = -(ax * tx + ay * ty);
  const support = halfLength * Math.abs(ty) + halfWidth * Math.abs(tx);

  // Separating axes: the two of the rectangle, and the normal of the edge.
  const apartX = Math.max(Math.min(ax, bx) - halfLength, -halfLength - Math.max(ax, bx));
  const apartY = Math.max(Math.min(ay, by) - halfWidth, -halfWidth - Math.max(ay, by));
  const apartN = Math.abs(side) - support;
  let separation = Math.max(apartX, apartY, apartN);
  if (separation > 0) {
    // Disjoint: the nearest pair has a corner of the rectangle or an end of the edge in it.
    let fx = Math.max(Math.abs(ax) - halfLength, 0);
    let fy = Math.max(Math.abs(ay) - halfWidth, 0);
    let nearest = fx * fx + fy * fy;
    fx = Math.max(Math.abs(bx) - halfLength, 0);
    fy = Math.max(Math.abs(by) - halfWidth, 0);
    nearest = Math.min(nearest, fx * fx + fy * fy);
    separation = Math.sqrt(nearest);
    if (apartN > 0 && apartN < separation) {
      const towards = side < 0 ? 1 : -1;
      const kx = ty <= 0 ? towards * halfLength : -towards * halfLength;
      const ky = tx >= 0 ? towards * halfWidth : -towards * halfWidth;
      const at = foot + kx * tx + ky * ty;
      if (at >= 0 && at <= length) separation = apartN;
    }
  }
  view.ax = ax;
  view.ay = ay;
  view.tx = tx;
  view.ty = ty;
  view.length = length;
  view.side = side;
  view.foot = foot;
  view.support = support;
  view.separation = separation;
}
