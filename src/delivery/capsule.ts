import type { Carried } from './carried.js';
import type { PlanShape } from './plan-shape.js';

/**
 * What every box, however it is held or twisted, must take through a plan. About its long axis the box contains a capsule of radius
 * h / 2 with an axis of length l - h. Between a floor and a ceiling the capsule's ends differ in height by no more than the height less h, so the
 * axis is at least `2 halfLength` long in plan, and as long as that is positive its direction changes without a jump. What stops the fixed shape stops the box.
 *
 * Under `height` mm everywhere: halfLength = sqrt((l - h)^2 - (height - h)^2) / 2; 0 where it may stand upright.
 */
export function capsuleInPlan(box: Carried, height: number): PlanShape {
  return planOfAxis(box, 0, height - box.h);
}

/**
 * The same where floor and ceiling slope at up to `pitch` (radians): `headroom` upright over a line of nosings that the steps themselves may lie
 * up to `rise` mm below. Over a plan distance x the ends of the axis can differ in height by x tan(pitch) + headroom + rise - h, so the least x
 * solves x^2 + (x tan(pitch) + headroom + rise - h)^2 = (l - h)^2. Holds wherever floor and ceiling are no steeper, level stretches included.
 */
export function capsuleOnSlope(box: Carried, headroom: number, pitch: number, rise: number): PlanShape {
  return planOfAxis(box, Math.tan(pitch), headroom + rise - box.h);
}

/** Least x >= 0 with x^2 + (x slope + room)^2 >= (l - h)^2. */
function planOfAxis({ l, h }: Carried, slope: number, room: number): PlanShape {
  const axis = l - h;
  const spread = Math.max(0, room);
  if (spread >= axis) return { halfLength: 0, halfWidth: 0, radius: h / 2 };
  const square = 1 + slope * slope;
  const x =
    (Math.sqrt(slope * slope * spread * spread + square * (axis * axis - spread * spread)) - slope * spread) /
    square;
  return { halfLength: x / 2, halfWidth: 0, radius: h / 2 };
}
