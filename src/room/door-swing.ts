import type { Point, Ring } from '../geometry/types.js';

/** Most that the polygon around a door's swing reaches beyond the leaf's quarter circle, mm. */
export const SWING_EXCESS = 5;

/**
 * Convex anticlockwise polygon around the quarter disc that a leaf sweeps, hung at `hinge` and closing at `latch`: never
 * smaller than the disc, at most {@link SWING_EXCESS} larger. `left`: the leaf opens to the left of the way from hinge to latch.
 */
export function doorSwing(hinge: Point, latch: Point, left: boolean): Ring {
  const dx = latch[0] - hinge[0];
  const dy = latch[1] - hinge[1];
  const radius = Math.hypot(dx, dy);
  // Tangents at steps of the quarter meet at radius / cos(half a step).
  const halfStep = Math.acos(radius / (radius + SWING_EXCESS));
  const steps = Math.ceil(Math.PI / 4 / halfStep);
  const half = Math.PI / 4 / steps;
  const turn = left ? 1 : -1;
  const place = (angle: number, share: number): Point => {
    const cos = share * Math.cos(angle);
    const sin = turn * share * Math.sin(angle);
    return [hinge[0] + cos * dx - sin * dy, hinge[1] + cos * dy + sin * dx];
  };
  const ring: Point[] = [hinge, latch];
  for (let k = 0; k < steps; k++) ring.push(place((2 * k + 1) * half, 1 / Math.cos(half)));
  // Exactly square to the closed leaf.
  ring.push([hinge[0] - turn * dy, hinge[1] + turn * dx]);
  return left ? ring : ring.reverse();
}
