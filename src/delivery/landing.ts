import type { Carried } from './carried.js';
import { type Crossing, noWay } from './crossing.js';
import { heldTurnBound, heldTurnBoundNear, turnBound } from './landing-bounds.js';
import { type Poised, posesOfTurnWay } from './landing-motion.js';
import { searchTurn } from './landing-search.js';
import { type StairTurn, turnOfLanding } from './landing-space.js';
import { bestTurnWay } from './landing-way.js';
import type { MotionPose } from './motion.js';
import type { Landing } from './passages.js';

/**
 * A box on a landing between two flights, carried up with its front end up, held at one tilt all the way. At every place and heading in plan the
 * heights that are free are an interval, so that a way in plan along which it is nowhere empty is a motion (see SlopeFloor). Ways in plan: along
 * the outer walls of the turn, exact in plan (see planSpare), the tilt chosen for the most spare; where they fail for want of
 * height only, another way could still go, and is searched for (see searchTurn). Where none is found either the crossing is left open.
 */
export function crossLanding(
  landing: Landing,
  box: Carried,
  { maxBoxes }: { readonly maxBoxes: number },
): Crossing {
  return crossTurn(turnOfLanding(landing), box, landing.tolerance, maxBoxes);
}

/** A landing or a winder, as its turn; readings may be off by `tolerance`. The search has a limit of its own besides `maxBoxes`. */
export function crossTurn(turn: StairTurn, box: Carried, tolerance: number, maxBoxes: number): Crossing {
  const anyMotion = turnBound(turn, box);
  const way = bestTurnWay(turn, box, anyMotion);
  let held = Math.min(anyMotion, heldTurnBound(turn, box, way?.spare));
  const found = way?.spare ?? Number.NEGATIVE_INFINITY;
  if (found < 0 && held >= -tolerance) {
    held = Math.min(held, heldTurnBoundNear(turn, box, Math.max(found, -tolerance - 1)));
  }
  if (way === null) {
    return noWay('none', held, anyMotion);
  }
  const { along, across, up, tilt } = way.hold;
  const { poses, tightest } = posesOfTurnWay(turn, way);
  const inFrame = ({ x, y, z, heading }: Poised): MotionPose => ({ x, y, z, heading, tilt, roll: 0 });
  const atMost = Math.max(way.spare, held);
  if (way.spare < 0 && atMost >= 0) {
    const searched = searchTurn(turn, box, { maxBoxes, tolerance, first: way.hold, atMost });
    if (searched !== null) {
      const { hold, spare, motion } = searched;
      const bounds = { atMost, atMostAnyMotion: Math.max(anyMotion, atMost) };
      return { ...bounds, atLeast: spare, hold, motion, narrowest: null, method: 'subdivision' };
    }
  }
  return {
    atLeast: way.spare,
    atMost,
    atMostAnyMotion: Math.max(anyMotion, atMost),
    hold: way.hold,
    motion: way.spare >= 0 ? { along, across, up, poses: poses.map(inFrame) } : null,
    narrowest: inFrame(tightest),
    method: 'closed-form',
  };
}
