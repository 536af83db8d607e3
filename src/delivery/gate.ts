import type { Carried } from './carried.js';
import { type Crossing, noWay } from './crossing.js';
import { bestStraight, heldSectionSpare, sectionSpare } from './gate-section.js';
import { leastHeight, planLength } from './holds.js';
import type { MotionPose } from './motion.js';
import type { Gate } from './passages.js';

export { carverFits, carverSpare } from './gate-section.js';

/** mm: how far off the wall a box lines up where there is room enough. */
const LINE_UP = 100;

/**
 * A box carried straight through a doorway or an opening, held at one tilt: level, tilted, or leaned and long edge first. It lines up wholly before the wall,
 * raised by the sill if there is one, goes through square to the wall, and ends wholly behind it. `atLeast` is exact for that manoeuvre. It is
 * often not the best one: where a space is shallow the box may have to turn in the opening, so a negative `atLeast` proves nothing.
 *
 * `atMost` and `atMostAnyMotion` come from the moment at which the middle of the box is in the wall (gate-section.ts) and from the
 * heights on both sides; depths and walls beside the opening are not looked at, so they may be too generous, never too strict.
 */
export function crossGateStraight(gate: Gate, box: Carried): Crossing {
  const { width, height, depth, sill, before, after } = gate;
  const ceiling = Math.min(before.height, after.height);
  const hole = {
    width,
    height: Math.min(height, ceiling - sill),
    left: Math.min(before.left, after.left),
    right: Math.min(before.right, after.right),
    depth: Math.min(before.depth, after.depth),
  };
  const atMostAnyMotion = Math.min(sectionSpare(box, width, height), ceiling - box.h);
  const atMost = Math.min(heldSectionSpare(box, width, height), ceiling - leastHeight(box), atMostAnyMotion);
  const way = bestStraight(hole, box);
  if (way === null) {
    return noWay('closed-form', atMost, atMostAnyMotion);
  }
  const { hold, sideways } = way;
  const atLeast = way.spare;
  const wayLength = sideways ? hold.across : planLength(hold);
  // In the middle of what is open on both sides, and between sill and lintel or ceiling.
  const x = (Math.min(width / 2, width / 2 + hole.right) - Math.min(width / 2, width / 2 + hole.left)) / 2;
  const z = sill + hole.height / 2;
  const at = (y: number): MotionPose => ({
    x,
    y,
    z,
    heading: sideways ? 0 : Math.PI / 2,
    tilt: hold.tilt,
    roll: 0,
  });
  const off = (space: number): number => Math.min(LINE_UP, (space - wayLength) / 2) + wayLength / 2;
  return {
    atLeast,
    atMost: Math.max(atMost, atLeast),
    atMostAnyMotion: Math.max(atMostAnyMotion, atLeast),
    hold,
    motion:
      atLeast >= 0
        ? {
            along: hold.along,
            across: hold.across,
            up: hold.up,
            poses: [at(-off(before.depth)), at(depth + off(after.depth))],
          }
        : null,
    narrowest: at(depth / 2),
    method: 'closed-form',
  };
}
