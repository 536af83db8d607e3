import type { Placement } from '../geometry/types.js';
import { type ClearanceProbe, clearanceProbe } from './clearance-at.js';
import { cushionGaps } from './cushion-gaps.js';
import type { PlacementProblem } from './placement-problem.js';

/** Rounds of sliding along the table and across it. */
const MOST_ROUNDS = 6;
/** Halvings of a slide that would go too far. */
const HALVINGS = 14;
/** What a slide that does not get all the way may cost, mm: nothing that anyone would measure. */
const NO_LOSS = 0.01;
/** A slide shorter than this (mm) is none. */
const SETTLED = 1e-6;
/** Angles within this (radians) are equal. */
const NO_TURN = 1e-12;
/** Clearances within this (mm) are equal. */
const EQUAL = 1e-6;

/**
 * The best place is often a whole stretch of places. From a pose where the table stands, slides it along and across its length
 * until the room behind opposite cushions is equal, if the table still stands there with a clearance of at least `keep` (mm);
 * else as far as that costs nothing. A quarter turn on the same spot that is as good is taken if its angle is smaller. The turn does not change otherwise.
 */
export function settle(problem: PlacementProblem, pose: Placement, keep: number): Placement {
  const probe = clearanceProbe(problem);
  let settled = pose;
  const lossless = Math.max(keep, probe.clearance(pose) - NO_LOSS);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const along = slide(problem, probe, settled, keep, lossless, 'along');
    const both = slide(problem, probe, along, keep, lossless, 'across');
    const moved = Math.hypot(both.x - settled.x, both.y - settled.y);
    settled = both;
    if (moved < SETTLED) break;
  }
  const quarter = settled.angle - Math.PI / 2;
  if (quarter < -NO_TURN) return settled;
  const turned = { ...settled, angle: Math.max(0, quarter) };
  const asGood = probe.stands(turned) && probe.clearance(turned) >= probe.clearance(settled) - EQUAL;
  return asGood ? turned : settled;
}

function slide(
  problem: PlacementProblem,
  probe: ClearanceProbe,
  pose: Placement,
  keep: number,
  lossless: number,
  axis: 'along' | 'across',
): Placement {
  const gaps = cushionGaps(problem, pose);
  const shift =
    axis === 'along'
      ? (gaps.endA.distance - gaps.endB.distance) / 2
      : (gaps.sideA.distance - gaps.sideB.distance) / 2;
  if (!(Math.abs(shift) >= SETTLED) || Math.abs(shift) === Number.POSITIVE_INFINITY) return pose;
  const direction = axis === 'along' ? pose.angle : pose.angle + Math.PI / 2;
  const at = (share: number): Placement => ({
    ...pose,
    x: pose.x + share * shift * Math.cos(direction),
    y: pose.y + share * shift * Math.sin(direction),
  });
  const allowed = (share: number, least: number): boolean => {
    const there = at(share);
    return probe.clearance(there) >= least && probe.stands(there);
  };
  if (allowed(1, keep)) return at(1);
  let reached = 0;
  let beyond = 1;
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (reached + beyond) / 2;
    if (allowed(middle, lossless)) reached = middle;
    else beyond = middle;
  }
  return reached === 0 ? pose : at(reached);
}
