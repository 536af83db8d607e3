import { capsuleInPlan } from './capsule.js';
import type { Carried } from './carried.js';
import { cornerCentre, cornerPoses } from './corner-poses.js';
import { type CornerSpare, cornerSpare } from './corner-spare.js';
import { type Crossing, noWay } from './crossing.js';
import { leastHeight, planShapeOf } from './holds.js';
import { bestHold } from './holds-best.js';
import type { MotionPose } from './motion.js';
import type { Corner } from './passages.js';
import type { PlanPose } from './plan-shape.js';

/**
 * A box in a corner of two corridors, held at one tilt all through it. `atLeast` and `atMost` bracket the spare within about 0.1 mm where both corridors are
 * equally high. Where they are not, `atLeast` stays under the lower ceiling all the way, `atMost` grants the higher one in the turn (the
 * tilt might change on the way). Touching passes.
 *
 * Within one family of holds a tilt that changes on the way gains nothing: all tilts it takes under a flat ceiling cover in plan what one of the
 * ends of their interval covers (holds.ts).
 */
export function crossCorner(passage: Corner, box: Carried): Crossing {
  const lower = Math.min(passage.height, passage.heightAfter);
  const higher = Math.max(passage.height, passage.heightAfter);
  const spareOf = (length: number, across: number): CornerSpare =>
    cornerSpare(passage, { halfLength: length / 2, halfWidth: across / 2, radius: 0 });
  const best = bestHold(box, lower, spareOf);
  const atMostAnyMotion = capsuleBound(passage, box, lower, higher);
  if (best === null) {
    return noWay('closed-form', Number.NEGATIVE_INFINITY, atMostAnyMotion);
  }
  const atMost =
    higher > lower
      ? Math.min(bestHold(box, higher, spareOf)?.atMost ?? Number.NEGATIVE_INFINITY, lower - leastHeight(box))
      : best.atMost;
  const { hold, plan } = best;
  const shape = planShapeOf(hold);
  const inSpace = (pose: PlanPose): MotionPose => ({
    ...pose,
    z: lower / 2,
    tilt: hold.tilt,
    roll: 0,
  });
  // Half turns of the heading are the same plan: those that lead its front end up into the second corridor.
  const halfTurns = Math.PI * Math.round((passage.angle - plan.to) / Math.PI);
  const facing: CornerSpare = {
    ...plan,
    from: plan.from + halfTurns,
    to: plan.to + halfTurns,
    heading: plan.heading + halfTurns,
  };
  const at = cornerCentre(passage, shape, facing.heading, plan.atLeast / 2);
  return {
    atLeast: best.atLeast,
    atMost: Math.min(Math.max(atMost, best.atLeast), Math.max(atMostAnyMotion, best.atLeast)),
    atMostAnyMotion: Math.max(atMostAnyMotion, best.atLeast),
    hold,
    motion:
      best.atLeast >= 0
        ? {
            along: hold.along,
            across: hold.across,
            up: hold.up,
            poses: cornerPoses(passage, shape, facing).map(inSpace),
          }
        : null,
    narrowest: inSpace({ ...at, heading: facing.heading }),
    method: 'closed-form',
  };
}

const BOUND_STEPS = 60;
/** mm: how close the bound is brought to the capsule's own spare, from above. */
const BOUND_TOLERANCE = 0.2;

/**
 * No motion whatever once every measure is smaller by more than this: the box is at least h high and wide, and the fixed stadium of capsule.ts has to go round.
 * Its axis grows as the ceiling comes down, its spare shrinks, so the first delta above which stadium(delta) has less than delta to spare is found
 * by bisection, and kept from above.
 */
function capsuleBound(passage: Corner, box: Carried, lower: number, higher: number): number {
  let high = Math.min(lower, passage.width, passage.widthAfter) - box.h;
  const gapAt = (delta: number): number =>
    cornerSpare(passage, capsuleInPlan(box, higher - delta)).atMost - delta;
  let gapHigh = gapAt(high);
  if (gapHigh >= 0) return high;
  // The fixed stadium at `high` has more axis than at any smaller delta: what passes with it is a start.
  let low = high + gapHigh;
  let gapLow = gapAt(low);
  if (gapLow <= 0) return low;
  let stayed = 0;
  for (let step = 0; step < BOUND_STEPS && high - low > BOUND_TOLERANCE; step++) {
    const share = Math.min(0.95, Math.max(0.05, gapLow / (gapLow - gapHigh)));
    const delta = low + share * (high - low);
    const gap = gapAt(delta);
    if (gap >= 0) {
      low = delta;
      gapLow = gap;
      if (stayed === 1) gapHigh /= 2;
      stayed = 1;
    } else {
      high = delta;
      gapHigh = gap;
      if (stayed === -1) gapLow /= 2;
      stayed = -1;
    }
  }
  return high;
}
