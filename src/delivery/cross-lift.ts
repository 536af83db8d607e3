import type { Carried } from './carried.js';
import { isSettled } from './cross-gate.js';
import { searchGate } from './cross-gate-search.js';
import type { Crossing } from './crossing.js';
import { carverSpare, crossGateStraight } from './gate.js';
import { bestHold } from './holds-best.js';
import { narrowPassage } from './narrow-passage.js';
import type { Gate, Lift, Space } from './passages.js';

/**
 * One box into a lift: through its door and wholly into the car. A lift is a gate with the car for the space beyond, so it goes straight in by
 * the same closed form, or round corners by the same search. Besides, it must fit into the car at all.
 */
export function crossLift(lift: Lift, box: Carried, options: { readonly maxBoxes: number }): Crossing {
  const straight = crossGateStraight(straightGate(lift), box);
  const inside = fitsInside(lift, box);
  const atMostAnyMotion = Math.max(straight.atLeast, Math.min(straight.atMostAnyMotion, inside.anyMotion));
  const atMost = Math.max(straight.atLeast, Math.min(straight.atMost, inside.held, atMostAnyMotion));
  const known = { ...straight, atMost, atMostAnyMotion };
  if (isSettled(known, lift.tolerance)) return known;
  const narrowed = (delta: number): Gate => asGate(narrowLift(lift, delta));
  return searchGate(narrowed, box, { maxBoxes: options.maxBoxes, straight: known });
}

/** The lift as a gate, its car the space beyond. */
function asGate({ name, tolerance, width, depth, height, door, before }: Lift): Gate {
  const beside = (width - door.width) / 2;
  return {
    name,
    tolerance,
    kind: 'doorway',
    width: door.width,
    height: door.height,
    depth: door.depth,
    sill: 0,
    leaf: 0,
    before,
    after: { depth, left: beside, right: beside, height },
  };
}

/**
 * For the way straight in, where what lies beside the door does not matter unless the car is narrower than the door: then its width is the
 * narrower measure. (As a gate, the space beside the door would shrink with every reading; in a car it stays, as car and door shrink alike.)
 */
function straightGate(lift: Lift): Gate {
  const gate = asGate(lift);
  const after: Space = { ...gate.after, left: Number.POSITIVE_INFINITY, right: Number.POSITIVE_INFINITY };
  return { ...gate, width: Math.min(gate.width, lift.width), after };
}

function narrowLift(lift: Lift, delta: number): Lift {
  const narrow = narrowPassage(lift, delta);
  return narrow.kind === 'lift' ? narrow : lift;
}

/**
 * By how much all three measures of the car can shrink so that the box still fits in it: held one way, its plan in the car's by Carver's theorem; and
 * for any position whatever, the axis of the capsule in it (l - h long, h / 2 from every side) within the car's diagonal:
 * (width - h - d)^2 + (depth - h - d)^2 + (height - h - d)^2 = (l - h)^2.
 */
function fitsInside({ width, depth, height }: Lift, box: Carried): { held: number; anyMotion: number } {
  const held = bestHold(box, height, (planLength, across) => {
    const spare = carverSpare(planLength, across, width, depth);
    return { atLeast: spare, atMost: spare };
  });
  const sides = [width - box.h, depth - box.h, height - box.h];
  const least = Math.min(...sides);
  const sum = sides[0] + sides[1] + sides[2];
  const squares = sides[0] ** 2 + sides[1] ** 2 + sides[2] ** 2 - (box.l - box.h) ** 2;
  // 3 d^2 - 2 sum d + squares = 0: the smaller root, at which the diagonal has shrunk to the axis.
  const root = sum * sum - 3 * squares;
  const diagonal = root < 0 ? Number.POSITIVE_INFINITY : (sum - Math.sqrt(root)) / 3;
  const anyMotion = Number.isFinite(sum) ? Math.min(least, diagonal) : least;
  return { held: held === null ? Number.NEGATIVE_INFINITY : held.atMost, anyMotion };
}
