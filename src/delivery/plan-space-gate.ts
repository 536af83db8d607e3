import type { Gate, Space } from './passages.js';
import type { PlanShape } from './plan-shape.js';
import { block, face, halfPlane, type PlanSpace, type PlanZone } from './plan-space.js';

/** A gate in plan with what must be known of it to search it. Frame of passages.ts. */
export interface GateInPlan {
  readonly space: PlanSpace;
  /** Wholly on the near side of the wall, wholly on the far side. */
  readonly near: readonly PlanZone[];
  readonly far: readonly PlanZone[];
}

/** Share by which the window is made larger than it must be, so that the zones have room in it. */
const SPARE = 0.25;

/**
 * The floor on both sides and the hole in the wall. Of endless floor only a part counts. Let R be the radius of a circle round the shape
 * about its centre. A shape whose centre has |x| >= width / 2 + R does not reach the hole: it lies in one strip of floor, where it may as well
 * stand nearer, at |x| = width / 2 + R; and with y <= -R (y >= depth + R) it lies wholly before (beyond) the wall and may as well stand at
 * -R (depth + R). So every way can be moved into the window of centres below without touching anything: what is cut off changes neither answer.
 */
export function gateInPlan(gate: Gate, shape: PlanShape): GateInPlan {
  const { width, depth, before, after } = gate;
  const half = width / 2;
  const inscribed = Math.min(shape.halfLength, shape.halfWidth) + shape.radius;
  const reach = (1 + SPARE) * (Math.hypot(shape.halfLength, shape.halfWidth) + shape.radius);
  const solids = [
    block(half, 0, Number.POSITIVE_INFINITY, depth),
    block(Number.NEGATIVE_INFINITY, 0, -half, depth),
  ];
  if (Number.isFinite(before.depth)) solids.push(halfPlane(0, 1, -before.depth));
  if (Number.isFinite(after.depth)) solids.push(halfPlane(0, -1, -(depth + after.depth)));
  const { NEGATIVE_INFINITY: least, POSITIVE_INFINITY: most } = Number;
  // Where floor ends beside the hole, what is solid there goes on through the wall; floor narrower than the hole ends at the wall's face.
  const through = (side: number): number => (side < 0 ? 0 : depth);
  if (Number.isFinite(before.left))
    solids.push(block(least, least, -(half + before.left), through(before.left)));
  if (Number.isFinite(before.right))
    solids.push(block(half + before.right, least, most, through(before.right)));
  if (Number.isFinite(after.left))
    solids.push(block(least, depth - through(after.left), -(half + after.left), most));
  if (Number.isFinite(after.right))
    solids.push(block(half + after.right, depth - through(after.right), most, most));
  const sideways = (left: number, right: number): number =>
    half + Math.min(reach, Math.max(left, right, 0) - inscribed);
  const onward = (space: Space): number => Math.min(reach, space.depth - inscribed);
  return {
    space: {
      solids,
      x0: -sideways(before.left, after.left),
      x1: sideways(before.right, after.right),
      y0: -onward(before),
      y1: depth + onward(after),
    },
    near: [[face(0, -1, 0)]],
    far: [[face(0, 1, depth)]],
  };
}
